package rigwarden.chip.mcp9601;

import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.warden.Failure;

/**
 * The device: four reads and one write for a reading. It remembers nothing between scans. A configuration that is not as
 * written costs a reading, and is written anew: a bit that was turned on the wire must not cost a night.
 */
public final class Mcp9601 {
    /** −40 °C and 125 °C, in codes. */
    private static final int LEAST_LIKELY = -640;
    private static final int MOST_LIKELY = 2000;

    private final Chip chip;
    private final Mcp9601Config config;

    /** Takes up a device. Nothing is sent. */
    public Mcp9601(Chip chip, Mcp9601Config config) {
        this.chip = chip;
        this.config = config;
    }

    /**
     * Checks who answers, configures, and reads back.
     *
     * @throws BusFailure when the chip is silent, another one (an MCP9600 does not find open probes), or does not
     *     keep its configuration
     */
    public void configure() throws BusFailure {
        reference();
        write();
        compare(Mcp9601Registers.SENSOR_CONFIG, config.sensorByte());
        compare(Mcp9601Registers.DEVICE_CONFIG, config.deviceByte());
    }

    /**
     * Asks who answers.
     *
     * @throws BusFailure NONSENSE when it is another chip
     */
    public void reference() throws BusFailure {
        int device = chip.readWord(Mcp9601Registers.DEVICE_ID);
        if (device >> 8 != Mcp9601Registers.DEVICE) {
            throw new BusFailure(Failure.NONSENSE, chip + ": device " + Integer.toHexString(device)
                    + "h; an MCP9601 says 41xxh. Others do not report an open probe and are refused.");
        }
    }

    private void write() throws BusFailure {
        chip.writeByte(Mcp9601Registers.SENSOR_CONFIG, config.sensorByte());
        chip.writeByte(Mcp9601Registers.DEVICE_CONFIG, config.deviceByte());
        chip.writeByte(Mcp9601Registers.STATUS, 0);
    }

    /**
     * Reads the hot junction.
     *
     * @return code, 0.0625 °C each
     * @throws BusFailure OPEN, SHORTED, NOT_READY without a new temperature, CONFIGURATION_LOST after a brown-out
     */
    public int read() throws BusFailure {
        int status = chip.readByte(Mcp9601Registers.STATUS);
        if ((status & Mcp9601Registers.SHORT) != 0) {
            throw new BusFailure(Failure.SHORTED, chip + ": probe shorted");
        }
        if ((status & Mcp9601Registers.OPEN) != 0) {
            throw new BusFailure(Failure.OPEN, chip + ": probe open");
        }
        if ((status & Mcp9601Registers.UPDATED) == 0) {
            throw new BusFailure(Failure.NOT_READY, chip + ": no new temperature");
        }
        int code = hotJunction();
        kept();
        chip.writeByte(Mcp9601Registers.STATUS, 0);
        return code;
    }

    /** A word that no joint and no room can show is looked at twice: a byte upset on the wire would stand until the next reading, and longer if that fails. */
    private int hotJunction() throws BusFailure {
        int code = Mcp9601Codec.code(chip.readWord(Mcp9601Registers.HOT_JUNCTION));
        boolean likely = code >= LEAST_LIKELY && code <= MOST_LIKELY;
        return likely ? code : Mcp9601Codec.code(chip.readWord(Mcp9601Registers.HOT_JUNCTION));
    }

    /** Another thermocouple's type would give a temperature that is false and looks true. */
    private void kept() throws BusFailure {
        try {
            compare(Mcp9601Registers.SENSOR_CONFIG, config.sensorByte());
            compare(Mcp9601Registers.DEVICE_CONFIG, config.deviceByte());
        } catch (BusFailure lost) {
            if (lost.why() == Failure.CONFIGURATION_LOST) {
                write();
            }
            throw lost;
        }
    }

    /** Looked at twice before it is believed: what is written anew begins its conversions anew, which would cost two readings for one upset byte. */
    private void compare(int register, int written) throws BusFailure {
        int found = chip.readByte(register);
        if (found != written) {
            found = chip.readByte(register);
        }
        if (found != written) {
            throw new BusFailure(Failure.CONFIGURATION_LOST, chip + ": register " + Integer.toHexString(register)
                    + "h reads " + Integer.toHexString(found) + "h, written " + Integer.toHexString(written) + "h");
        }
    }
}
