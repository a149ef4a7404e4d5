package rigwarden.emulated;

/**
 * The registers of an MCP23017 in pairs, A before B, and its interrupts. IOCON is one register with two addresses. What a pin
 * that interrupts looked like is captured once, and again only after GPIO or INTCAP of its port was read.
 */
final class Mcp23017Ports {
    private static final int IODIR = 0;
    private static final int IPOL = 1;
    private static final int GPINTEN = 2;
    private static final int DEFVAL = 3;
    private static final int INTCON = 4;
    private static final int IOCON = 5;
    private static final int GPPU = 6;
    private static final int INTF = 7;
    private static final int INTCAP = 8;
    private static final int GPIO = 9;
    private static final int OLAT = 10;
    private static final int PAIRS = 11;
    private static final int IOCON_BITS = 0xFE;
    private static final int MIRRORED = 1 << 6;
    private static final int OPEN_DRAIN = 1 << 2;
    private static final int ACTIVE_HIGH = 1 << 1;

    private final int[][] registers = new int[PAIRS][2];
    private final int[] pins = new int[2];

    Mcp23017Ports() {
        reset();
    }

    Mcp23017Ports copy() {
        Mcp23017Ports copy = new Mcp23017Ports();
        for (int pair = 0; pair < PAIRS; pair++) {
            System.arraycopy(registers[pair], 0, copy.registers[pair], 0, 2);
        }
        System.arraycopy(pins, 0, copy.pins, 0, 2);
        return copy;
    }

    void reset() {
        for (int[] pair : registers) {
            pair[0] = 0;
            pair[1] = 0;
        }
        registers[IODIR][0] = 0xFF;
        registers[IODIR][1] = 0xFF;
    }

    int control() {
        return registers[IOCON][0];
    }

    boolean isOutput(int pin) {
        return !bit(IODIR, pin);
    }

    boolean latched(int pin) {
        return bit(OLAT, pin);
    }

    boolean pullsUp(int pin) {
        return bit(GPPU, pin);
    }

    private boolean bit(int pair, int pin) {
        return (registers[pair][pin / 8] >> pin % 8 & 1) != 0;
    }

    /** The pins as they stand, with no change to be noticed. */
    void settle(int levels) {
        pins[0] = levels & 0xFF;
        pins[1] = levels >> 8 & 0xFF;
    }

    /** The pins as they stand now; what has changed may interrupt. */
    void look(int levels) {
        for (int port = 0; port < 2; port++) {
            int now = levels >> 8 * port & 0xFF;
            int compared = registers[INTCON][port];
            int differs = (now ^ pins[port]) & ~compared | (shown(now, port) ^ registers[DEFVAL][port]) & compared;
            int interrupting = differs & registers[GPINTEN][port];
            pins[port] = now;
            if (interrupting != 0 && registers[INTF][port] == 0) {
                registers[INTF][port] = interrupting;
                registers[INTCAP][port] = shown(now, port);
            }
        }
    }

    private int shown(int levels, int port) {
        return levels ^ registers[IPOL][port] & registers[IODIR][port];
    }

    /** A register by its place in pairs; reading GPIO or INTCAP takes the port's interrupt away. */
    int value(int place) {
        int port = place % 2;
        int pair = place / 2;
        int answer = pair == GPIO ? shown(pins[port], port) : registers[pair][port];
        if (pair == GPIO || pair == INTCAP) {
            registers[INTF][port] = 0;
        }
        return answer;
    }

    /** Writes to GPIO go to the latch; INTF and INTCAP cannot be written. */
    void store(int place, int word) {
        int port = place % 2;
        int pair = place / 2;
        switch (pair) {
            case IOCON -> {
                registers[IOCON][0] = word & IOCON_BITS;
                registers[IOCON][1] = word & IOCON_BITS;
            }
            case GPIO -> registers[OLAT][port] = word;
            case INTF, INTCAP -> { }
            default -> registers[pair][port] = word;
        }
    }

    /** An open-drain pin is pulled up outside. */
    boolean interruptHigh(int port) {
        boolean mirrored = (control() & MIRRORED) != 0;
        boolean active = registers[INTF][port] != 0 || mirrored && registers[INTF][1 - port] != 0;
        boolean activeHigh = (control() & ACTIVE_HIGH) != 0 && (control() & OPEN_DRAIN) == 0;
        return active == activeHigh;
    }
}
