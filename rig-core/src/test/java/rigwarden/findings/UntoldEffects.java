package rigwarden.findings;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import java.util.stream.LongStream;
import rigwarden.findings.trace.Edge;
import rigwarden.pack.Fault;

/** Effects that the estimator is not told: how much coverage each costs, and whether the product's own words name it where it is beyond U. */
final class UntoldEffects {
    /** What in the findings names an effect. */
    enum Names {
        SUMS("trapezoid against count", Kind.CAPACITY, "the samples of the current sum to"),
        ZERO("zero at rests", Kind.CAPACITY, "the current's zero was off"),
        DEVICE("shunt against device", Kind.CAPACITY, "own meter"),
        ACCOUNT("charge account does not close", Kind.ACCOUNT, "does not close"),
        TAP("neighbours unlike either way", Kind.JOINT, "sits on the bar"),
        NOTHING("nothing", Kind.CAPACITY, "");

        private final String words;
        private final Kind kind;
        private final String note;

        Names(String words, Kind kind, String note) {
            this.words = words;
            this.kind = kind;
            this.note = note;
        }

        private boolean in(List<Finding> found) {
            return !note.isEmpty() && found.stream().filter(f -> f.kind() == kind).anyMatch(f -> f.notes().stream().anyMatch(said -> said.contains(note)));
        }
    }

    /** On what an effect is tried. */
    enum On {
        /** Capacity of one cell, from full to empty to full. */
        CAPACITY,
        /** Resistance between the taps of the pack's third cell. */
        RESISTANCE
    }

    /**
     * An effect.
     *
     * @param cause what it is called
     * @param on what it spoils
     * @param effect how it is done
     * @param by what should name it
     * @param share of the rigs where it is beyond U, in at least so much it must be named
     * @param why it is not seen always, or by nothing
     */
    record Untold(String cause, On on, Consumer<ModelRig> effect, Names by, double share, String why) {}

    private static final String ONE_SHUNT = "charge and discharge pass one shunt and err alike; the device's own meter states 1 %, and a rig without a"
            + " second ammeter has no other witness";

    static final Untold SOUND = new Untold("nothing is wrong", On.CAPACITY, ModelNights.sound(), Names.NOTHING, 0, "there is nothing");

    static final List<Untold> ALL = List.of(
            new Untold("0.1 % of the current passes the shunt by", On.CAPACITY, m -> m.wrong().past = 0.001, Names.NOTHING, 0, ONE_SHUNT),
            new Untold("1 % of the current passes the shunt by", On.CAPACITY, m -> m.wrong().past = 0.01, Names.DEVICE, 0, ONE_SHUNT),
            new Untold("3 % of the current passes the shunt by", On.CAPACITY, m -> m.wrong().past = 0.03, Names.DEVICE, 0.95, "the device's meter errs the other way"),
            new Untold("thermo-electric voltage of 100 µV", On.CAPACITY, m -> m.wrong().driftAmps = 0.2, Names.ZERO, 1, ""),
            new Untold("clock ratio wrong by 0.5 %", On.CAPACITY, m -> m.wrong().clock = 0.005, Names.SUMS, 1, ""),
            new Untold("ripple folds into the samples, 2 %", On.CAPACITY, m -> m.wrong().samples = 0.02, Names.SUMS, 1, ""),
            new Untold("ripple folds into the count, 2 %", On.CAPACITY, m -> m.wrong().count = 0.02, Names.SUMS, 1, ""),
            new Untold("shunt of copper, 3900 ppm/K, not an alloy", On.CAPACITY, m -> m.wrong().perKelvin = 3900e-6, Names.ACCOUNT, 0.8,
                    "what is alike in charge and discharge falls out of the account"),
            new Untold("a balancer takes 0.5 A past the shunt", On.CAPACITY, UntoldEffects::balancer, Names.ACCOUNT, 1, ""),
            new Untold("a tap 0.15 mΩ up the bar", On.RESISTANCE, m -> up(m, 0.15e-3), Names.TAP, 0.8, "sound cells differ by 5 %, and may hide it"),
            new Untold("a tap 0.03 mΩ up the bar", On.RESISTANCE, m -> up(m, 0.03e-3), Names.NOTHING, 0, "sound cells differ by as much"));

