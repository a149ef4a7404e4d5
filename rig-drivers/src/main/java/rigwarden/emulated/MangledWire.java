package rigwarden.emulated;

import java.util.Arrays;
import rigwarden.pack.Chance;

/** Changes bytes in both directions and knows nothing of what they mean. */
final class MangledWire implements Wire {
    private final Wire inner;
    private final double share;
    private final Chance chance;

    /**
     * Over another wire.
     *
     * @param share of bytes, 0…1
     */
    MangledWire(Wire inner, double share, Chance chance) {
        this.inner = inner;
        this.share = share;
        this.chance = chance;
    }

    @Override
    public int written(int address, byte[] bytes, int offset, int length) {
        byte[] sent = Arrays.copyOfRange(bytes, offset, offset + length);
        Garbling.bytes(sent, 0, length, share, chance);
        return inner.written(address, sent, 0, length);
    }

    @Override
    public int read(int address, byte[] into, int offset, int length) {
        int count = inner.read(address, into, offset, length);
        Garbling.bytes(into, offset, count, share, chance);
        return count;
    }

    @Override
    public Wire onto(Wire base, VirtualClock clock) {
        return new MangledWire(inner.onto(base, clock), share, chance.copy());
    }
}
