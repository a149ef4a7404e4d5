package rigwarden.emulated;

import rigwarden.pack.Chance;

/**
 * The INA228 shunt monitor at register level (TI SLYS021A, register map; bits of DIAG_ALRT and modes from memory
 * of it). Results change at the end of a conversion cycle of the chip's own clock and are what stands on the
 * pins when they are first looked at after it. Not emulated: limit comparison, the alert pin, temperature compensation
 * of the shunt; their registers store and read back.
 */
public final class Ina228Emulator extends RegisterChip {
    private static final int CONFIG = 0x00;
    private static final int ADC_CONFIG = 0x01;
    private static final int SHUNT_CAL = 0x02;
    private static final int SHUNT_TEMPCO = 0x03;
    private static final int VSHUNT = 0x04;
    private static final int VBUS = 0x05;
    private static final int DIETEMP = 0x06;
    private static final int CURRENT = 0x07;
    private static final int POWER = 0x08;
    private static final int ENERGY = 0x09;
    private static final int CHARGE = 0x0A;
    private static final int DIAG_ALRT = 0x0B;
    private static final int SHUNT_OVER = 0x0C;
    private static final int SHUNT_UNDER = 0x0D;
    private static final int BUS_OVER = 0x0E;
    private static final int BUS_UNDER = 0x0F;
    private static final int TEMP_LIMIT = 0x10;
    private static final int POWER_LIMIT = 0x11;
    private static final int MAKER = 0x3E;
    private static final int DEVICE = 0x3F;

    private static final int RST = 1 << 15;
    private static final int RSTACC = 1 << 14;
    private static final int RANGE_BIT = 1 << 4;
    private static final int MEMORY_GOOD = 1;
    private static final int CONVERSION_READY = 1 << 1;
    private static final int MATH_OVERFLOW = 1 << 9;
    private static final int CHARGE_OVERFLOW = 1 << 10;
    private static final int ENERGY_OVERFLOW = 1 << 11;
    private static final long FORTY_BITS = (1L << 40) - 1;
    /** Reset values of 00h to 11h; those of the result registers are in their own fields. */
    private static final int[] RESET = {
        0, 0xFB68, 0x1000, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0x7FFF, 0x8000, 0x7FFF, 0, 0x7FFF, 0xFFFF
    };

    /** What is on the chip's pins. */
    public interface Wiring {
        /** The host's time in nanoseconds; never steps back. */
        long nanos();

        /** Volts across the shunt now, positive as charge. */
        double shuntVolts();

        /** Integral of the shunt's volts over the host's seconds since any fixed start. */
        double shuntVoltSeconds();

        /** Volts at the bus pin against ground. */
        double busVolts();

        /** The chip's own temperature. */
        double dieCelsius();
    }

    /**
     * How this specimen errs.
     *
     * @param gain relative error of the shunt input: a reading is (1 + gain) of the truth
     * @param offsetVolts added to the shunt's volts
     * @param busGain relative error of the bus input
     * @param oscillator relative error of the chip's clock; 0.005 is the datasheet's limit
     * @param noiseVolts root mean square of one shunt conversion without averaging
     */
    public record Errors(double gain, double offsetVolts, double busGain, double oscillator, double noiseVolts) {
        /** A specimen without any error. */
        public static final Errors NONE = new Errors(0, 0, 0, 0, 0);
    }

    private final Wiring wiring;
    private final Errors errors;
    private final Chance noise;
    private final Ina228Cycle cycle;
    private final Ina228Sum sum;
    private final int[] stored = new int[RESET.length];
    private int shuntCode;
    private int busCode;
    private int temperatureCode;
    private int currentCode;
    private long powerCode;
    private int flags;

    /** A chip that has just been given its supply. */
    public Ina228Emulator(Wiring wiring, Errors errors, Chance noise) {
        this.wiring = wiring;
        this.errors = errors;
        this.noise = noise;
        cycle = new Ina228Cycle(errors.oscillator());
        sum = new Ina228Sum(errors);
        reset();
    }

    private Ina228Emulator(Ina228Emulator other, Wiring wiring) {
        super(other);
        this.wiring = wiring;
        errors = other.errors;
        noise = other.noise.copy();
        cycle = other.cycle.copy();
        sum = other.sum.copy();
        System.arraycopy(other.stored, 0, stored, 0, RESET.length);
        shuntCode = other.shuntCode;
        busCode = other.busCode;
        temperatureCode = other.temperatureCode;
        currentCode = other.currentCode;
        powerCode = other.powerCode;
        flags = other.flags;
    }

    /**
     * The same chip in the same state, its noise included, on other wires; the new integral must go on from the old.
     */
    public Ina228Emulator copy(Wiring newWiring) {
        return new Ina228Emulator(this, newWiring);
    }

