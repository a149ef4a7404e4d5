package rigwarden.emulated;

import rigwarden.pack.Chance;

/**
 * The MAX31856 thermocouple converter at register level (Maxim 19-7534; addresses and codes as in the project's check values,
 * everything about times, modes and faults from memory of the sheet). It turns what its terminals see into degrees by the
 * exact function of the type that it is set to. Conversions that have ended since the chip was last looked at take what
 * stands there now. An open probe shows no voltage, and so the cold junction, whether it is tested for or not; with the
 * inputs outside the supply nothing is converted. Not emulated: types of "voltage mode", hysteresis of the comparator mode.
 */
public final class Max31856Emulator extends SpiChip {
    private static final int CONTROL = 0x00;
    private static final int SETTINGS = 0x01;
    private static final int MASK = 0x02;
    private static final int COLD_OFFSET = 0x09;
    private static final int COLD = 0x0A;
    private static final int HOT = 0x0C;
    private static final int STATUS = 0x0F;
    private static final int REGISTERS = 16;
    private static final int WRITE = 0x80;
    private static final int NO_ADDRESS = -1;
    private static final int ONE_SHOT = 1 << 6;
    private static final int LATCHED = 1 << 2;
    private static final int ACKNOWLEDGE = 1 << 1;
    private static final int[] RESET = {0, 0x03, 0xFF, 0x7F, 0xC0, 0x7F, 0xFF, 0x80, 0, 0, 0, 0, 0, 0, 0, 0};
    private static final Couple[] TYPES = {Couple.B, Couple.E, Couple.J, Couple.K, Couple.N, Couple.R, Couple.S, Couple.T};

    private static final double HOT_STEP = 0.0078125;
    private static final double COLD_STEP = 0.015625;
    private static final double OFFSET_STEP = 0.0625;
    private static final int HOT_MOST = (1 << 18) - 1;
    private static final int COLD_MOST = (1 << 13) - 1;

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

