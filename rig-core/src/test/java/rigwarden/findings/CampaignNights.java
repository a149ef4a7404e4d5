package rigwarden.findings;

import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import rigwarden.findings.trace.Edge;
import rigwarden.pack.Chance;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** Nights on many model rigs, measured and held against the truth: what the campaign and its small sample share. */
final class CampaignNights {
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.eightCells();
    /** Parts of a milliohm that a loosened joint has more. */
    static final double BAD_OHMS = 1e-4;

    /** The campaign's first seed: those below a hundred, and some from 10,001 on, were looked at while thresholds were chosen. */
    static final long FIRST = 30_001;
    /** The sample's. */
    static final long LOOKED_AT = 1;

    private CampaignNights() {}

    /** The seeds of so many nights, the same in every run. */
    static LongStream seeds(long first, int nights) {
        return LongStream.range(first, first + nights);
    }

    /** Errors out of the stated distributions only. */
    static Coverage stated(long first, int rigs) {
        Coverage coverage = new Coverage();
        seeds(first, rigs).parallel().forEach(seed -> {
            slow(seed, ModelNights.sound(), coverage, "capacity at 0.1 C, Ah");
            fast(seed, coverage);
            pack(seed, coverage);
        });
        return coverage;
    }

    private static void slow(long seed, Consumer<ModelRig> prepared, Coverage coverage, String what) {
        ModelNights.Night night = ModelNights.oneCell(seed, 25, prepared, _ -> { });
        capacity(night, 2, coverage, what);
    }

    private static void capacity(ModelNights.Night night, int step, Coverage coverage, String what) {
        Capacity capacity = Capacity.of(CELL, night.gathered().steps().stream().map(StepNotes::sums).toList()).getLast();
        coverage.add(what, capacity.ampHours().value(), capacity.ampHours().expanded(), -night.truths().get(step).ampHours());
    }

    private static void fast(long seed, Coverage coverage) {
        ModelNights.Night night = ModelNights.oneCellFast(seed, 25, ModelNights.sound(), _ -> { });
        capacity(night, 2, coverage, "capacity at 0.5 C, Ah");
        resistances(seed, CELL, night, 2, "cell", coverage);
        ahead(seed, night, 2, "cell", coverage);
    }

    private static void pack(long seed, Coverage coverage) {
        ModelNights.Night night = ModelNights.pack(seed, 22, 0.99, ModelNights.sound(), _ -> { });
        resistances(seed, PACK, night, 1, "cell and joint of a pack", coverage);
        ahead(seed, night, 1, "pack", coverage);
    }

    private static void resistances(long seed, Rig rig, ModelNights.Night night, int step, String of, Coverage coverage) {
        double[][] truth = night.truths().get(step).ohms();
        Edge opening = night.gathered().edges().stream().filter(e -> e.step() == step + 1 && e.opened()).reduce((_, last) -> last).orElseThrow();
        double[] delays = {0.1, 1, 10};
        int one = one(seed, rig.cells().series());
        for (Resistance r : Resistance.atOpening(rig, opening)) {
            if (r.cell() != one) {
                continue;
            }
            int at = r.seconds() < 0.5 ? 0 : r.seconds() < 5 ? 1 : 2;
            coverage.add(Words.say("resistance of a %s after %.1f s, mΩ", of, delays[at]), 1000 * r.ohms(), 1000 * r.budget().expanded(),
                    1000 * truth[at][r.cell() - 1]);
        }
    }

    /** One cell or bar of a rig: those of one rig share its shunt, its current and its room, and would not count as many. */
    private static int one(long seed, int of) {
        return 1 + (int) (seed % of);
    }

