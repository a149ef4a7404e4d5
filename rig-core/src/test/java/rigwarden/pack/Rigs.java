package rigwarden.pack;

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
