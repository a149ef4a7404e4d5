package rigwarden.chip.mcp9601;

/** Pointers and bits (DS20005426F, section 5; what only the MCP9601 has, and its identity, from memory). */
final class Mcp9601Registers {
    static final int HOT_JUNCTION = 0x00;
    static final int STATUS = 0x04;
    static final int SENSOR_CONFIG = 0x05;
    static final int DEVICE_CONFIG = 0x06;
    static final int DEVICE_ID = 0x20;

    /** STATUS: a new hot-junction temperature; cleared by writing 0. */
    static final int UPDATED = 1 << 6;
    /** STATUS: a wire of the probe touches supply or ground (MCP9601 only). */
    static final int SHORT = 1 << 5;
    /** STATUS: the probe is open, or its voltage out of range. */
    static final int OPEN = 1 << 4;

    /** DEVICE_ID, high byte. */
    static final int DEVICE = 0x41;

    private Mcp9601Registers() {}
}
