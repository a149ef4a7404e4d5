package rigwarden.findings;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Figure by figure: like with like, what the conditions explain taken off. */
final class Changes {
    /** Capacity per kelvin: somewhere between nothing and this, relative; as for a rating (check-values 9.2). */
    private static final double CAPACITY_PER_K = Rating.PER_KELVIN;
    /** Resistance per kelvin: it falls by somewhere between nothing and this (open data, 15 to 25 °C: 4 to 5 %). */
    private static final double RESISTANCE_PER_K = 0.05;
    /** Exponent of the capacity against the rate: 1 to this (this project's assumption). */
    private static final double EXPONENT = 1.05;
    /** Two cells left at rest voltages so far apart were not equally full, V. */
    private static final double NEAR_VOLTS = 0.02;
    /** Two discharges that ended so far apart had two cut-offs, V. */
    private static final double NEAR_END_VOLTS = 0.05;
    /** A family of joints needs so many places. */
    private static final int FAMILY = 4;

    private Changes() {}

    static List<Change> capacities(Measured earlier, Measured later, Shared shared) {
        List<Change> all = new ArrayList<>();
        for (Measured.Discharge then : earlier.discharges()) {
            String what = Words.say("capacity at %.2f C", then.capacity().rateC());
            List<String> reasons = new ArrayList<>();
            Optional<Measured.Discharge> like = later.discharges().stream().filter(now -> {
                String unlike = unlike(then, now);
                reasons.add(unlike);
                return unlike.isEmpty();
            }).findFirst();
            all.add(like.map(now -> capacity(what, then, now, shared)).orElseGet(() -> new Change.NotHeld(Kind.CAPACITY, what,
                    reasons.isEmpty() ? "the later run has no discharge" : String.join("; or ", reasons.stream().distinct().toList()))));
        }
        if (all.isEmpty()) {
            all.add(new Change.NotHeld(Kind.CAPACITY, "capacity", "the earlier run has no discharge"));
        }
        return all;
    }

    private static String unlike(Measured.Discharge then, Measured.Discharge now) {
        Capacity a = then.capacity();
        Capacity b = now.capacity();
        if (Math.abs(b.rateC() / a.rateC() - 1) > Comparison.NEAR_RATE) {
            return Words.say("%.3f C then and %.3f C later are two rates", a.rateC(), b.rateC());
        }
        if (a.lowerBound() || b.lowerBound()) {
            return "one of the two is a lower bound only: it did not start full, or something else than a cell's cut-off ended it";
        }
        if (a.interrupted() || b.interrupted()) {
            return "one of the two was interrupted";
        }
        if (a.start() != b.start()) {
            return "the two did not start alike: one was charged to its taper, the other to its ceiling only";
        }
        String temperatures = unlike(a.bodyCelsius(), b.bodyCelsius());
        if (!temperatures.isEmpty()) {
            return temperatures;
        }
        if (Math.abs(then.stoodDays() - now.stoodDays()) >= Comparison.NEAR_DAYS) {
            return Words.say("the cells stood full for %.1f days before it then and for %.1f days later", then.stoodDays(), now.stoodDays());
        }
        return Math.abs(then.lowest().value() - now.lowest().value()) > NEAR_END_VOLTS
                ? Words.say("one ended at %.3f V and the other at %.3f V", then.lowest().value(), now.lowest().value())
                : "";
    }

    /** What is not known is not like anything. */
    private static String unlike(double thenCelsius, double nowCelsius) {
        if (Double.isNaN(thenCelsius) || Double.isNaN(nowCelsius)) {
            return Words.say("nobody knows how warm the cells were %s: the temperature's part cannot be told from a change", !Double.isNaN(nowCelsius)
                    ? "then" : Double.isNaN(thenCelsius) ? "then and later" : "later");
        }
        return Math.abs(thenCelsius - nowCelsius) >= Comparison.NEAR_K
                ? Words.say("the cells were at %.1f °C then and %.1f °C later", thenCelsius, nowCelsius)
                : "";
    }

