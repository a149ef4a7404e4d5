package rigwarden.chip.mcp9601;

import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.bus.NoReading;
import rigwarden.warden.Failure;

/** One thermocouple. */
public final class Mcp9601 {
    private final Chip chip;

    public Mcp9601(Chip chip) {
        this.chip = chip;
    }

    /**
     * Checks who answers and configures.
     *
     * @throws BusFailure when it is no 9601 (the 9600 cannot see an open probe) or keeps nothing
     */
    public void begin() throws BusFailure {
        if (chip.read(Mcp9601Codec.DEVICE_ID, 2) >> 8 != Mcp9601Codec.IDENTITY) {
            throw new BusFailure("the chip at a probe's address is no MCP9601");
        }
        set(Mcp9601Codec.SENSOR_CONFIG, Mcp9601Codec.TYPE_T);
        set(Mcp9601Codec.DEVICE_CONFIG, Mcp9601Codec.SIXTEEN_BITS);
    }

    private void set(int register, int bits) throws BusFailure {
        chip.write(register, bits, 1);
        if (chip.read(register, 1) != bits) {
            throw new BusFailure("a probe's chip does not keep its configuration");
        }
    }

    /**
     * Takes the last conversion: three reads and a write.
     *
     * @return the code of the hot junction, 0.0625 °C each
     * @throws NoReading when the probe is open or shorted, nothing is new, or the chip is gone or reset
     */
    public long sample() throws NoReading {
        try {
            if (chip.read(Mcp9601Codec.DEVICE_CONFIG, 1) != Mcp9601Codec.SIXTEEN_BITS) {
                throw new NoReading(Failure.CONFIGURATION_LOST);
            }
            long status = chip.read(Mcp9601Codec.STATUS, 1);
            if ((status & Mcp9601Codec.OPEN) != 0) {
                throw new NoReading(Failure.OPEN);
            }
            if ((status & Mcp9601Codec.SHORTED) != 0) {
                throw new NoReading(Failure.SHORTED);
            }
            if ((status & Mcp9601Codec.UPDATED) == 0) {
                throw new NoReading(Failure.NOT_READY);
            }
            long code = Mcp9601Codec.code(chip.read(Mcp9601Codec.HOT_JUNCTION, 2));
            chip.write(Mcp9601Codec.STATUS, 0, 1);
            return code;
        } catch (BusFailure e) {
            throw new NoReading(Failure.NO_ANSWER);
        }
    }
}
