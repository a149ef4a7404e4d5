package rigwarden.chip.mcp23017;

/** Pins to bits. Pure. */
public final class Mcp23017Codec {
    private Mcp23017Codec() {}

    /**
     * Bit of a pin in the two registers of a pair, port A read first.
     *
     * @param pin 0…7 for GPA0…GPA7, 8…15 for GPB0…GPB7
     */
    public static int bit(int pin) {
        if (pin < 0 || pin > 15) {
            throw new IllegalArgumentException("an MCP23017 has pins 0 to 15, not " + pin);
        }
        return 1 << (pin ^ 8);
    }
}
