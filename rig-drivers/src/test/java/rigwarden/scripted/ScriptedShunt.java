package rigwarden.scripted;

/** Puts the registers of an INA228 on a wire, as a test wants them. */
public final class ScriptedShunt {
    private final Wire wire;
    private final int address;

    public ScriptedShunt(Wire wire, int address) {
        this.wire = wire;
        this.address = address;
        wire.put(address, 0x3E, 0x54, 0x49);
        wire.put(address, 0x3F, 0x22, 0x81);
        wire.put(address, 0x05, 0, 0, 0);
        ready(true);
        current(0);
        charge(0);
    }

    /** Conversion ready or not; flags latched, memory sound. The flag is not cleared by reading here. */
    public void ready(boolean ready) {
        wire.put(address, 0x0B, 0x80, ready ? 0x03 : 0x01);
    }

    public void current(int code) {
        wire.put(address, 0x07, code >> 12, code >> 4, code << 4);
    }

    public void charge(long code) {
        wire.put(address, 0x0A, (int) (code >> 32), (int) (code >> 24), (int) (code >> 16), (int) (code >> 8),
                (int) code);
    }
}
