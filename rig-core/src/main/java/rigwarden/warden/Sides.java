package rigwarden.warden;

/** Both sides of the contactor compared. */
final class Sides {
    /** Bus and pack count as equal within this share of the pack's voltage. */
    static final double SHARE = 0.05;

    private Sides() {}

    /** Whether both sides are valid and within 5 % of the pack. */
    static boolean match(Scan scan, Places places) {
        return scan.readings().get(places.pack.index()) instanceof Reading.Valid pack
                && scan.readings().get(places.bus.index()) instanceof Reading.Valid bus
                && Math.abs(pack.value() - bus.value()) <= SHARE * Math.abs(pack.value());
    }
}
