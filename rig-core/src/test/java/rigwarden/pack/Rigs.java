package rigwarden.pack;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/** Worlds and hands for the checks of this package. */
final class Rigs {
    static final long SECOND = 1_000_000_000L;
    static final long HOUR = 3600 * SECOND;

    private Rigs() {}

    static World plain(double ampHours, double volts, double ohms) {
        WorldParameters one = WorldParameters.oneCell();
        return new World(one.withCells(List.of(CellParameters.plain(ampHours, volts, ohms))), new double[] {0.5});
    }

    /** Eight plain cells of 1 mΩ behind the given path, half full. */
    static World eight(double emfVoltsEach, PathParameters path, Protection protection) {
        CellParameters cell = CellParameters.plain(100, emfVoltsEach, 1e-3);
        double[] half = new double[8];
        Arrays.fill(half, 0.5);
        return new World(WorldParameters.inSeries(8).withCells(Collections.nCopies(8, cell)).withPath(path)
                .withProtection(protection), half);
    }

    /** By hand, from the emf of those eight to the bus: cells, nine links, sixteen joints, fuse, shunt, contactor. */
    static double ohmsOfEight() {
        return 8 * 1e-3 + 9 * 0.03e-3 + 16 * 0.05e-3 + 0.75e-3;
    }

    /** A path with next to no bleed, so that closed forms need not mention it. */
    static PathParameters dry(Supply supply, Load... loads) {
        return PathParameters.bench().withBus(4.7, 10e-3, 1e15).withLeads(1e-3, 2e-3).withSupplies(supply)
                .withLoads(loads);
    }

    static void relay(World world, Line line, boolean closed) {
        world.inflict(closed ? new Fault.Weld(line) : new Fault.StuckOpen(line));
    }

    static void advance(World world, double seconds) {
        world.advanceTo(world.nanos() + Math.round(seconds * SECOND));
    }

    /** Beats every 100 ms, as the loop does. */
    static void beat(World world, double seconds) {
        long end = world.nanos() + Math.round(seconds * SECOND);
        boolean level = false;
        while (world.nanos() < end) {
            level = !level;
            world.line(Line.HEARTBEAT, level);
            advance(world, 0.1);
        }
    }

    /** K1 and one relay closed and welded there, so that long runs need no heartbeat. */
    static void join(World world, Line relay) {
        world.inflict(new Fault.Weld(Line.CONTACTOR));
        world.inflict(new Fault.Weld(relay));
    }
}
