package rigwarden.rig;

/**
 * An MCP23017, whose pins are lines of the panel like the header's own.
 *
 * @param name a person's name for it
 * @param bus I2C bus
 * @param address I2C address
 * @param firstLine number of GPA0 as a line; GPA7 is the eighth, GPB0 the ninth
 */
public record Expander(String name, int bus, int address, int firstLine) {
    /** Pins of the chip. */
    public static final int PINS = 16;

    /** Whether a line is one of its pins. */
    public boolean has(int line) {
        return line >= firstLine && line < firstLine + PINS;
    }

    /** Whether a line is a pin that can only drive: GPA7 and GPB7 (DS20001952, revision of 2022; from memory). */
    public boolean drivesOnly(int line) {
        return has(line) && (line - firstLine) % 8 == 7;
    }
}
