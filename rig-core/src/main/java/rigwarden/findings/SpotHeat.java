package rigwarden.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rigwarden.findings.trace.Visit;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Spot;
import rigwarden.rig.Traced;

/** What the loose probe found on the spots where it lay: rises at one current, ranked, and which is unlike its likes. */
final class SpotHeat {
    /** Below this rate a sound joint shows nothing, of the rated capacity, 1/h (project's assumption). */
    private static final double LEAST_C = 0.1;
    /** A bead that is only laid on misses so much of a rise, limits, relative (project's assumption). */
    private static final double CONTACT = 0.1;
    private static final int LIKES = 3;

    private SpotHeat() {}

    /**
     * Rise of a spot over its own cell, or over the room.
     *
     * @param spot where
     * @param kelvin scaled to the current at which all are compared
     * @param budget of that, K
     * @param amps at which it was measured
     */
    record Rise(Spot spot, double kelvin, Budget budget, double amps) {
        String words() {
            double tenths = Math.round(kelvin * 10) / 10.0 + 0.0;
            return Words.say("%s %+.1f ± %.1f K", spot.name(), tenths, budget.expanded());
        }
    }

    /** Nothing where no spot was ever told. */
    static Optional<Finding> of(Traced rig, List<Visit> visits) {
        if (visits.isEmpty()) {
            return Optional.empty();
        }
        List<Visit> warm = visits.stream().filter(Visit::settled).filter(v -> v.spot().part() != Spot.Part.AWAY)
                .filter(v -> Math.sqrt(v.squareAmps()) >= LEAST_C * rig.cells().ratedAmpHours()).toList();
        double amps = Math.sqrt(warm.stream().mapToDouble(Visit::squareAmps).max().orElse(0));
        List<Rise> rises = ranked(rig, warm, amps);
        List<String> notes = new ArrayList<>();
        if (!rises.isEmpty()) {
            notes.add("by heat: " + String.join(", ", rises.stream().map(Rise::words).toList()));
        }
        notes.addAll(leftOut(visits, rises));
        List<String> conditions = rises.isEmpty() ? List.of() : List.of(Words.say("rises over the own cell, or the room, scaled to %.0f A", amps));
        return Optional.of(new Finding(Kind.SPOT, "the loose probe", answer(rises), conditions, notes,
                visits.stream().filter(Visit::settled).mapToLong(Visit::firstScan).min().orElse(0),
                visits.stream().mapToLong(Visit::lastScan).max().orElse(0)));
    }

    /** One a spot, that with the least doubt; the warmest first. */
    static List<Rise> ranked(Traced rig, List<Visit> warm, double amps) {
        Map<String, Rise> best = new TreeMap<>();
        for (Visit visit : warm) {
            rise(rig, visit, amps).ifPresent(rise -> best.merge(visit.spot().name(), rise,
                    (one, other) -> other.budget().combined() < one.budget().combined() ? other : one));
        }
        return best.values().stream().sorted(Comparator.comparingDouble(Rise::kelvin).reversed()).toList();
    }

    private static Optional<Rise> rise(Traced rig, Visit visit, double amps) {
        double own = Math.sqrt(visit.squareAmps());
        double apart = Math.hypot(uncertainty(rig, Role.LOOSE), uncertainty(rig, visit.spot().joint() ? Role.BODY : Role.ROOM));
        boolean zeroed = Math.abs(visit.zeroKelvin()) <= apart;
        double kelvin = visit.overKelvin() - (zeroed ? visit.zeroKelvin() : 0);
        double still = Math.abs(kelvin) * Math.exp(-visit.flowedHours() / Forecast.LONG_HOURS);
        if (!(Heat.scaled(kelvin, 0, own, amps) instanceof Answer.Value scaled)) {
            return Optional.empty();
        }
        double square = visit.squareAmps() == 0 ? 1 : amps * amps / visit.squareAmps();
        List<Budget.Term> terms = new ArrayList<>(scaled.budget().terms());
        terms.add(Budget.standard(zeroed ? "two probes after their zero at rest" : "two probes that were never seen alike",
                (zeroed ? Heat.ZEROED_K : apart) / 2 * square));
        terms.add(Budget.limits("contact of a bead that is laid on", CONTACT * Math.abs(kelvin) * square));
        terms.add(Budget.limits("what is still to come of the rise", still * square));
        return Optional.of(new Rise(visit.spot(), scaled.value(), new Budget(terms), own));
    }

    private static double uncertainty(Traced rig, Role role) {
        return rig.channels(role).stream().mapToDouble(Channel::offsetU).max().orElse(0);
    }

    private static Answer answer(List<Rise> rises) {
        if (rises.isEmpty()) {
            return new Answer.Refused("no reading is of a spot: it lay nowhere for a settled half minute while a tenth of the capacity an hour flowed");
        }
        Map<String, List<Rise>> families = rises.stream().filter(r -> r.spot().joint())
                .collect(Collectors.groupingBy(r -> r.spot().part() == Spot.Part.BAR ? "bars" : "studs", TreeMap::new, Collectors.toList()));
        boolean compared = families.values().stream().anyMatch(family -> family.size() > LIKES);
        if (!compared) {
            Rise top = rises.getFirst();
            return new Answer.Named("warmest " + top.spot().name(), Words.say("%.1f K; whether that is much is not said before four like spots were visited,"
                    + " studs or bars", top.kelvin()));
        }
        return families.values().stream().map(SpotHeat::unlike).flatMap(Optional::stream).findFirst()
                .orElseGet(() -> new Answer.Named("none", "no stud and no bar is warmer than its likes"));
    }

    /** The warmest of a family, where chance and the probe do not explain it. */
    private static Optional<Answer> unlike(List<Rise> family) {
        if (family.size() <= LIKES) {
            return Optional.empty();
        }
        Rise top = family.getFirst();
        Likes likes = Likes.byWarmth(family.stream().skip(1).mapToDouble(Rise::kelvin).toArray());
        return likes.below(top.kelvin(), top.budget().combined())
                ? Optional.of(new Answer.Named(top.spot().name(), Words.say("%.1f K over its cell, its %d likes %.1f K in the middle", top.kelvin(),
                        family.size() - 1, likes.middle())))
                : Optional.empty();
    }

    private static List<String> leftOut(List<Visit> visits, List<Rise> rises) {
        List<String> notes = new ArrayList<>();
        List<String> ranked = rises.stream().map(r -> r.spot().name()).toList();
        List<String> others = visits.stream().map(Visit::spot).filter(spot -> spot.part() != Spot.Part.AWAY).map(Spot::name)
                .filter(name -> !ranked.contains(name)).distinct().toList();
        if (!others.isEmpty()) {
            notes.add("not compared, since it lay there too shortly, or with too little current: " + String.join(", ", others));
        }
        List<String> fell = visits.stream().filter(Visit::fell).map(v -> v.spot().name()).distinct().toList();
        if (!fell.isEmpty()) {
            notes.add("from there it dropped, or was moved without a word; what it read then is of no spot: " + String.join(", ", fell));
        }
        return notes;
    }
}
