package rigwarden.chip.mcp23017;

/** Addresses with IOCON.BANK = 0; each is followed by its twin of port B (DS20001952C, register map). */
final class Mcp23017Registers {
    static final int IODIR = 0x00;
    static final int IPOL = 0x02;
    static final int GPINTEN = 0x04;
    /** Where IOCON is while BANK is 1; with BANK = 0 it is port B's GPINTEN, which is 0 here too. */
    static final int IOCON_IN_OTHER_BANK = 0x05;
    /** Compared with by interrupts, of which none is enabled here: free to be written. */
    static final int DEFVAL = 0x06;
    static final int IOCON = 0x0A;
    static final int GPPU = 0x0C;
    static final int GPIO = 0x12;
    static final int OLAT = 0x14;

    private Mcp23017Registers() {}
}
