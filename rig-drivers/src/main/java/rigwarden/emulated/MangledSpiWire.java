package rigwarden.emulated;

import rigwarden.pack.Chance;

/** Changes bytes in both directions of an SPI bus and knows nothing of what they mean. */
final class MangledSpiWire implements SpiWire {
    private final SpiWire inner;
    private final double share;
    private final Chance chance;

    /**
     * Over another wire.
     *
     * @param share of bytes, 0…1
     */
    MangledSpiWire(SpiWire inner, double share, Chance chance) {
        this.inner = inner;
        this.share = share;
        this.chance = chance;
    }

    @Override
    public int carried(SpiMessage message, byte[] got) {
        byte[] sent = message.bytes().clone();
        Garbling.bytes(sent, 0, sent.length, share, chance);
        int count = inner.carried(message.with(sent), got);
        Garbling.bytes(got, 0, count, share, chance);
        return count;
    }

    @Override
    public SpiWire onto(SpiWire base, VirtualClock clock) {
        return new MangledSpiWire(inner.onto(base, clock), share, chance.copy());
    }
}
