package rigwarden.chip.ina226;

import rigwarden.chip.Averages;

/**
 * How the chip converts: shunt and bus in turn, without end.
 *
 * @param bus conversion time of the bus input
 * @param shunt conversion time of the shunt input
 * @param averages conversions in one result, so that ripple is averaged on the chip
 */
public record Ina226Config(ConversionTime bus, ConversionTime shunt, Averages averages) {
    /** 16 averages of 1.1 ms each: a result every 35.2 ms. */
    public static final Ina226Config LARGE_CELLS =
            new Ina226Config(ConversionTime.US_1100, ConversionTime.US_1100, Averages.OF_16);

    /** MODE: continuous shunt and bus voltage. */
    private static final int CONTINUOUS_SHUNT_AND_BUS = 7;

    /** Word for CONFIG. */
    int word() {
        return Ina226Registers.FIXED | averages.code() << 9 | bus.code() << 6 | shunt.code() << 3 | CONTINUOUS_SHUNT_AND_BUS;
    }

    /** Nominal time of one result by the chip's clock, ns. */
    public long cycleNanos() {
        return 1000L * (bus.micros() + shunt.micros()) * averages.count();
    }
}
