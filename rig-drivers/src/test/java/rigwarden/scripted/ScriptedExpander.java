package rigwarden.scripted;

import java.util.Arrays;

/** Puts an MCP23017 on a wire, as it is after power-up. Its pins follow its latches when a test says so. */
public final class ScriptedExpander {
    private static final int IODIR = 0x00;
    private static final int GPIO = 0x12;
    private static final int OLAT = 0x14;
    private static final int SIZE = 0x16;

    private final Wire wire;
    private final int address;
    private int inputs;

    public ScriptedExpander(Wire wire, int address) {
        this.wire = wire;
        this.address = address;
        brownOut();
    }

    /** Every pin an input, everything else 0. */
    public void brownOut() {
        byte[] memory = wire.memory(address, SIZE);
        Arrays.fill(memory, (byte) 0);
        wire.put(address, IODIR, 0xFF, 0xFF);
        settle();
    }

    /** Outputs go where their latches are, inputs where the test put them. */
    public void settle() {
        int directions = wire.bytesOf(address, IODIR);
        pins(inputs & directions | wire.bytesOf(address, OLAT) & ~directions);
    }

    /** Levels of the inputs, as bits with port A first. */
    public void inputs(int levels) {
        inputs = levels;
        settle();
    }

    /** Shorts pins to ground, whatever their latches say. */
    public void holdLow(int bits) {
        pins(wire.bytesOf(address, GPIO) & ~bits);
    }

    private void pins(int levels) {
        wire.put(address, GPIO, levels >> 8, levels);
    }
}