    @Override
    void reset() {
        System.arraycopy(RESET, 0, stored, 0, RESET.length);
        shuntCode = 0;
        busCode = 0;
        temperatureCode = 0;
        currentCode = 0;
        powerCode = 0;
        flags = 0;
        sum.clear();
        restart();
    }

    @Override
    int width(int register) {
        return switch (register) {
            case CONFIG, ADC_CONFIG, SHUNT_CAL, SHUNT_TEMPCO, DIETEMP, DIAG_ALRT, SHUNT_OVER, SHUNT_UNDER, BUS_OVER,
                    BUS_UNDER, TEMP_LIMIT, POWER_LIMIT, MAKER, DEVICE -> 2;
            case VSHUNT, VBUS, CURRENT, POWER -> 3;
            case ENERGY, CHARGE -> 5;
            default -> 0;
        };
    }

    @Override
    long value(int register) {
        refresh();
        return switch (register) {
            case VSHUNT -> (long) shuntCode << 4;
            case VBUS -> (long) busCode << 4;
            case DIETEMP -> temperatureCode;
            case CURRENT -> (long) currentCode << 4;
            case POWER -> powerCode;
            case ENERGY -> {
                flags &= ~ENERGY_OVERFLOW;
                yield sum.energy() & FORTY_BITS;
            }
            case CHARGE -> {
                flags &= ~CHARGE_OVERFLOW;
                yield sum.charge() & FORTY_BITS;
            }
            case DIAG_ALRT -> {
                int seen = stored[DIAG_ALRT] | flags | MEMORY_GOOD;
                flags &= ~CONVERSION_READY;
                yield seen;
            }
            case MAKER -> 0x5449;
            case DEVICE -> 0x2281;
            default -> stored[register];
        };
    }

    @Override
    boolean store(int register, int word) {
        refresh();
        switch (register) {
            case CONFIG -> configure(word);
            case ADC_CONFIG -> {
                stored[ADC_CONFIG] = word;
                flags &= ~CONVERSION_READY;
                restart();
            }
            case SHUNT_CAL, BUS_OVER, BUS_UNDER -> stored[register] = word & 0x7FFF;
            case SHUNT_TEMPCO -> stored[register] = word & 0x3FFF;
            case DIAG_ALRT -> stored[register] = word & 0xF000;
            case SHUNT_OVER, SHUNT_UNDER, TEMP_LIMIT, POWER_LIMIT -> stored[register] = word;
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
        if ((word & RSTACC) != 0) {
            sum.clear();
            flags &= ~(MATH_OVERFLOW | CHARGE_OVERFLOW | ENERGY_OVERFLOW);
        }
        stored[CONFIG] = word & 0x3FF0;
    }

    private void restart() {
        cycle.restart(wiring.nanos(), stored[ADC_CONFIG], stored[CONFIG]);
        sum.mark(wiring);
    }

    private void refresh() {
        if (cycle.ended(wiring.nanos())) {
            convert();
        }
    }

    private void convert() {
        boolean fine = (stored[CONFIG] & RANGE_BIT) != 0;
        int calibration = stored[SHUNT_CAL];
        flags = flags & ~MATH_OVERFLOW | CONVERSION_READY;
        if (cycle.measuresShunt()) {
            double volts = wiring.shuntVolts() * (1 + errors.gain()) + errors.offsetVolts();
            if (errors.noiseVolts() > 0) {
                volts += noise.nextGaussian() * errors.noiseVolts() / Math.sqrt(cycle.averages());
            }
            shuntCode = Ina228Scale.shunt(volts, fine);
        }
        if (cycle.measuresBus()) {
            busCode = Ina228Scale.bus(wiring.busVolts() * (1 + errors.busGain()));
        }
        if (cycle.measuresDie()) {
            temperatureCode = Ina228Scale.temperature(wiring.dieCelsius());
        }
        long current = Ina228Scale.current(shuntCode, calibration);
        currentCode = Ina228Scale.signed20(current);
        powerCode = Ina228Scale.power(busCode, currentCode);
        if (currentCode != current || powerCode > Ina228Scale.POWER_FULL) {
            flags |= MATH_OVERFLOW;
            powerCode = Math.min(powerCode, Ina228Scale.POWER_FULL);
        }
        if (cycle.accumulates()) {
            sum.add(wiring, Ina228Scale.perVolt(fine, calibration));
            flags |= (sum.chargeOverflowed() ? CHARGE_OVERFLOW : 0) | (sum.energyOverflowed() ? ENERGY_OVERFLOW : 0);
        }
    }
}
