package rigwarden.chip.mcp9601;

/**
 * How the chip converts: without end, cold junction at 0.0625 °C.
 *
 * @param type of thermocouple
 * @param filter 0 (none)…7 (slowest)
 * @param bits 16 bits convert in about 80 ms
 */
public record Mcp9601Config(Thermocouple type, int filter, AdcBits bits) {
    /** Type T: the smallest uncertainty of chip and wire near room temperature. */
    public static final Mcp9601Config CELL_PROBE = new Mcp9601Config(Thermocouple.T, 1, AdcBits.BITS_16);

    public Mcp9601Config {
        if (filter < 0 || filter > 7) {
            throw new IllegalArgumentException("filter 0 to 7, not " + filter);
        }
    }

    /** Byte for SENSOR CONFIGURATION. */
    int sensorByte() {
        return type.code() << 4 | filter;
    }

    /** Byte for DEVICE CONFIGURATION: normal mode, no burst. */
    int deviceByte() {
        return bits.code() << 5;
    }
}