    private static Change capacity(String what, Measured.Discharge then, Measured.Discharge now, Shared shared) {
        Capacity a = then.capacity();
        Capacity b = now.capacity();
        double value = b.ampHours().value();
        double half = value * CAPACITY_PER_K * (b.bodyCelsius() - a.bodyCelsius()) / 2;
        List<Budget.Term> more = new ArrayList<>();
        more.add(Budget.limits("temperature between the runs", half));
        more.add(Budget.limits("rate between the runs", (EXPONENT - 1) * value * Math.log(b.rateC() / a.rateC())));
        if (a.missingAmpHours() > 0) {
            more.add(Budget.limits("missing from full, then and later", Math.max(a.missingAmpHours(), b.missingAmpHours())));
        }
        boolean oneCell = then.lowest().where().equals(now.lowest().where());
        Difference found = Difference.of(a.ampHours().value(), a.budget(), value, b.budget(), oneCell ? shared : shared.ofTwoCells(), more)
                .less(half);
        List<String> notes = new ArrayList<>(List.of(Words.say("cells at %.1f °C then and %.1f °C later%s", a.bodyCelsius(), b.bodyCelsius(),
                Math.abs(half) < 1e-3 ? "" : Words.say(", which explains %+.2f Ah", half))));
        if (!oneCell) {
            notes.add(Words.say("the cell that met the cut-off was %s then and %s later", then.lowest().where(), now.lowest().where()));
        }
        return held(Kind.CAPACITY, what, "Ah", a.ampHours().value(), value, found, 1, notes);
    }

    /** A discharge after a long stand in full, beside one of the earlier run that came soon after its charge. */
    static List<Change> retained(Measured earlier, Measured later, Shared shared) {
        List<Change> all = new ArrayList<>();
        for (Measured.Discharge now : later.discharges()) {
            if (now.stoodDays() < Comparison.NEAR_DAYS) {
                continue;
            }
            String what = Words.say("charge retained over %.1f days", now.stoodDays());
            List<String> reasons = new ArrayList<>(List.of("the earlier run has no discharge soon after its charge"));
            Optional<Measured.Discharge> fresh = earlier.discharges().stream().filter(then -> then.stoodDays() < Comparison.NEAR_DAYS)
                    .filter(then -> {
                        String unlike = unlike(then, now.stood(then.stoodDays()));
                        reasons.set(0, unlike);
                        return unlike.isEmpty();
                    }).findFirst();
            all.add(fresh.map(then -> retained(what, then, now, shared)).orElseGet(() -> new Change.NotHeld(Kind.SELF_DISCHARGE, what,
                    reasons.getFirst())));
        }
        return all;
    }

    private static Change retained(String what, Measured.Discharge then, Measured.Discharge now, Shared shared) {
        Shared both = then.lowest().where().equals(now.lowest().where()) ? shared : shared.ofTwoCells();
        double half = 100 * CAPACITY_PER_K * (now.capacity().bodyCelsius() - then.capacity().bodyCelsius()) / 2;
        return switch (SelfDischarge.retained(then.capacity(), now.capacity(), now.stoodDays(), both::alike)) {
            case Answer.Value share -> {
                List<Budget.Term> terms = new ArrayList<>(share.budget().terms());
                terms.add(Budget.limits("temperature between the runs", half));
                terms.add(Budget.limits("drift of the instruments between the runs", 100 * Difference.DRIFT));
                double retained = share.value() - half;
                yield held(Kind.SELF_DISCHARGE, what, "%", 100, retained, new Difference(retained - 100, new Budget(terms), List.of()), 1, List.of(
                        Words.say("%.2f Ah then, soon after its charge, and %.2f Ah later, after the stand; what the cells lost by age meanwhile is in it",
                                then.capacity().ampHours().value(), now.capacity().ampHours().value())));
            }
            case Answer.Refused no -> new Change.NotHeld(Kind.SELF_DISCHARGE, what, no.because());
            case Answer other -> throw new IllegalStateException("no answer to what is retained: " + other);
        };
    }

    static List<Change> resistances(Measured earlier, Measured later, Shared shared) {
        List<Change> all = new ArrayList<>();
        for (Measured.Placed then : earlier.resistances()) {
            String what = Words.say("resistance of cell %d at the end of a %s of %.1f A", then.resistance().cell(),
                    then.kind().replace('_', ' '), Math.abs(then.resistance().amps()[0]));
            List<String> reasons = new ArrayList<>();
            Optional<Measured.Placed> like = later.resistances().stream().filter(now -> now.resistance().cell() == then.resistance().cell())
                    .filter(now -> {
                        String unlike = unlike(then, now);
                        reasons.add(unlike);
                        return unlike.isEmpty();
                    }).findFirst();
            all.add(like.map(now -> resistance(what, then, now, shared, earlier.rig().cells().series())).orElseGet(() ->
                    new Change.NotHeld(Kind.RESISTANCE, what, reasons.isEmpty() ? "the current of the later run never stopped at once from a"
                            + " steady value" : String.join("; or ", reasons.stream().distinct().toList()))));
        }
        if (all.isEmpty()) {
            all.add(new Change.NotHeld(Kind.RESISTANCE, "resistance",
                    "the current of the earlier run never stopped at once from a steady value"));
        }
        return all;
    }

