package rigwarden.pack;

import java.util.Arrays;

/** Prints how long a steady step of 100 ms takes. Started by hand; nothing is asserted about a machine's speed. */
public final class WorldSpeed {
    private WorldSpeed() {}

    /** Runs one and eight cells and the pack with its inverter, at rest and with current, several rounds each. */
    public static void main(String[] arguments) {
        for (int round = 0; round < 5; round++) {
            run("one cell at rest", WorldParameters.oneCell(), 0);
            run("one cell, 20 A", WorldParameters.oneCell(), 20);
            run("eight cells at rest", WorldParameters.inSeries(8), 0);
            run("eight cells, 20 A", WorldParameters.inSeries(8), 20);
            heat("eight cells, inverter", WorldParameters.pack());
        }
    }

    private static void run(String name, WorldParameters p, double amps) {
        World world = full(p);
        Rigs.join(world, Line.SINK_RELAY);
        world.sink(0, amps > 0, amps);
        time(name, world, 100_000);
    }

    private static void heat(String name, WorldParameters p) {
        World world = full(p);
        Rigs.join(world, Line.sink(1));
        time(name, world, 40_000);
    }

    private static World full(WorldParameters p) {
        double[] charges = new double[p.cells().size()];
        Arrays.fill(charges, 0.9);
        return new World(p, charges);
    }

    private static void time(String name, World world, int steps) {
        long start = System.nanoTime();
        for (int i = 0; i < steps; i++) {
            world.advanceTo(world.nanos() + 100_000_000);
        }
        System.out.printf("%s: %d ns a step, charge %.4f%n", name, (System.nanoTime() - start) / steps,
                world.charge(0));
    }
}