        /** Whether an input is below the chip's ground or above its supply: a bare bead on live metal. */
        boolean outsideSupply();
    }

    /**
     * How this specimen errs.
     *
     * @param hotKelvin added to the thermocouple's temperature
     * @param coldKelvin added to the chip's own temperature, which is in the other too
     * @param noiseKelvin root mean square of one conversion without averaging
     * @param slowness relative error of all times; 0.08 is about the most that the sheet allows
     */
    public record Errors(double hotKelvin, double coldKelvin, double noiseKelvin, double slowness) {
        /** A specimen without any error. */
        public static final Errors NONE = new Errors(0, 0, 0, 0);
    }

    private final Wiring wiring;
    private final Errors errors;
    private final Chance noise;
    private final int[] registers = new int[REGISTERS];
    private final Max31856Faults faults;
    private final Max31856Cycle cycle;
    private boolean unread;
    private int address = NO_ADDRESS;
    private boolean writing;
    private boolean shotOrdered;

    /** A chip that has just been given its supply: it converts nothing until it is told to. */
    public Max31856Emulator(Wiring wiring, Errors errors, Chance noise) {
        this.wiring = wiring;
        this.errors = errors;
        this.noise = noise;
        faults = new Max31856Faults();
        cycle = new Max31856Cycle(errors.slowness());
        reset();
    }

    private Max31856Emulator(Max31856Emulator other, Wiring wiring) {
        super(other);
        this.wiring = wiring;
        errors = other.errors;
        noise = other.noise.copy();
        System.arraycopy(other.registers, 0, registers, 0, REGISTERS);
        faults = other.faults.copy();
        cycle = other.cycle.copy();
        unread = other.unread;
        address = other.address;
        writing = other.writing;
        shotOrdered = other.shotOrdered;
    }

    /** The same chip in the same state, its noise included, on other wires. */
    public Max31856Emulator copy(Wiring newWiring) {
        return new Max31856Emulator(this, newWiring);
    }

    /** Level of the DRDY pin: low from the end of a conversion until its last byte is read. */
    public boolean readyPinHigh() {
        refresh();
        return !unread;
    }

    /** Level of the FAULT pin: low while a fault that is not masked is shown. */
    public boolean faultPinHigh() {
        refresh();
        return !faults.pulled(registers[MASK]);
    }

    /** It samples on the second edge, whichever way the clock rests. */
    @Override
    public boolean understands(int mode) {
        return (mode & 1) == 1;
    }

    @Override
    void reset() {
        System.arraycopy(RESET, 0, registers, 0, REGISTERS);
        faults.clear();
        cycle.stop();
        unread = false;
        shotOrdered = false;
    }

    @Override
    void begin() {
        refresh();
        address = NO_ADDRESS;
    }

    @Override
    int clocked(int in) {
        if (address == NO_ADDRESS) {
            writing = (in & WRITE) != 0;
            address = in & (REGISTERS - 1);
            return 0xFF;
        }
        int answer = 0xFF;
        if (writing) {
            store(address, in);
        } else {
            answer = address == STATUS ? faults.status() : registers[address];
            unread &= address != HOT + 2;
        }
        address = (address + 1) % REGISTERS;
        return answer;
    }

    /** A single conversion begins when the select is taken away after the frame that ordered it. */
    @Override
    void end() {
        if (shotOrdered) {
            shotOrdered = false;
            cycle.start(wiring.nanos(), registers[CONTROL], registers[SETTINGS]);
        }
    }

    @Override
    boolean changes(int first) {
        return (first & WRITE) != 0;
    }

    private void store(int register, int word) {
        if (register > COLD + 1 || register >= COLD && (registers[CONTROL] & Max31856Cycle.COLD_OFF) == 0) {
            return;
        }
        if (register == CONTROL) {
            control(word);
        } else {
            registers[register] = register == MASK ? word | 0xC0 : word;
        }
    }

    private void control(int word) {
        boolean was = (registers[CONTROL] & Max31856Cycle.AUTOMATIC) != 0;
        boolean automatic = (word & Max31856Cycle.AUTOMATIC) != 0;
        registers[CONTROL] = word & ~(ACKNOWLEDGE | ONE_SHOT);
        if ((word & ACKNOWLEDGE) != 0 && latched()) {
            faults.acknowledge();
        }
        if (automatic && !was) {
            cycle.start(wiring.nanos(), word, registers[SETTINGS]);
        } else if (!automatic && was) {
            cycle.stop();
        }
        shotOrdered = !automatic && (word & ONE_SHOT) != 0;
        if (shotOrdered || !was && !automatic && cycle.busy()) {
            registers[CONTROL] |= ONE_SHOT;
        }
    }

    private boolean latched() {
        return (registers[CONTROL] & LATCHED) != 0;
    }

    private void refresh() {
        faults.strayed(wiring.outsideSupply(), latched());
        while (cycle.ended(wiring.nanos())) {
            convert();
            registers[CONTROL] &= ~ONE_SHOT;
            cycle.goOn(wiring.nanos(), registers[CONTROL], registers[SETTINGS]);
        }
    }

    private void convert() {
        boolean open = wiring.open();
        if (cycle.testsOpen()) {
            faults.tested(open, latched());
        }
        if (wiring.outsideSupply()) {
            return;
        }
        Couple couple = TYPES[registers[SETTINGS] & 7];
        double cold = cold();
        double hot = hot(couple, cold, open ? 0 : wiring.emfMillivolts());
        int code = Math.clamp(Math.round(hot / HOT_STEP), -HOT_MOST - 1, HOT_MOST) << 5;
        for (int i = 0; i < 3; i++) {
            registers[HOT + i] = code >> 8 * (2 - i) & 0xFF;
        }
        faults.judge(hot, cold, couple, registers, latched());
        unread = true;
    }

    /** What the chip takes for its own temperature: measured with the offset, or what the host has written. */
    private double cold() {
        if ((registers[CONTROL] & Max31856Cycle.COLD_OFF) == 0) {
            double celsius = wiring.coldCelsius() + errors.coldKelvin() + (byte) registers[COLD_OFFSET] * OFFSET_STEP;
            int code = Math.clamp(Math.round(celsius / COLD_STEP), -COLD_MOST - 1, COLD_MOST) << 2;
            registers[COLD] = code >> 8 & 0xFF;
            registers[COLD + 1] = code & 0xFF;
        }
        return ((short) (registers[COLD] << 8 | registers[COLD + 1]) >> 2) * COLD_STEP;
    }

    private double hot(Couple couple, double cold, double emfMillivolts) {
        double hot = couple.celsius(emfMillivolts + couple.millivolts(cold)) + errors.hotKelvin();
        if (errors.noiseKelvin() > 0) {
            hot += noise.nextGaussian() * errors.noiseKelvin() / Math.sqrt(Max31856Cycle.samples(registers[SETTINGS]));
        }
        return hot;
    }
}
