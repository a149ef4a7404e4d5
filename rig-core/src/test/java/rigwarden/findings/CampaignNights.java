package rigwarden.findings;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import rigwarden.calibration.MeterStatement;
import rigwarden.findings.trace.Edge;
import rigwarden.joint.JointOhms;
import rigwarden.pack.Chance;
import rigwarden.rig.Role;

/** Nights on many model rigs, measured and held against the truth: what the campaign and its small sample share. */
final class CampaignNights {
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
            walked(seed, coverage);
        });
        return coverage;
    }

    private static void slow(long seed, Consumer<ModelRig> prepared, Coverage coverage, String what) {
        ModelNights.Night night = ModelNights.oneCell(seed, 25, prepared, _ -> { });
        capacity(night, 2, coverage, what + calibrated(seed));
    }

    private static void capacity(ModelNights.Night night, int step, Coverage coverage, String what) {
        Capacity capacity = Capacity.of(night.rig(), night.gathered().steps().stream().map(StepNotes::sums).toList()).getLast();
        coverage.add(what, capacity.ampHours().value(), capacity.ampHours().expanded(), -night.truths().get(step).ampHours());
    }

    /** Rigs with and without a calibration state so different an uncertainty that they would spoil each other's tightness. */
    private static String calibrated(long seed) {
        return DrawnCalibrations.has(seed) ? ", calibrated" : "";
    }

    private static void fast(long seed, Coverage coverage) {
        ModelNights.Night night = ModelNights.oneCellFast(seed, 25, ModelNights.sound(), _ -> { });
        capacity(night, 2, coverage, "capacity at 0.5 C, Ah" + calibrated(seed));
        resistances(seed, night, 2, "cell" + calibrated(seed), coverage);
        ahead(seed, night, 2, "cell", coverage);
    }

    private static void pack(long seed, Coverage coverage) {
        ModelNights.Night night = ModelNights.pack(seed, 22, 0.99, ModelNights.sound(), _ -> { });
        resistances(seed, night, 1, "cell and joint of a pack" + calibrated(seed), coverage);
        ahead(seed, night, 1, "pack", coverage);
    }

    private static void resistances(long seed, ModelNights.Night night, int step, String of, Coverage coverage) {
        double[][] truth = night.truths().get(step).ohms();
        Edge opening = night.gathered().edges().stream().filter(e -> e.step() == step + 1 && e.opened()).reduce((_, last) -> last).orElseThrow();
        double[] delays = {0.1, 1, 10};
        int one = one(seed, night.rig().cells().series());
        for (Resistance r : Resistance.atOpening(night.rig(), opening)) {
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
        Truth truth = night.truths().get(step);
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

    /** A hand meter as many have: 0.5 % and two counts of 10 µV. */
    private static final MeterStatement METER = new MeterStatement("hand meter", 0.005, 2, 1e-5, 0, 0.06, LocalDate.of(2026, 1, 1), 365);

    /**
     * A bad joint walked along with its likes by one meter: itself, and what it has more than the middle of its likes. The meter is wrong by one share, anywhere between -1 and 1, of what it
     * states in all, as {@link JointOhms} reads the statement (JCGM 100, 4.3.7): it says nothing of its parts.
     */
    private static void walked(long seed, Coverage coverage) {
        int lower = lower(seed);
        ModelNights.Night night = ModelNights.pack(seed, 22, 0.99, ModelNights.loose(lower, BAD_OHMS), _ -> { });
        Truth.Walk walk = night.truths().get(1).walk().orElseThrow();
        Chance chance = Chance.of(seed, "campaign", "hand meter");
        double share = DrawnCalibrations.limits(chance, 1);
        JointOhms.Current current = new JointOhms.Current(walk.readAmps(), night.rig().channel(Role.CURRENT).uncertainty(walk.readAmps()), 0);
        List<JointOhms> read = new ArrayList<>();
        for (int bar = 1; bar <= walk.volts().length; bar++) {
            double shown = walk.volts()[bar - 1] + share * METER.limits(walk.volts()[bar - 1]) + DrawnCalibrations.limits(chance, METER.digit());
            read.add(JointOhms.of("bar " + bar, "bars", shown, METER, current));
        }
        JointOhms bad = read.remove(lower - 1);
        JointOhms middle = read.stream().sorted(Comparator.comparingDouble(JointOhms::ohms)).toList().get(read.size() / 2);
        coverage.add("resistance of a bad joint by hand meter, mΩ", 1000 * bad.ohms(), 1000 * bad.expandedOhms(),
                1000 * walk.volts()[lower - 1] / walk.amps());
        coverage.add("what it has more than its likes, mΩ", 1000 * (bad.ohms() - middle.ohms()),
                1000 * more(bad.ohms() - middle.ohms(), current), 1000 * BAD_OHMS);
    }

    /** Of the difference of two joints on one walk, expanded, Ω: the meter's zero falls out, and of its scale and the current only the difference's part is left. */
    private static double more(double ohms, JointOhms.Current current) {
        double each = Math.sqrt(2) * METER.eachU() / Math.abs(current.amps());
        double scale = METER.relative() / Math.sqrt(3) * ohms;
        double amps = current.expandedAmps() / 2 / Math.abs(current.amps()) * ohms;
        return 2 * Math.sqrt(each * each + scale * scale + amps * amps);
    }

    private static int lower(long seed) {
        return 1 + (int) Math.floorMod(Chance.of(seed, "campaign", "joint").nextLong(), 7L);
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
        int lower = lower(seed);
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
        return Findings.of(night.rig(), night.gathered(), Rating.usual(105)).stream().filter(f -> f.kind() == Kind.JOINT).findFirst().orElseThrow().answer();
    }

    /** Good cells on a cold bench: whether they were called "not met". */
    static boolean coldNotMet(long seed) {
        double room = 12 + 6 * Chance.of(seed, "campaign", "room").nextDouble();
        ModelNights.Night night = ModelNights.oneCellFast(seed, room, ModelNights.sound(), _ -> { });
        return Findings.of(night.rig(), night.gathered(), Rating.usual(105)).stream()
                .anyMatch(f -> f.kind() == Kind.VERDICT && f.answer() instanceof Answer.Decided d && !d.met());
    }
}
