package rigwarden.emulated;

import rigwarden.pack.Chance;

/**
 * The INA226 shunt monitor at register level (TI SBOS547, register map and worked example; alert, flags and absolute maximum
 * ratings from memory of it). Results change at the end of a cycle of averages and are what stands on the pins when they are
 * first looked at after it. A pin that is seen outside −0.3 V to 40 V kills the chip, and a dead chip acknowledges nothing for
 * ever, whatever its supply does; what nobody looks at while it lasts is not seen. Not emulated: the alert response address.
 */
public final class Ina226Emulator extends RegisterChip {
    private static final int CONFIG = 0x00;
    private static final int SHUNT = 0x01;
    private static final int BUS = 0x02;
    private static final int POWER = 0x03;
    private static final int CURRENT = 0x04;
    private static final int CALIBRATION = 0x05;
    private static final int MASK = 0x06;
    private static final int LIMIT = 0x07;
    private static final int MAKER = 0xFE;
    private static final int DIE = 0xFF;

    private static final int RST = 1 << 15;
    private static final int CONFIG_RESET = 0x4127;
    private static final int CONFIG_BITS = 0x0FFF;
    private static final int ALWAYS_SET = 0x4000;
    private static final double SHUNT_STEP = 2.5e-6;
    private static final double BUS_STEP = 1.25e-3;
    private static final int BUS_MOST = 0x7FFF;
    private static final int POWER_MOST = 0xFFFF;
    private static final int CURRENT_DIVISOR = 2048;
    private static final int POWER_DIVISOR = 20000;
    private static final double LEAST_VOLTS = -0.3;
    private static final double MOST_VOLTS = 40;

    /** What is on the chip's pins. */
    public interface Wiring {
        /** The host's time in nanoseconds; never steps back. */
        long nanos();

        /** Volts across the shunt now, positive as charge. */
        double shuntVolts();

        /** Volts of the shunt inputs against the chip's ground. */
        double commonModeVolts();

        /** Volts at the bus pin against the chip's ground. */
        double busVolts();
    }

    /**
     * How this specimen errs.
     *
     * @param gain relative error of the shunt input; 0.001 is the datasheet's limit
     * @param offsetVolts added to the shunt's volts; 10 µV is the datasheet's limit
     * @param busGain relative error of the bus input
     * @param oscillator relative error of the chip's clock
     * @param noiseVolts root mean square of one shunt conversion without averaging
     */
    public record Errors(double gain, double offsetVolts, double busGain, double oscillator, double noiseVolts) {
        /** A specimen without any error. */
        public static final Errors NONE = new Errors(0, 0, 0, 0, 0);
    }

    private final Wiring wiring;
    private final Errors errors;
    private final Chance noise;
    private final Ina226Cycle cycle;
    private final Ina226Alert alert;
    private boolean dead;
    private int config;
    private int calibration;
    private int shuntCode;
    private int busCode;
    private int currentCode;
    private int powerCode;

    /** A chip that has just been given its supply. */
    public Ina226Emulator(Wiring wiring, Errors errors, Chance noise) {
        this.wiring = wiring;
        this.errors = errors;
        this.noise = noise;
        cycle = new Ina226Cycle(errors.oscillator());
        alert = new Ina226Alert();
        reset();
    }

    private Ina226Emulator(Ina226Emulator other, Wiring wiring) {
        super(other);
        this.wiring = wiring;
        errors = other.errors;
        noise = other.noise.copy();
        cycle = other.cycle.copy();
        alert = other.alert.copy();
        dead = other.dead;
        config = other.config;
        calibration = other.calibration;
        shuntCode = other.shuntCode;
        busCode = other.busCode;
        currentCode = other.currentCode;
        powerCode = other.powerCode;
    }

    /** The same chip in the same state, its noise included, on other wires. */
    public Ina226Emulator copy(Wiring newWiring) {
        return new Ina226Emulator(this, newWiring);
    }

    /** Whether it has been killed. Asking looks at its pins, as every transfer does. */
    @Override
    public boolean dead() {
        dead |= kills(wiring.busVolts()) || kills(wiring.commonModeVolts())
                || kills(wiring.commonModeVolts() + wiring.shuntVolts());
        return dead;
    }

    private static boolean kills(double volts) {
        return volts < LEAST_VOLTS || volts > MOST_VOLTS;
    }

    /** Level of the alert pin, which a resistor pulls up. */
    public boolean alertPinHigh() {
        if (dead()) {
            return true;
        }
        refresh();
        return alert.pinHigh();
    }

    @Override
    void reset() {
        config = CONFIG_RESET;
        calibration = 0;
        shuntCode = 0;
        busCode = 0;
        currentCode = 0;
        powerCode = 0;
        alert.reset();
        cycle.restart(wiring.nanos(), config);
    }

    @Override
    int width(int register) {
        return register <= LIMIT || register >= MAKER ? 2 : 0;
    }

    @Override
    long value(int register) {
        refresh();
        return switch (register) {
            case CONFIG -> config;
            case SHUNT -> shuntCode;
            case BUS -> busCode;
            case POWER -> powerCode;
            case CURRENT -> currentCode;
            case CALIBRATION -> calibration;
            case MASK -> alert.read();
            case LIMIT -> alert.limit;
            case MAKER -> 0x5449;
            case DIE -> 0x2260;
            default -> throw new IllegalStateException("no register " + register);
        };
    }

    @Override
    boolean store(int register, int word) {
        refresh();
        switch (register) {
            case CONFIG -> configure(word);
            case CALIBRATION -> calibration = word & 0x7FFF;
            case MASK -> alert.write(word);
            case LIMIT -> alert.limit = word;
            default -> {
                return false;
            }
        }
        return true;
    }

    private void configure(int word) {
        if ((word & RST) != 0) {
            reset();
            return;
        }
        config = word & CONFIG_BITS | ALWAYS_SET;
        cycle.restart(wiring.nanos(), config);
        if (!cycle.poweredDown()) {
            alert.unready();
        }
    }

    private void refresh() {
        if (cycle.ended(wiring.nanos())) {
            convert();
        }
    }

    /** Current and power are cut, not rounded, as in the worked example; both are zero without a calibration. */
    private void convert() {
        if (cycle.measuresShunt()) {
            double volts = wiring.shuntVolts() * (1 + errors.gain()) + errors.offsetVolts();
            if (errors.noiseVolts() > 0) {
                volts += noise.nextGaussian() * errors.noiseVolts() / Math.sqrt(cycle.averages());
            }
            shuntCode = Math.clamp(Math.round(volts / SHUNT_STEP), Short.MIN_VALUE, Short.MAX_VALUE);
        }
        if (cycle.measuresBus()) {
            busCode = Math.clamp(Math.round(wiring.busVolts() * (1 + errors.busGain()) / BUS_STEP), 0, BUS_MOST);
        }
        long current = (long) shuntCode * calibration / CURRENT_DIVISOR;
        currentCode = Math.clamp(current, Short.MIN_VALUE, Short.MAX_VALUE);
        long power = Math.abs((long) currentCode) * busCode / POWER_DIVISOR;
        powerCode = Math.clamp(power, 0, POWER_MOST);
        alert.judge(shuntCode, busCode, powerCode, currentCode != current || powerCode != power);
    }
}
