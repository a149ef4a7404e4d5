package rigwarden.chip.ina228;

import rigwarden.chip.Averages;

/**
 * How the chip converts: shunt and bus in turn, without end.
 *
 * @param range of the shunt input
 * @param bus conversion time of the bus input
 * @param shunt conversion time of the shunt input
 * @param averages conversions in one result, so that ripple is averaged on the chip
 */
public record Ina228Config(AdcRange range, ConversionTime bus, ConversionTime shunt, Averages averages) {
    /** 16 averages of 1052 µs each: a result every 33.664 ms. */
    public static final Ina228Config LARGE_CELLS =
            new Ina228Config(AdcRange.WIDE, ConversionTime.US_1052, ConversionTime.US_1052, Averages.OF_16);

    /** MODE: continuous shunt and bus voltage. */
    private static final int CONTINUOUS_SHUNT_AND_BUS = 0xB;
    /** VTCT keeps its reset value; the temperature is not converted in this mode. */
    private static final int TEMPERATURE_TIME = ConversionTime.US_1052.code();

    /** Word for CONFIG: no reset, no delay, no temperature compensation. */
    int configWord() {
        return range.bits();
    }

    /** Word for ADC_CONFIG. */
    int adcWord() {
        return CONTINUOUS_SHUNT_AND_BUS << 12 | bus.code() << 9 | shunt.code() << 6 | TEMPERATURE_TIME << 3
                | averages.code();
    }

    /** Nominal time of one result by the chip's clock, ns. */
    public long cycleNanos() {
        return 1000L * (bus.micros() + shunt.micros()) * averages.count();
    }
}
