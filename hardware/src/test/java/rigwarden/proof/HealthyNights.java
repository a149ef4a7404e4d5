package rigwarden.proof;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.random.RandomGenerator;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.EmulatedRig;
import rigwarden.emulated.Mishap;
import rigwarden.emulated.Rehearsal;
import rigwarden.pack.Chance;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rig.Spot;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.run.Event;

/**
 * Nights on which nothing is broken, and everything happens that happens on a bench: wires that pick something up, a card that
 * stalls, contacts that spike, a room that drifts by eight kelvin, a thermostat, a charger that floats, an inverter that
 * quits and would start again, a hand probe that is carried about, drops, and whose plug comes out; every third night chips without noise,
 * and a rest in which their inputs stand still, so that they give one code for hours. Drawn from a seed. The clock on the wall, which somebody may set by an hour, is read by nothing
 * here ({@link ArchitectureTest}); what a real run does about it is {@code WallStepsTest}.
 */
final class HealthyNights {
    private static final double WIRE_SHARE = 1e-5;
    private static final double SPIKE_V = 0.2;
    private static final double STALL_S = 2;
    private static final long HOUR = 3_600_000_000_000L;

    private HealthyNights() {}

    /**
     * How a night went.
     *
     * @param name of the rig
     * @param hours of it
     * @param ended whether the programme came to its end
     * @param frozenHours for which the codes of all its voltages stood still at most
     * @param trip what tripped; empty on a night as it should be
     */
    record Night(String name, long seed, double hours, boolean ended, double frozenHours, Optional<Event.Tripped> trip) {}

    /** Whether the chips of this night have no noise. */
    static boolean quiet(long seed) {
        return seed % 3 == 0;
    }

    /** A night of one reference rig, cut off after so many hours. */
    static Night night(String bench, long seed, double mostHours) throws IOException, BusFailure {
        Read.Sound<Rig> rig = rig(bench, seed);
        Program program = program(bench, seed, rig);
        Stillness still = new Stillness(rig.value());
        EmulatedRig emulated = quiet(seed) ? EmulatedRig.quiet(rig.value(), seed) : new EmulatedRig(rig.value(), seed);
        Rehearsal rehearsal = new Rehearsal(rig.value(), program, emulated, upsets(rig.value(), seed), still);
        while (!rehearsal.over() && rehearsal.rig().clock().nanos() < mostHours * HOUR) {
            if (quiet(seed)) {
                still.rested(rehearsal.rig());
            }
            for (Event event : rehearsal.scan()) {
                if (event instanceof Event.Tripped tripped) {
                    return new Night(bench, seed, hours(rehearsal), false, still.hours(), Optional.of(tripped));
                }
            }
        }
        return new Night(bench, seed, hours(rehearsal), rehearsal.over(), still.hours(), Optional.empty());
    }

    /** On a quiet night the last rest is long, so that its inputs can stand still for hours. */
    private static Program program(String bench, long seed, Read.Sound<Rig> rig) throws IOException {
        String name = bench + "-night.toml";
        String text = Files.readString(Bench.RIGS.resolve(name));
        int last = text.lastIndexOf("at_least_min = 120");
        String rested = text.substring(0, last) + text.substring(last).replace("at_least_min = 120", "at_least_min = 540").replace("at_most_min = 180", "at_most_min = 600");
        return ((Read.Sound<Program>) ProgramFile.read(name, quiet(seed) ? rested : text, rig)).value();
    }

    private static double hours(Rehearsal rehearsal) {
        return rehearsal.rig().clock().nanos() / (double) HOUR;
    }

    private static Read.Sound<Rig> rig(String bench, long seed) throws IOException {
        RandomGenerator chance = Chance.of(seed, "healthy", bench);
        String text = Files.readString(Bench.RIGS.resolve(bench + ".toml"));
        double drift = chance.nextBoolean() ? 0.27 : -0.2;
        text = text.replaceFirst("room_c = \\d+", "room_c = " + (drift > 0 ? 15 : 23))
                .replaceFirst("room_drift_k_per_h = [\\d.-]+", "room_drift_k_per_h = " + drift);
        if (chance.nextBoolean()) {
            text = text.replaceFirst("pause_s = 0 ", "pause_s = 120 ");
        }
        if (chance.nextBoolean()) {
            text = text.replaceFirst("quit_v = 21.0", "quit_v = 23.0");
        }
        if (chance.nextBoolean()) {
            text = text.replaceFirst("floats = false ", "floats = true\nfloat_v = 27.2 ");
        }
        return (Read.Sound<Rig>) RigFile.read(bench + ".toml", text.replaceFirst("\\[panel\\]", loose(bench.equals("one-cell") ? 3 : 5) + "[panel]"));
    }

    /** The hand probe, on a free address. */
    private static String loose(int bus) {
        return """
                [[probe]]
                name = "loose_c"
                place = "loose"
                bus = %d
                address = 0x67
                uncertainty_k = 1.8
                lag_s = 8
                period_ms = 200

                """.formatted(bus);
    }

    private static List<Mishap> upsets(Rig rig, long seed) {
        RandomGenerator chance = Chance.of(seed, "healthy", "upsets");
        List<Mishap> upsets = new ArrayList<>(List.of(
                new Mishap("wires", new BoardFault.WiresUpset(WIRE_SHARE, seed), 0, 1),
                new Mishap("spikes", new BoardFault.ContactorSpikes(SPIKE_V), 0, 1)));
        for (int hour = 0; hour < 40; hour++) {
            long at = hour * HOUR + chance.nextLong(HOUR);
            upsets.add(new Mishap("card", new BoardFault.CardStalls(STALL_S), 0, at));
        }
        upsets.addAll(carried(rig, seed));
        return upsets;
    }

    /** Carried on twice an hour, dropped every other time; some night its plug comes out. */
    private static List<Mishap> carried(Rig rig, long seed) {
        RandomGenerator chance = Chance.of(seed, "healthy", "carried");
        List<Spot> spots = Spot.of(rig);
        List<Mishap> carried = new ArrayList<>();
        for (int half = 0; half < 80; half++) {
            long at = half * HOUR / 2 + chance.nextLong(HOUR / 4);
            carried.add(new Mishap("laid", new BoardFault.LooseLaid(spots.get(chance.nextInt(spots.size()))), 0, at));
            if (chance.nextBoolean()) {
                carried.add(new Mishap("drops", new BoardFault.LooseDrops(), 0, at + chance.nextLong(HOUR / 4)));
            }
        }
        carried.add(new Mishap("plug", new BoardFault.OpenProbe(rig.probes().size() - 1), 0, chance.nextLong(60 * HOUR)));
        return carried;
    }
}
