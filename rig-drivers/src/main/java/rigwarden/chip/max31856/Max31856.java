package rigwarden.chip.max31856;

import java.util.Arrays;
import rigwarden.bus.BusFailure;
import rigwarden.bus.SpiChip;
import rigwarden.warden.Failure;

/**
 * The device: three transactions for a reading. It has no identity; seven registers that nobody writes, and that no
 * other part holds alike, stand for one. Each reading begins the next conversion, and the chip's own flag, seen set after
 * the order and clear at the next reading, says that it took place. A configuration that is not as written costs a
 * reading and is written anew.
 */
public final class Max31856 {
    /** Times that an order to convert is given before the next reading is given up. */
    private static final int TRIES = 2;
    /** A conversion that has not ended by the third reading never will. */
    private static final int PATIENCE = 3;

    private final SpiChip chip;
    private final Max31856Config config;
    private boolean asked;
    private int waited;

    /** Takes up a device with what its driver knew. Nothing is sent. */
    public Max31856(SpiChip chip, Max31856Config config, Max31856State state) {
        this.chip = chip;
        this.config = config;
        asked = state.asked();
        waited = state.waited();
    }

    /**
     * Checks who answers, configures, reads back, and begins the first conversion.
     *
     * @throws BusFailure when the chip is silent, another one, or does not keep its configuration
     */
    public void configure() throws BusFailure {
        reference();
        write();
        keeps(all());
        begin();
    }

    /**
     * Looks at the registers that nobody writes.
     *
     * @throws BusFailure NO_ANSWER when the bus is stuck, NONSENSE when it is another chip
     */
    public void reference() throws BusFailure {
        identify(all());
    }

    /**
     * Reads the hot junction and begins the next conversion.
     *
     * @return code, 2⁻⁷ °C each
     * @throws BusFailure OPEN, NOT_READY without a new temperature, CONFIGURATION_LOST after a brown-out, NONSENSE when
     *     a wire of the probe touches another potential or the temperature is beyond the chip
     */
    public int read() throws BusFailure {
        byte[] registers = all();
        identify(registers);
        kept(registers);
        awaited(registers);
        begin();
        int status = registers[Max31856Registers.SR];
        if ((status & Max31856Registers.OPEN) != 0) {
            throw new BusFailure(Failure.OPEN, chip + ": probe open");
        }
        if ((status & Max31856Registers.OVER_UNDER_VOLTAGE) != 0) {
            throw new BusFailure(Failure.NONSENSE, chip + ": a wire of the probe is below ground or above supply");
        }
        if ((status & Max31856Registers.RANGE) != 0) {
            throw new BusFailure(Failure.NONSENSE, chip + ": out of the chip's range, SR reads "
                    + Integer.toHexString(status & 0xFF) + "h with its terminals at "
                    + Max31856Codec.coldCode(registers, Max31856Registers.CJTH) * Max31856Codec.COLD_CELSIUS_PER_CODE + " °C");
        }
        return Max31856Codec.code(registers, Max31856Registers.LTCBH);
    }

    private byte[] all() throws BusFailure {
        return chip.read(Max31856Registers.CR0, Max31856Registers.COUNT);
    }

    private void identify(byte[] registers) throws BusFailure {
        byte[] untouched = Max31856Registers.untouched();
        byte[] found = Arrays.copyOfRange(registers, Max31856Registers.MASK, Max31856Registers.MASK + untouched.length);
        if (!Arrays.equals(found, untouched)) {
            boolean stuck = true;
            for (byte b : registers) {
                stuck &= b == registers[0];
            }
            throw new BusFailure(stuck ? Failure.NO_ANSWER : Failure.NONSENSE, chip + ": thresholds read "
                    + Arrays.toString(found) + "; a MAX31856 says " + Arrays.toString(untouched) + " after power-up");
        }
    }

    private void kept(byte[] registers) throws BusFailure {
        try {
            keeps(registers);
        } catch (BusFailure lost) {
            write();
            begin();
            throw lost;
        }
    }

    /** Another thermocouple's type would give a temperature that is false and looks true. */
    private void keeps(byte[] registers) throws BusFailure {
        compare(registers, Max31856Registers.CR0, ~Max31856Registers.ONE_SHOT, config.controlByte());
        compare(registers, Max31856Registers.CR1, 0xFF, config.typeByte());
        compare(registers, Max31856Registers.CJTO, 0xFF, config.offsetByte());
    }

    private void compare(byte[] registers, int register, int mask, int written) throws BusFailure {
        int found = registers[register] & 0xFF & mask;
        if (found != written) {
            throw new BusFailure(Failure.CONFIGURATION_LOST, chip + ": register " + Integer.toHexString(register)
                    + "h reads " + Integer.toHexString(found) + "h, written " + Integer.toHexString(written) + "h");
        }
    }

    private void awaited(byte[] registers) throws BusFailure {
        if (!asked) {
            begin();
            throw new BusFailure(Failure.NOT_READY, chip + ": no conversion was seen to begin");
        }
        if ((registers[Max31856Registers.CR0] & Max31856Registers.ONE_SHOT) != 0) {
            waited++;
            if (waited >= PATIENCE) {
                write();
                begin();
            }
            throw new BusFailure(Failure.NOT_READY, chip + ": conversion still running");
        }
    }

    private void write() throws BusFailure {
        chip.write(Max31856Registers.WRITE | Max31856Registers.CR0, config.controlByte(), config.typeByte());
        chip.write(Max31856Registers.WRITE | Max31856Registers.CJTO, config.offsetByte());
    }

    /** Nothing acknowledges an order on this bus: it is seen in the register, or given once more. */
    private void begin() throws BusFailure {
        asked = false;
        waited = 0;
        for (int i = 0; i < TRIES && !asked; i++) {
            chip.write(Max31856Registers.WRITE | Max31856Registers.CR0, config.controlByte() | Max31856Registers.ONE_SHOT);
            asked = (chip.read(Max31856Registers.CR0, 1)[0] & Max31856Registers.ONE_SHOT) != 0;
        }
    }

    /** What the driver knows, for a copy that goes on with another chip in the same condition. */
    public Max31856State state() {
        return new Max31856State(asked, waited);
    }
}
