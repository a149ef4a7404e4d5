package rigwarden.chip.ina228;

import rigwarden.bus.Chip;

/** Words of the chip to numbers and back (SLYS021A, sections 7.6 and 8.1.2). No I/O. */
public final class Ina228Codec {
    /** Continuous conversion of shunt and bus (ADC_CONFIG bits 15:12). */
    private static final int MODE_SHUNT_AND_BUS = 0xB;
    /** 1052 µs (codes of VBUSCT, VSHCT, VTCT). */
    private static final int TIME_1052_MICROS = 5;
    /** 16 conversions (code of AVG). */
    private static final int AVERAGE_16 = 2;

    /** What ADC_CONFIG is set to. */
    public static final int ADC_CONFIG = MODE_SHUNT_AND_BUS << 12 | TIME_1052_MICROS << 9 | TIME_1052_MICROS << 6
            | TIME_1052_MICROS << 3 | AVERAGE_16;
    /** One averaged pair of conversions by the chip's own clock: 16 × (1052 + 1052) µs. */
    public static final long CYCLE_NANOS = 16 * 2 * 1_052_000L;

    private Ina228Codec() {}

    /** SHUNT_CAL = 13107.2 × 10⁶ × CURRENT_LSB × R for the ± 163.84 mV range. */
    public static int shuntCal(double ampsPerCode, double shuntOhms) {
        return (int) Math.round(13107.2e6 * ampsPerCode * shuntOhms);
    }

    /** CURRENT, VSHUNT: 20 bits, signed, in bits 23:4 of the register. */
    public static long signed20(long register) {
        return Chip.signed(register >> 4, 20);
    }

    /** VBUS: 20 bits in bits 23:4, never negative. */
    public static long unsigned20(long register) {
        return register >> 4;
    }

    /** CHARGE: 40 bits, signed. */
    public static long signed40(long register) {
        return Chip.signed(register, 40);
    }
}
