package rigwarden.emulated;

/**
 * From the ADS1220's pins to volts before its gain: multiplexer and amplifier (TI SBAS501C; multiplexer and gain as in the
 * project's check values, limits of the amplifier from memory). Each output of the amplifier stays 0.2 V from the supply's
 * ends, and its common mode must not be below a quarter of the supply; by how much it is wrong there the sheet does not
 * say: it is taken to lose in proportion (assumption).
 */
final class Ads1220Front {
    private static final int[] POSITIVE = {0, 0, 0, 1, 1, 2, 1, 3, 0, 1, 2, 3};
    private static final int[] NEGATIVE = {1, 2, 3, 2, 3, 3, 0, 2, -1, -1, -1, -1};
    private static final int REFERENCE_MONITOR = 12;
    private static final int SUPPLY_MONITOR = 13;
    private static final int MONITOR_DIVIDER = 4;
    private static final int MOST_WITHOUT_AMPLIFIER = 2;
    private static final double HEADROOM_VOLTS = 0.2;
    private static final double BESIDE_SUPPLY_VOLTS = 0.1;
    private static final double INTERNAL_VOLTS = 2.048;
    private static final double COMMON_SHARE = 0.25;

    private final Ads1220Emulator.Wiring wiring;
    private final Ads1220Emulator.Errors errors;

    Ads1220Front(Ads1220Emulator.Wiring wiring, Ads1220Emulator.Errors errors) {
        this.wiring = wiring;
        this.errors = errors;
    }

    /** The gain that is in force: monitors have none. */
    static int gain(int inputs) {
        return monitor(inputs) ? 1 : 1 << (inputs >> 1 & 7);
    }

    private static boolean monitor(int inputs) {
        int mux = inputs >> 4;
        return mux == REFERENCE_MONITOR || mux == SUPPLY_MONITOR;
    }

    /** The reference that is in force, V, by its two bits. */
    double referenceVolts(int code) {
        return switch (code) {
            case 0 -> INTERNAL_VOLTS * (1 + errors.reference());
            case 1 -> wiring.referenceVolts(0);
            case 2 -> wiring.referenceVolts(1);
            default -> errors.supplyVolts();
        };
    }

    /** What the converter sees, divided by the gain, V. */
    double volts(int inputs, int reference) {
        int mux = inputs >> 4;
        if (mux == REFERENCE_MONITOR) {
            return referenceVolts(reference) / MONITOR_DIVIDER;
        }
        if (mux == SUPPLY_MONITOR) {
            return errors.supplyVolts() / MONITOR_DIVIDER;
        }
        if (mux > SUPPLY_MONITOR) {
            return 0;
        }
        double plus = pin(POSITIVE[mux]);
        double minus = NEGATIVE[mux] < 0 ? 0 : pin(NEGATIVE[mux]);
        boolean bypassed = (inputs & 1) != 0 && (inputs >> 1 & 7) <= MOST_WITHOUT_AMPLIFIER;
        return bypassed ? plus - minus : amplified(plus, minus, gain(inputs));
    }

    private double pin(int number) {
        return Math.clamp(wiring.inputVolts(number), -BESIDE_SUPPLY_VOLTS, errors.supplyVolts() + BESIDE_SUPPLY_VOLTS);
    }

    private double amplified(double plus, double minus, int gain) {
        double common = (plus + minus) / 2;
        double half = (plus - minus) * gain / 2;
        double most = errors.supplyVolts() - HEADROOM_VOLTS;
        double swing = Math.clamp(common + half, HEADROOM_VOLTS, most) - Math.clamp(common - half, HEADROOM_VOLTS, most);
        double share = Math.clamp(common / (COMMON_SHARE * errors.supplyVolts()), 0, 1);
        return swing * share / gain;
    }
}
