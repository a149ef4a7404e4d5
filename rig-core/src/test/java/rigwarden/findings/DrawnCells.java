package rigwarden.findings;

import rigwarden.pack.CellParameters;
import rigwarden.pack.Chance;
import rigwarden.pack.EndRise;
import rigwarden.pack.WarmthParameters;

/** What differs from model cell to model cell, by the night's seed. */
final class DrawnCells {
    private DrawnCells() {}

    /** The slow resistance, a third of all, rises by 15 to 45 times towards empty and by 10 to 30 times towards full. */
    static EndRise ends(long seed) {
        Chance chance = Chance.of(seed, "night", "ends");
        return new EndRise(15 + 30 * chance.nextDouble(), 0.05, 10 + 20 * chance.nextDouble(), 0.06);
    }

    /** Time constant of a body: half an hour to four, each as likely as twice of it: the stated range. */
    private static double hours(long seed) {
        return 0.5 * Math.pow(8, Chance.of(seed, "night", "cooling").nextDouble());
    }

    /** A cell alone loses as much through its cables as to the room, up to what its studs let through; at the long end its lugs alone lose more, so that four hours drawn are three to three and a half. */
    static WarmthParameters cooledAlone(long seed) {
        double all = wattsPerKelvin(seed);
        double end = Math.min(all / 2, 0.4) / 2;
        double cable = 1 / (1 / end - 1 / 0.8 - 1 / 1.5) - 0.06;
        return WarmthParameters.withBody(all - 2 * end).withCables(Math.max(0, cable));
    }

    /** In a pack, bars and the cables of both ends take a little of each. */
    static WarmthParameters cooledInPack(long seed) {
        return WarmthParameters.withBody(Math.max(0.02, wattsPerKelvin(seed) - 0.12));
    }

    private static double wattsPerKelvin(long seed) {
        return joulesPerKelvin(seed) / (3600 * hours(seed));
    }

    /** Up to a fifth more or less than a usual cell's. */
    static double joulesPerKelvin(long seed) {
        return CellParameters.lfp105().joulesPerKelvin() * (0.8 + 0.4 * Chance.of(seed, "night", "heat").nextDouble());
    }
}
