package rigwarden.warden;

import rigwarden.rig.Channel;

/** Both sides of the contactor compared. */
public final class Sides {
    /** Bus and pack count as equal within this share of the pack's voltage. */
    public static final double SHARE = 0.05;

    private Sides() {}

    /** Whether both sides are valid and within 5 % of the pack. */
    public static boolean match(Scan scan, Channel packVolts, Channel busVolts) {
        return scan.readings().get(packVolts.index()) instanceof Reading.Valid pack
                && scan.readings().get(busVolts.index()) instanceof Reading.Valid bus
                && Math.abs(pack.value() - bus.value()) <= SHARE * Math.abs(pack.value());
    }
}
