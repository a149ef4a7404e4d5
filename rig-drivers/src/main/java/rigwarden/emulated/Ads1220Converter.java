package rigwarden.emulated;

import rigwarden.pack.Chance;

/** The ADS1220's registers and conversions, without its serial port. */
final class Ads1220Converter {
    static final int REGISTERS = 4;
    private static final int INPUTS = 0;
    private static final int RATES = 1;
    private static final int REFERENCE = 2;
    private static final int CURRENTS = 3;
    private static final int CONTINUOUS = 1 << 2;
    private static final int OWN_TEMPERATURE = 1 << 1;
    private static final int READY_ON_DATA = 1 << 1;
    private static final double CODES = 0x1p23;
    private static final int CODE_MOST = (1 << 23) - 1;
    private static final double TEMPERATURE_STEP = 0.03125;
    private static final int TEMPERATURE_SHIFT = 10;
    private static final int TEMPERATURE_MOST = (1 << 13) - 1;

    private final Ads1220Emulator.Wiring wiring;
    private final Ads1220Emulator.Errors errors;
    private final Chance noise;
    private final Ads1220Front front;
    private final int[] registers = new int[REGISTERS];
    private long endNanos = Long.MAX_VALUE;
    private int code;
    private boolean readyPinHigh = true;
    private boolean fresh;
    private boolean poweringDown;
    private double formerVolts;
    private long switchedNanos;

    Ads1220Converter(Ads1220Emulator.Wiring wiring, Ads1220Emulator.Errors errors, Chance noise) {
        this.wiring = wiring;
        this.errors = errors;
        this.noise = noise;
        front = new Ads1220Front(wiring, errors);
    }

    Ads1220Converter copy(Ads1220Emulator.Wiring newWiring) {
        Ads1220Converter copy = new Ads1220Converter(newWiring, errors, noise.copy());
        System.arraycopy(registers, 0, copy.registers, 0, REGISTERS);
        copy.endNanos = endNanos;
        copy.code = code;
        copy.readyPinHigh = readyPinHigh;
        copy.fresh = fresh;
        copy.poweringDown = poweringDown;
        copy.formerVolts = formerVolts;
        copy.switchedNanos = switchedNanos;
        return copy;
    }

    /** Settings at their defaults, and one conversion with them. */
    void reset() {
        for (int i = 0; i < REGISTERS; i++) {
            registers[i] = 0;
        }
        code = 0;
        fresh = false;
        formerVolts = 0;
        switchedNanos = wiring.nanos();
        start();
    }

    /** The newest result, a number of 24 bits with sign. */
    int code() {
        return code;
    }

    /** Whether it has not been read yet. */
    boolean fresh() {
        return fresh;
    }

    void wasRead() {
        fresh = false;
    }

    boolean readyPinHigh() {
        return readyPinHigh;
    }

    /** The clock of the serial port has moved. */
    void clocked() {
        readyPinHigh = true;
    }

    boolean showsReadyOnData() {
        return (registers[CURRENTS] & READY_ON_DATA) != 0;
    }

    int value(int register) {
        return registers[register];
    }

    /** While a conversion is under way a write of any register begins it anew. */
    void store(int register, int word) {
        if (register == INPUTS && registers[INPUTS] >> 4 != word >> 4) {
            formerVolts = settled(wiring.nanos());
            switchedNanos = wiring.nanos();
        }
        registers[register] = register == CURRENTS ? word & 0xFE : word;
        if (endNanos != Long.MAX_VALUE) {
            begin();
        }
    }

    void start() {
        poweringDown = false;
        begin();
    }

    /** The conversion that is under way is the last. */
    void powerDown() {
        poweringDown = true;
    }

    private void begin() {
        readyPinHigh = true;
        endNanos = wiring.nanos() + Ads1220Timing.firstNanos(registers[RATES], errors.oscillator());
    }

    void refresh() {
        long nanos = wiring.nanos();
        if (nanos < endNanos) {
            return;
        }
        convert(nanos);
        if ((registers[RATES] & CONTINUOUS) != 0 && !poweringDown) {
            long next = Ads1220Timing.nextNanos(registers[RATES], errors.oscillator());
            endNanos += ((nanos - endNanos) / next + 1) * next;
        } else {
            endNanos = Long.MAX_VALUE;
        }
    }

    private void convert(long nanos) {
        fresh = true;
        readyPinHigh = false;
        if ((registers[RATES] & OWN_TEMPERATURE) != 0) {
            long steps = Math.round(wiring.dieCelsius() / TEMPERATURE_STEP);
            code = Math.clamp(steps, -TEMPERATURE_MOST - 1, TEMPERATURE_MOST) << TEMPERATURE_SHIFT;
            return;
        }
        double volts = settled(nanos) * (1 + errors.gain()) + errors.offsetVolts();
        if (errors.noiseVolts() > 0) {
            volts += noise.nextGaussian() * errors.noiseVolts() * Ads1220Timing.noise(registers[RATES]);
        }
        double full = front.referenceVolts(registers[REFERENCE] >> 6) / Ads1220Front.gain(registers[INPUTS]);
        code = Math.clamp(Math.round(volts / full * CODES), -CODE_MOST - 1, CODE_MOST);
    }

    /** What the converter sees at this instant, with what is left of the input before. */
    private double settled(long nanos) {
        double volts = front.volts(registers[INPUTS], registers[REFERENCE] >> 6);
        if (errors.settleSeconds() <= 0) {
            return volts;
        }
        return volts + (formerVolts - volts) * Math.exp(-(nanos - switchedNanos) * 1e-9 / errors.settleSeconds());
    }
}