    private static String unlike(Measured.Placed then, Measured.Placed now) {
        Resistance a = then.resistance();
        Resistance b = now.resistance();
        if (Math.abs(b.amps()[0] / a.amps()[0] - 1) > Comparison.NEAR_RATE) {
            return Words.say("%.1f A then and %.1f A later are two currents", Math.abs(a.amps()[0]), Math.abs(b.amps()[0]));
        }
        if (Math.abs(a.seconds() - b.seconds()) > 0.2 * Math.max(a.seconds(), b.seconds())) {
            return Words.say("%.1f s after the stop then and %.1f s later are two delays", a.seconds(), b.seconds());
        }
        String temperatures = unlike(then.celsius(), now.celsius());
        if (!temperatures.isEmpty()) {
            return temperatures;
        }
        return Math.abs(then.restVolts() - now.restVolts()) > NEAR_VOLTS
                ? Words.say("the cell was left at %.3f V then and %.3f V later: not equally full", then.restVolts(), now.restVolts())
                : "";
    }

    private static Change resistance(String what, Measured.Placed then, Measured.Placed now, Shared shared, int cells) {
        Resistance a = then.resistance();
        Resistance b = now.resistance();
        double half = -b.ohms() * RESISTANCE_PER_K * (now.celsius() - then.celsius()) / 2;
        Difference found = Difference.of(a.ohms(), a.budget(), b.ohms(), b.budget(), shared,
                List.of(Budget.limits("temperature between the runs", half))).less(half);
        return held(Kind.RESISTANCE, what, "mΩ", a.ohms(), b.ohms(), found, cells, List.of(
                Words.say("with all that lies between its two taps; cells at %.1f °C then and %.1f °C later", then.celsius(), now.celsius())));
    }

    /** Each place against its likes: warmth and fullness move all of them alike. */
    static List<Change> joints(Measured earlier, Measured later, Shared shared) {
        int cells = Math.min(earlier.onTheFlat().size(), later.onTheFlat().size());
        if (cells < FAMILY || earlier.onTheFlat().size() != later.onTheFlat().size()) {
            return List.of(new Change.NotHeld(Kind.JOINT, "joints", earlier.rig().cells().series() < FAMILY
                    ? "a joint is held against its likes, and a family needs four like places"
                    : "one of the two runs has no stop of the current while all cells were on their flat"));
        }
        double[] changes = new double[cells];
        Arrays.setAll(changes, i -> later.onTheFlat().get(i).ohms() - earlier.onTheFlat().get(i).ohms());
        List<Change> all = new ArrayList<>();
        for (int i = 0; i < cells; i++) {
            all.add(joint(earlier.onTheFlat().get(i), later.onTheFlat().get(i), changes, i, shared));
        }
        return all;
    }

    private static Change joint(Resistance then, Resistance now, double[] changes, int place, Shared shared) {
        double[] others = new double[changes.length - 1];
        Arrays.setAll(others, i -> changes[i < place ? i : i + 1]);
        Arrays.sort(others);
        double middle = others[others.length / 2];
        double[] away = Arrays.stream(others).map(o -> Math.abs(o - middle)).sorted().toArray();
        double scatter = 1.4826 * away[away.length / 2];
        Difference found = Difference.of(then.ohms(), then.budget(), now.ohms(), now.budget(), shared,
                List.of(Budget.standard("what its likes changed by among themselves", scatter * Math.sqrt(1 + 1.0 / others.length)))).less(middle);
        String where = then.cell() == 1 ? "cell 1 or its lower terminal" : Words.say("cell %d or the joint between cells %d and %d", then.cell(),
                then.cell() - 1, then.cell());
        return held(Kind.JOINT, where, "mΩ", then.ohms(), now.ohms(), found, changes.length, List.of(
                Words.say("its likes changed by %+.3f mΩ, which is taken off; from %s to %s; which of the two it is a hand meter tells",
                        1000 * middle, then.how(), now.how())));
    }

    private static Change held(Kind kind, String what, String unit, double earlier, double later, Difference found, int places, List<String> notes) {
        double scale = unit.equals("mΩ") ? 1000 : 1;
        return new Change.Held(kind, what, unit, scale * earlier, scale * later, scale * found.value(), scale * found.least(places),
                found.budget().times(scale), found.alike(), notes);
    }
}
