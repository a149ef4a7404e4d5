package rigwarden.chip.mcp9601;

/** Register to code. Pure. */
public final class Mcp9601Codec {
    /** Span of the hot-junction register, °C: 12 whole bits with sign (DS20005426F, section 5.1.1). */
    private static final double SPAN_CELSIUS = 4096;
    /** One code, 0.0625 °C. */
    public static final double CELSIUS_PER_CODE = SPAN_CELSIUS / (1 << 16);

    private Mcp9601Codec() {}

    /** Signed code from the 16 bit register. */
    public static int code(int register) {
        return (short) register;
    }
}