    private UntoldEffects() {}

    private static void balancer(ModelRig rig) {
        rig.wrong().balancerAmps = 0.5;
        rig.world().inflict(new Fault.BalancerOn(0.5, 0));
    }

    private static void up(ModelRig rig, double ohms) {
        rig.wrong().tap = 3;
        rig.wrong().tapOhms = ohms;
    }

    /**
     * A row of the table.
     *
     * @param untold the effect
     * @param of how many rigs
     * @param beyond in how many the error was beyond U
     * @param named in how many it was named
     * @param namedBeyond in how many of those beyond U
     */
    record Row(Untold untold, int of, long beyond, long named, long namedBeyond) {
        boolean holds() {
            return namedBeyond >= untold.share() * beyond;
        }

        String print() {
            String by = untold.by() == Names.NOTHING ? "not seen by anything: " + untold.why()
                    : untold.by().words + " names " + namedBeyond + " of these, " + named + " of all"
                            + (untold.why().isEmpty() || named == of ? "" : " (" + untold.why() + ")");
            return String.format(Locale.ROOT, "%-42s %4d rigs, inside %4d (%.0f %%), beyond U %4d; %s", untold.cause(), of, of - beyond,
                    100.0 * (of - beyond) / of, beyond, by);
        }
    }

    static Row row(Untold untold, long first, int rigs) {
        List<Seen> all = LongStream.range(first, first + rigs).parallel().mapToObj(seed -> seen(untold, seed)).toList();
        return new Row(untold, rigs, all.stream().filter(Seen::beyond).count(), all.stream().filter(Seen::named).count(),
                all.stream().filter(s -> s.beyond() && s.named()).count());
    }

    private record Seen(boolean beyond, boolean named) {}

    private static Seen seen(Untold untold, long seed) {
        ModelNights.Night night = switch (untold.on()) {
            case CAPACITY -> ModelNights.oneCellAndBack(seed, 25, untold.effect());
            case RESISTANCE -> ModelNights.pack(seed, 22, 0.99, untold.effect(), _ -> { });
        };
        List<Finding> found = Findings.of(night.rig(), night.gathered(), Rating.usual(105));
        boolean beyond = switch (untold.on()) {
            case CAPACITY -> capacityBeyond(night);
            case RESISTANCE -> resistanceBeyond(night);
        };
        return new Seen(beyond, untold.by().in(found));
    }

    /** How many of so many sound rigs are said to have any of these, which is once too often each. */
    static long falselyNamed(long first, int rigs) {
        return LongStream.range(first, first + rigs).parallel().filter(seed -> {
            ModelNights.Night one = ModelNights.oneCellAndBack(seed, 25, ModelNights.sound());
            ModelNights.Night pack = ModelNights.pack(seed, 22, 0.99, ModelNights.sound(), _ -> { });
            return named(one) || named(pack);
        }).count();
    }

    private static boolean named(ModelNights.Night night) {
        List<Finding> found = Findings.of(night.rig(), night.gathered(), Rating.usual(105));
        return Arrays.stream(Names.values()).anyMatch(name -> name.in(found));
    }

    private static boolean capacityBeyond(ModelNights.Night night) {
        Capacity capacity = Capacity.of(night.rig(), night.gathered().steps().stream().map(StepNotes::sums).toList()).getLast();
        return Math.abs(capacity.ampHours().value() + night.truths().get(2).ampHours()) > capacity.ampHours().expanded();
    }

    private static boolean resistanceBeyond(ModelNights.Night night) {
        Edge opening = night.gathered().edges().stream().filter(e -> e.step() == 2 && e.opened()).reduce((_, last) -> last).orElseThrow();
        Resistance third = Resistance.atOpening(night.rig(), opening).stream().filter(r -> r.cell() == 3 && r.seconds() < 0.5).findFirst().orElseThrow();
        return Math.abs(third.ohms() - night.truths().get(1).ohms()[0][2]) > third.budget().expanded();
    }
}
