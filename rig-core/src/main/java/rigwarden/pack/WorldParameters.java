package rigwarden.pack;

import java.util.List;

/**
 * Everything about an emulated bench that stays as it is.
 *
 * @param cells in series, from B−
 * @param path ohmic parts outside the cells
 * @param bus capacitors and bleed behind the contactor
 * @param contacts times of contactors and heartbeat stage
 * @param beads where the probes sit, with their lag
 * @param roomCelsius the room at the start
 * @param roomKelvinPerHour its drift
 * @param sourceAmps most that the source can deliver, A
 */
public record WorldParameters(
        List<CellParameters> cells,
        PathOhms path,
        Bus bus,
        Contacts contacts,
        List<Bead> beads,
        double roomCelsius,
        double roomKelvinPerHour,
        double sourceAmps) {

    /**
     * Ohmic parts (assumptions of the pack model page: Holm and film resistance of a fair joint, 0.05 mΩ).
     *
     * @param jointOhms each joint of a stud
     * @param tabOhms each tab inside the stud
     * @param linkOhms each bar or lug
     * @param shuntOhms the shunt, true
     * @param contactorOhms the closed contactor
     * @param cableOhms cables and fuse together
     */
    public record PathOhms(
            double jointOhms, double tabOhms, double linkOhms, double shuntOhms, double contactorOhms, double cableOhms) {
        public static final PathOhms FAIR = new PathOhms(0.05e-3, 0.02e-3, 0.03e-3, 0.5e-3, 0.3e-3, 1.5e-3);
    }

    /** Behind the contactor: farads, bleed and pre-charge resistors in ohms. */
    public record Bus(double farads, double bleedOhms, double prechargeOhms) {}

    /**
     * Times, in nanoseconds.
     *
     * @param closeNanos coil on to contact closed
     * @param openNanos coil off to contact open
     * @param heartbeatHoldNanos last edge to dead coil supply
     */
    public record Contacts(long closeNanos, long openNanos, long heartbeatHoldNanos) {
        public static final Contacts USUAL = new Contacts(30_000_000L, 15_000_000L, 800_000_000L);
    }

    /** A bead on a place, following it with a time constant. */
    public record Bead(Place place, int cell, double lagSeconds) {}

    public WorldParameters {
        cells = List.copyOf(cells);
        beads = List.copyOf(beads);
    }
}
