package rigwarden.pack;

import java.util.Collections;
import java.util.List;

/**
 * All that a {@link World} is made from.
 *
 * @param cells in series, the first at B−; at least one
 * @param path power path
 * @param coils coils, contacts, heartbeat stage
 * @param warmth heat
 * @param room air
 * @param beads temperature probes
 * @param protection the battery's own, or none
 */
public record WorldParameters(List<CellParameters> cells, PathParameters path, CoilParameters coils,
        WarmthParameters warmth, Room room, List<Bead> beads, Protection protection) {
    public WorldParameters {
        cells = List.copyOf(cells);
        beads = List.copyOf(beads);
        if (cells.isEmpty()) {
            throw new IllegalArgumentException("a world needs a cell");
        }
    }

    /** One 105 Ah cell on the bench at 22 °C; beads on body, studs and in the air (lags: assumption). */
    public static WorldParameters oneCell() {
        return new WorldParameters(List.of(CellParameters.lfp105()), PathParameters.bench(), CoilParameters.usual(),
                WarmthParameters.alone(), new Room(22, 0), List.of(new Bead(Node.body(0), 8),
                        new Bead(Node.stud(0, true), 5), new Bead(Node.stud(0, false), 5), new Bead(Node.ROOM, 30)),
                Protection.NONE);
    }

    /** Equal 105 Ah cells in series, side by side, at 22 °C, with the beads of {@link #oneCell()} on the first. */
    public static WorldParameters inSeries(int cells) {
        WorldParameters one = oneCell();
        return new WorldParameters(Collections.nCopies(cells, CellParameters.lfp105()), one.path, one.coils,
                WarmthParameters.inPack(), one.room, one.beads, one.protection);
    }

    /**
     * The second reference rig: eight 105 Ah cells at 22 °C; source 0 the plain charger; sink 0 a small electronic one,
     * sink 1 the inverter, each behind 2 mΩ of lead; the battery's own protection without a balancer.
     */
    public static WorldParameters pack() {
        return inSeries(8).withPath(PathParameters.bench().withLeads(1e-3, 2e-3).withSupplies(Supply.Charger.usual())
                .withLoads(new Load.Electronic(0.1), Load.Inverter.usual()))
                .withProtection(Protection.usual().withBalancer(0, 0));
    }

    /** The same with other cells. */
    public WorldParameters withCells(List<CellParameters> others) {
        return new WorldParameters(others, path, coils, warmth, room, beads, protection);
    }

    /** The same with another path. */
    public WorldParameters withPath(PathParameters other) {
        return new WorldParameters(cells, other, coils, warmth, room, beads, protection);
    }

    /** The same with other coils. */
    public WorldParameters withCoils(CoilParameters other) {
        return new WorldParameters(cells, path, other, warmth, room, beads, protection);
    }

    /** The same with other ways for heat. */
    public WorldParameters withWarmth(WarmthParameters other) {
        return new WorldParameters(cells, path, coils, other, room, beads, protection);
    }

    /** The same in another room. */
    public WorldParameters withRoom(Room other) {
        return new WorldParameters(cells, path, coils, warmth, other, beads, protection);
    }

    /** The same with other probes. */
    public WorldParameters withBeads(List<Bead> others) {
        return new WorldParameters(cells, path, coils, warmth, room, others, protection);
    }

    /** The same with another protection. */
    public WorldParameters withProtection(Protection other) {
        return new WorldParameters(cells, path, coils, warmth, room, beads, other);
    }
}
