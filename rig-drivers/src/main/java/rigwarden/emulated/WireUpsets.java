package rigwarden.emulated;

import rigwarden.pack.Chance;

/**
 * What the wires of a real rig pick up now and then: a transfer that is not acknowledged, or one whose bytes arrive with one
 * bit turned. Which of them, and when, comes from a seed.
 */
public final class WireUpsets {
    private final Chance chance;
    private final double share;

    /** What becomes of one transfer. */
    enum Upset { NONE, NOT_ACKNOWLEDGED, BIT_TURNED }

    /**
     * None before the first transfer.
     *
     * @param share of transfers that are upset, 0…1
     */
    public WireUpsets(Chance chance, double share) {
        this.chance = chance;
        this.share = share;
    }

    Upset next() {
        double drawn = share == 0 ? 1 : chance.nextDouble();
        return drawn >= share ? Upset.NONE : drawn < share / 2 ? Upset.NOT_ACKNOWLEDGED : Upset.BIT_TURNED;
    }

    /** Turns one bit of what arrived. */
    void turn(byte[] bytes, int offset, int length) {
        if (length > 0) {
            int bit = chance.nextInt(8 * length);
            bytes[offset + bit / 8] ^= (byte) (1 << bit % 8);
        }
    }

    /** Whether it is what the host sends, of two that pass at once. */
    boolean outwards() {
        return chance.nextBoolean();
    }

    /** The same from here on, for a copy that goes its own way. */
    public WireUpsets copy() {
        return new WireUpsets(chance.copy(), share);
    }
}
