package rigwarden.emulated;

import rigwarden.pack.Chance;

/**
 * The ADS1220 converter at register level (TI SBAS501C; commands and configuration 1 to 3 from memory). It speaks SPI mode 1.
 * After power-on and RESET it is deaf for 58 µs, and converts once. Its DRDY pin falls when a conversion is ready and rises with
 * the next clock, whatever that clocks. A conversion that nobody has read goes out in front of whatever the host sends; once read
 * it is only to be had by RDATA, and the data pin rests high with DRDYM set, low without (assumption). A continuous chip begins
 * with START. Results are what stands on the pins when it is first looked at after a conversion. Not emulated: rejection
 * filters, current sources, burn-out sources, the switch, the DRDY on the data pin between frames; their bits read back.
 */
public final class Ads1220Emulator extends SpiChip {
    private static final int RESET = 0x06;
    private static final int START = 0x08;
    private static final int POWERDOWN = 0x02;
    private static final int READ_DATA = 0x10;
    private static final int READ_REGISTERS = 2;
    private static final int WRITE_REGISTERS = 4;
    private static final long DEAF_NANOS = 58_000;
    private static final int DATA_BITS = 24;

    /** What is on the chip's pins. */
    public interface Wiring {
        /** The host's time in nanoseconds; never steps back. */
        long nanos();

        /**
         * Volts at an input against the chip's ground.
         *
         * @param pin 0 to 3
         */
        double inputVolts(int pin);

        /**
         * Volts between the pins of an outer reference.
         *
         * @param pair 0 for REFP0 and REFN0, 1 for those that share AIN0 and AIN3
         */
        double referenceVolts(int pair);

        /** The chip's own temperature. */
        double dieCelsius();
    }

    /**
     * How this specimen errs.
     *
     * @param gain relative error of every reading
     * @param offsetVolts added to every reading, at the input
     * @param reference relative error of the internal reference
     * @param oscillator relative error of the chip's clock; 0.02 is the sheet's limit from memory
     * @param supplyVolts AVDD against AVSS
     * @param noiseVolts root mean square at the input at 20 samples a second
     * @param settleSeconds time constant with which what hangs on the inputs follows the multiplexer; 0 for at once
     */
    public record Errors(double gain, double offsetVolts, double reference, double oscillator, double supplyVolts,
            double noiseVolts, double settleSeconds) {
        /** A specimen without any error on this supply. */
        public static Errors none(double supplyVolts) {
            return new Errors(0, 0, 0, 0, supplyVolts, 0, 0);
        }
    }

    private final Wiring wiring;
    private final Ads1220Converter converter;
    private long hearsNanos;
    private int command;
    private int register;
    private int left;
    private int output;
    private int outputBits;
    private boolean outputIsData;

    /** A chip that has had its supply for long enough to hear; the conversion of its power-on goes on. */
    public Ads1220Emulator(Wiring wiring, Errors errors, Chance noise) {
        this.wiring = wiring;
        converter = new Ads1220Converter(wiring, errors, noise);
        converter.reset();
        hearsNanos = wiring.nanos();
    }

    private Ads1220Emulator(Ads1220Emulator other, Wiring wiring) {
        super(other);
        this.wiring = wiring;
        converter = other.converter.copy(wiring);
        hearsNanos = other.hearsNanos;
        command = other.command;
        register = other.register;
        left = other.left;
        output = other.output;
        outputBits = other.outputBits;
        outputIsData = other.outputIsData;
    }

    /** The same chip in the same state, its noise included, on other wires. */
    public Ads1220Emulator copy(Wiring newWiring) {
        return new Ads1220Emulator(this, newWiring);
    }

    /** Level of the DRDY pin. */
    public boolean readyPinHigh() {
        converter.refresh();
        return converter.readyPinHigh();
    }

    @Override
    public boolean understands(int mode) {
        return mode == 1;
    }

    @Override
    void reset() {
        converter.reset();
        hearsNanos = wiring.nanos() + DEAF_NANOS;
        left = 0;
        outputBits = 0;
    }

    @Override
    void begin() {
        converter.refresh();
        left = 0;
        if (converter.fresh()) {
            showData();
        }
    }

    @Override
    int clocked(int in) {
        converter.clocked();
        int answer = shiftedOut();
        if (wiring.nanos() < hearsNanos) {
            return answer;
        }
        if (left > 0) {
            goOn(in);
        } else {
            obey(in);
        }
        return answer;
    }

    @Override
    void end() {
        outputBits = 0;
    }

    @Override
    boolean changes(int first) {
        return first != 0 && first >> 2 != READ_DATA >> 2 && first >> 4 != READ_REGISTERS;
    }

    private int shiftedOut() {
        if (outputBits == 0) {
            return converter.showsReadyOnData() ? 0xFF : 0;
        }
        outputBits -= Byte.SIZE;
        if (outputIsData && outputBits == 0) {
            converter.wasRead();
        }
        return output >> outputBits & 0xFF;
    }

    private void goOn(int in) {
        left--;
        if (command == WRITE_REGISTERS) {
            converter.store(register, in);
            register++;
        } else if (left > 0) {
            register++;
            showRegister();
        }
    }

    private void obey(int in) {
        switch (in) {
            case RESET, RESET | 1 -> reset();
            case START, START | 1 -> converter.start();
            case POWERDOWN, POWERDOWN | 1 -> converter.powerDown();
            case READ_DATA, READ_DATA | 1, READ_DATA | 2, READ_DATA | 3 -> showData();
            default -> transferRegisters(in);
        }
    }

    /** Anything else is no order; it clocks what is to be read. */
    private void transferRegisters(int in) {
        int kind = in >> 4;
        if (kind != READ_REGISTERS && kind != WRITE_REGISTERS) {
            return;
        }
        command = kind;
        register = in >> 2 & 3;
        left = Math.min((in & 3) + 1, Ads1220Converter.REGISTERS - register);
        if (kind == READ_REGISTERS) {
            showRegister();
        }
    }

    private void showRegister() {
        output = converter.value(register);
        outputBits = Byte.SIZE;
        outputIsData = false;
    }

    private void showData() {
        output = converter.code();
        outputBits = DATA_BITS;
        outputIsData = true;
    }
}
