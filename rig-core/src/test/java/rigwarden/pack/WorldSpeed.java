package rigwarden.pack;

import java.util.Arrays;

/** Prints how long a steady step of 100 ms takes. Started by hand; nothing is asserted about a machine's speed. */
public final class WorldSpeed {
    private WorldSpeed() {}

    /** Runs one and eight cells, at rest and with current, several rounds each. */
    public static void main(String[] arguments) {
        for (int cells : new int[] {1, 8}) {
            for (double amps : new double[] {0, 20}) {
                for (int round = 0; round < 5; round++) {
                    run(cells, amps);
                }
            }
        }
    }

    private static void run(int cells, double amps) {
        WorldParameters p = cells == 1 ? WorldParameters.oneCell() : WorldParameters.inSeries(cells);
        double[] charges = new double[cells];
        Arrays.fill(charges, 0.9);
        World world = new World(p, charges);
        Rigs.join(world, Line.SINK_RELAY);
        world.sink(0, amps > 0, amps);
        int steps = 100_000;
        long start = System.nanoTime();
        for (int i = 0; i < steps; i++) {
            world.advanceTo(world.nanos() + 100_000_000);
        }
        System.out.printf("%d cells, %.0f A: %d ns a step, charge %.4f%n", cells, amps,
                (System.nanoTime() - start) / steps, world.charge(0));
    }
}
