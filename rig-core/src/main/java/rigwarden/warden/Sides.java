package rigwarden.warden;

import rigwarden.rig.Channel;

/** Both sides of the contactor compared. */
public final class Sides {
    /** Bus and pack count as equal within this share of the pack's voltage. */
    public static final double SHARE = 0.05;

    /** A pack below this is no pack: its sense wire may be off, and nothing matches it. */
    public static final double LEAST_PACK_V = 1;

    private Sides() {}

    /** Whether both sides are valid, the pack is one, and the bus is within 5 % of it. */
    public static boolean match(Scan scan, Channel packVolts, Channel busVolts) {
        return scan.readings().get(packVolts.index()) instanceof Reading.Valid pack
                && scan.readings().get(busVolts.index()) instanceof Reading.Valid bus
                && pack.value() >= LEAST_PACK_V
                && Math.abs(pack.value() - bus.value()) <= SHARE * Math.abs(pack.value());
    }

    /** Whether both sides are valid, the pack is one, and the bus has left it by more than 5 %, downward: nothing holds it up. */
    public static boolean below(Scan scan, Channel packVolts, Channel busVolts) {
        return scan.readings().get(packVolts.index()) instanceof Reading.Valid pack
                && scan.readings().get(busVolts.index()) instanceof Reading.Valid bus
                && pack.value() >= LEAST_PACK_V
                && bus.value() < (1 - SHARE) * pack.value();
    }
}
