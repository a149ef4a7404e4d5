package rigwarden.chip.ina226;

import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.warden.Failure;

/**
 * The device. Each scan calls {@link #check}, {@link #current} and {@link #bus}: five register reads. It has no
 * accumulator, and it remembers nothing between scans.
 */
public final class Ina226 {
    private static final int READS_TO_FALL = 2;

    private final Chip chip;
    private final Ina226Config config;

    /** Takes up a device. Nothing is sent. */
    public Ina226(Chip chip, Ina226Config config) {
        this.chip = chip;
        this.config = config;
    }

    /**
     * Checks who answers, configures, and reads back.
     *
     * @throws BusFailure when the chip is silent, another one, or does not keep its configuration
     */
    public void configure() throws BusFailure {
        reference();
        chip.writeWord(Ina226Registers.CONFIG, config.word());
        compare();
    }

    /**
     * Asks who answers.
     *
     * @throws BusFailure NONSENSE when it is another chip
     */
    public void reference() throws BusFailure {
        int maker = chip.readWord(Ina226Registers.MANUFACTURER_ID);
        int die = chip.readWord(Ina226Registers.DIE_ID);
        if (maker != Ina226Registers.MANUFACTURER || die >> 4 != Ina226Registers.DIE) {
            throw new BusFailure(Failure.NONSENSE, chip + ": maker " + Integer.toHexString(maker) + "h, die "
                    + Integer.toHexString(die) + "h; an INA226 says 5449h and 226xh");
        }
    }

    /**
     * First part of a scan: the configuration is still there, and a new result is. A configuration that is not is written
     * anew, for the next scan. The flag of a new result must fall by being read: that of a chip that hangs stays.
     *
     * @throws BusFailure CONFIGURATION_LOST after a brown-out, NOT_READY without a new result, NONSENSE when the chip
     *     reports an overflow
     */
    public void check() throws BusFailure {
        try {
            compare();
        } catch (BusFailure lost) {
            if (lost.why() == Failure.CONFIGURATION_LOST) {
                chip.writeWord(Ina226Registers.CONFIG, config.word());
            }
            throw lost;
        }
        int flags = chip.readWord(Ina226Registers.MASK_ENABLE);
        if ((flags & Ina226Registers.OVF) != 0) {
            throw new BusFailure(Failure.NONSENSE, chip + ": MASK_ENABLE reads " + Integer.toHexString(flags) + "h");
        }
        if ((flags & Ina226Registers.CVRF) == 0) {
            throw new BusFailure(Failure.NOT_READY, chip + ": no new conversion");
        }
        falls();
    }

    /** A second result in so short a time is possible, a third is not. */
    private void falls() throws BusFailure {
        for (int read = 0; read < READS_TO_FALL; read++) {
            if ((chip.readWord(Ina226Registers.MASK_ENABLE) & Ina226Registers.CVRF) == 0) {
                return;
            }
        }
        throw new BusFailure(Failure.NOT_READY, chip + ": its flag of a new conversion does not fall");
    }

    /** Code of the shunt's voltage, 2.5 µV each, positive into the cells. */
    public int current() throws BusFailure {
        return Ina226Codec.shuntCode(chip.readWord(Ina226Registers.SHUNT));
    }

    /** Code of the voltage at the bus pin, 1.25 mV each. */
    public int bus() throws BusFailure {
        return Ina226Codec.busCode(chip.readWord(Ina226Registers.BUS));
    }

    private void compare() throws BusFailure {
        int found = chip.readWord(Ina226Registers.CONFIG);
        if (found != config.word()) {
            throw new BusFailure(Failure.CONFIGURATION_LOST, chip + ": configuration reads " + Integer.toHexString(found)
                    + "h, written " + Integer.toHexString(config.word()) + "h");
        }
    }
}