    private static void ahead(long seed, ModelNights.Night night, int step, String of, Coverage coverage) {
        ModelNights.Truth truth = night.truths().get(step);
        for (Heat.Ahead ahead : Heat.ahead(truth.early(), truth.hours(), truth.squareAmps(), Optional.of(new Reversible(0.98, 105)))) {
            if (ahead.where().cell() != one(seed, ahead.where().role() == Role.BODY ? truth.celsius().length : Math.max(1, truth.barCelsius().length))) {
                continue;
            }
            if (ahead.where().role() == Role.BODY) {
                coverage.add("body at the end of the step, " + of + ", °C", ahead.celsius(), ahead.expandedKelvin(),
                        truth.celsius()[ahead.where().cell() - 1]);
            } else if (ahead.where().role() == Role.BAR) {
                coverage.add("joint at the end of the step, " + of + ", °C", ahead.celsius(), ahead.expandedKelvin(),
                        truth.barCelsius()[ahead.where().cell() - 1]);
            }
        }
    }

    /** An effect that the estimator is not told, and what it is called. */
    record Untold(String cause, Consumer<ModelRig> effect) {}

    static final List<Untold> UNTOLD = List.of(
            new Untold("0.1 % of the current passes the shunt by", m -> m.round(0.001)),
            new Untold("1 % of the current passes the shunt by", m -> m.round(0.01)),
            new Untold("thermo-electric voltage of 20 µV, forty times what is stated", m -> m.drift(20e-6 / 0.0005)));

    static Coverage untold(long first, int rigs) {
        Coverage coverage = new Coverage();
        seeds(first, rigs).parallel().forEach(seed -> UNTOLD.forEach(untold ->
                capacity(ModelNights.oneCellFast(seed, 25, untold.effect(), _ -> { }), 2, coverage, untold.cause())));
        return coverage;
    }

    /** What was said of a joint. */
    enum Said {
        /** The joint itself, or "cell or joint" of the right place. */
        RIGHT,
        /** Nothing was out of family. */
        NOTHING,
        /** A cell or another place was named. */
        WRONG
    }

    /** One bad joint, at a place drawn by the seed. */
    static Said badJoint(long seed) {
        int lower = 1 + (int) Math.floorMod(Chance.of(seed, "campaign", "joint").nextLong(), 7L);
        Answer answer = joint(ModelNights.pack(seed, 22, 0.99, ModelNights.loose(lower, BAD_OHMS), _ -> { }));
        String place = Words.say("the joint between cells %d and %d", lower, lower + 1);
        return switch (answer) {
            case Answer.Named named -> named.who().equals(place) ? Said.RIGHT : named.who().equals("none") ? Said.NOTHING : Said.WRONG;
            case Answer.CannotTell tied -> tied.between().equals("cell " + (lower + 1) + " or " + place) ? Said.RIGHT : Said.WRONG;
            case Answer.Refused _ -> Said.NOTHING;
            case Answer.Value _, Answer.AtLeast _, Answer.Between _, Answer.Decided _, Answer.NotDecided _ -> Said.WRONG;
        };
    }

    /** What is said of a pack with nothing wrong. */
    static Said soundPack(long seed) {
        return joint(ModelNights.pack(seed, 22, 0.99, ModelNights.sound(), _ -> { })) instanceof Answer.Named named
                && named.who().equals("none") ? Said.RIGHT : Said.WRONG;
    }

    private static Answer joint(ModelNights.Night night) {
        return Findings.of(PACK, night.gathered(), Rating.usual(105)).stream().filter(f -> f.kind() == Kind.JOINT).findFirst().orElseThrow().answer();
    }

    /** Good cells on a cold bench: whether they were called "not met". */
    static boolean coldNotMet(long seed) {
        double room = 12 + 6 * Chance.of(seed, "campaign", "room").nextDouble();
        return Findings.of(CELL, ModelNights.oneCellFast(seed, room, ModelNights.sound(), _ -> { }).gathered(), Rating.usual(105)).stream()
                .anyMatch(f -> f.kind() == Kind.VERDICT && f.answer() instanceof Answer.Decided d && !d.met());
    }
}
