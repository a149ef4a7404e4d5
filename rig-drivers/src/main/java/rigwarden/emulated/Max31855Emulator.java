package rigwarden.emulated;

import rigwarden.pack.Chance;

/**
 * The MAX31855 thermocouple converter (Maxim 19-5793 rev 5, tables 2 to 5; sensitivities of table 1 and times from memory).
 * It takes the couple for a straight line, so that a healthy chip reads wrongly by what a real one does. The frame is fixed
 * when the select becomes active; before the first conversion it is empty. With a fault the thermocouple's bits are zero
 * (the sheet leaves them open). Not emulated: conversions that a long select holds up.
 */
public final class Max31855Emulator extends SpiChip {
    private static final long WAKE_NANOS = 200_000_000;
    private static final long CONVERSION_NANOS = 70_000_000;
    private static final int FRAME_BITS = 32;
    private static final int FAULT = 1 << 16;
    private static final int SHORT_TO_SUPPLY = 1 << 2;
    private static final int SHORT_TO_GROUND = 1 << 1;
    private static final int OPEN = 1;
    private static final double HOT_STEP = 0.25;
    private static final double COLD_STEP = 0.0625;
    private static final int HOT_MOST = (1 << 13) - 1;
    private static final int COLD_MOST = (1 << 11) - 1;

    /** Which version of the part it is: each is made for one type. */
    public enum Version {
        /** For type K. */
        K(41.276),
        /** For type J. */
        J(57.953),
        /** For type N. */
        N(36.256),
        /** For type T. */
        T(52.18),
        /** For type E. */
        E(76.373);

        private final double microvoltsPerKelvin;

        Version(double microvoltsPerKelvin) {
            this.microvoltsPerKelvin = microvoltsPerKelvin;
        }
    }

    /** What hangs on the chip. */
    public interface Wiring {
        /** The host's time in nanoseconds; never steps back. */
        long nanos();

        /** Volts between the probe's ends, mV: see {@link Couple#millivolts(double, double)}. */
        double emfMillivolts();

        /** Temperature of the chip, where the probe's wires end. */
        double coldCelsius();

        /** Whether the probe's circuit is broken. */
        boolean open();

        /** Whether the probe touches the chip's ground. */
        boolean shortedToGround();

        /** Whether the probe touches the chip's supply. */
        boolean shortedToSupply();
    }

    /**
     * How this specimen errs.
     *
     * @param hotKelvin added to the thermocouple's temperature
     * @param coldKelvin added to the chip's own temperature, which is in the other too
     * @param noiseKelvin root mean square of one conversion
     * @param slowness relative error of the conversion time; 0.43 is the most that the sheet allows
     */
    public record Errors(double hotKelvin, double coldKelvin, double noiseKelvin, double slowness) {
        /** A specimen without any error. */
        public static final Errors NONE = new Errors(0, 0, 0, 0);
    }

    private final Version version;
    private final Wiring wiring;
    private final Errors errors;
    private final Chance noise;
    private long endNanos;
    private int frame;
    private int shifting;
    private int shifted;

    /** A chip that has had its supply for a while: its first conversion has just ended. */
    public Max31855Emulator(Version version, Wiring wiring, Errors errors, Chance noise) {
        this.version = version;
        this.wiring = wiring;
        this.errors = errors;
        this.noise = noise;
        endNanos = wiring.nanos();
    }

    private Max31855Emulator(Max31855Emulator other, Wiring wiring) {
        super(other);
        version = other.version;
        this.wiring = wiring;
        errors = other.errors;
        noise = other.noise.copy();
        endNanos = other.endNanos;
        frame = other.frame;
        shifting = other.shifting;
        shifted = other.shifted;
    }

    /** The same chip in the same state, its noise included, on other wires. */
    public Max31855Emulator copy(Wiring newWiring) {
        return new Max31855Emulator(this, newWiring);
    }

    /** The first bit is there before the first edge of the clock, which is low at first. */
    @Override
    public boolean understands(int mode) {
        return mode == 0;
    }

    @Override
    void reset() {
        frame = 0;
        shifting = 0;
        shifted = 0;
        endNanos = wiring.nanos() + WAKE_NANOS;
    }

    @Override
    void begin() {
        refresh();
        shifting = frame;
        shifted = 0;
    }

    /** What the chip says after its 32 bits is not in the sheet: zeros. */
    @Override
    int clocked(int in) {
        if (shifted >= FRAME_BITS) {
            return 0;
        }
        shifted += Byte.SIZE;
        return shifting >>> (FRAME_BITS - shifted) & 0xFF;
    }

    @Override
    void end() {
        shifted = 0;
    }

    @Override
    boolean changes(int first) {
        return false;
    }

    private void refresh() {
        long nanos = wiring.nanos();
        if (nanos < endNanos) {
            return;
        }
        long conversion = Math.round(CONVERSION_NANOS * (1 + errors.slowness()));
        endNanos += ((nanos - endNanos) / conversion + 1) * conversion;
        convert();
    }

    private void convert() {
        double cold = wiring.coldCelsius() + errors.coldKelvin();
        int faults = (wiring.open() ? OPEN : 0)
                | (wiring.shortedToGround() ? SHORT_TO_GROUND : 0)
                | (wiring.shortedToSupply() ? SHORT_TO_SUPPLY : 0);
        int coldCode = Math.clamp(Math.round(cold / COLD_STEP), -COLD_MOST - 1, COLD_MOST);
        frame = (coldCode & 0xFFF) << 4 | faults;
        if (faults != 0) {
            frame |= FAULT;
            return;
        }
        double hot = cold + wiring.emfMillivolts() * 1e3 / version.microvoltsPerKelvin + errors.hotKelvin();
        if (errors.noiseKelvin() > 0) {
            hot += noise.nextGaussian() * errors.noiseKelvin();
        }
        int hotCode = Math.clamp(Math.round(hot / HOT_STEP), -HOT_MOST - 1, HOT_MOST);
        frame |= (hotCode & 0x3FFF) << 18;
    }
}
