package rigwarden.warden;

import java.util.List;
import java.util.Set;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/**
 * Charge that the warden counts itself: against the chip's own sum, and against what the cells gave before. A chip that
 * sums nothing has no second sum, and the rule that compares two is not among its rig's.
 */
final class ChargeRules {
    private static final long LEAST_NANOS = 600_000_000_000L;
    /** The chip's clock may be off by 0.5 % until its ratio to ours is known. */
    private static final double APART_UNKNOWN = 0.02;
    private static final double APART = 0.003;
    private static final double APART_A = 0.02;
    /** The accumulator and the current of one scan are not of the same instant. */
    private static final double SKEW_S = 0.2;
    /** A smaller discharge measured nothing. */
    private static final double LEAST_TAKEN = 0.2;
    /** A charge at a much smaller current than the last one goes further by itself. */
    private static final double ALIKE = 0.5;

    private ChargeRules() {}

    static List<Rule> of(Rig rig) {
        double least = LEAST_TAKEN * rig.cells().ratedAmpHours() * 3600;
        Rule putIn = Rules.trips(9, "too much put in",
                "A charge has put in more than the discharge before gave, and the cells do not say that they are full.",
                Set.of(Role.CURRENT), Envelope.PUT_IN_TRIP + " × the discharge", 10, view -> putIn(view, least));
        if (!rig.shunt().chip().accumulates()) {
            return List.of(putIn);
        }
        return List.of(putIn, Rules.trips(37, "account apart",
                "The current of all scans, summed, and the shunt monitor's own sum do not agree over ten minutes.",
                Set.of(Role.CURRENT, Role.ACCUMULATED, Role.CLOCK_RATIO),
                "0.3 % (2 % until the chip's clock is known) + 20 mA", 1, ChargeRules::apart));
    }

    private static Breach putIn(View view, double least) {
        Counted counted = view.memory().past().counted();
        boolean charges = view.at(Closing.CURRENT) && view.energised(Way.CHARGE);
        if (!charges || counted.taken().isEmpty() || counted.taken().get() < least
                || Math.abs(counted.amps()) < ALIKE * counted.filledAmps()) {
            return Breach.NONE;
        }
        double put = counted.ampSeconds() - counted.emptied().orElseThrow();
        double limit = Envelope.PUT_IN_TRIP * counted.taken().get();
        return put > limit ? new Breach(summed(view.places()), put, limit) : Breach.NONE;
    }

    /** The channel that a breach of a sum names. */
    private static int summed(Places places) {
        return places.accumulated == null ? places.current.index() : places.accumulated.index();
    }

    private static Breach apart(View view) {
        Places places = view.places();
        Counted counted = view.memory().past().counted();
        if (counted.mark().isEmpty() || !view.valid(places.accumulated) || !view.valid(places.ratio)
                || !view.valid(places.current)) {
            return Breach.NONE;
        }
        Counted.Mark mark = counted.mark().get();
        long since = view.nanos() - mark.nanos();
        if (since < LEAST_NANOS) {
            return Breach.NONE;
        }
        double ratio = view.value(places.ratio);
        double zero = places.current.shift() * since * 1e-9;
        double chip = (view.value(places.accumulated) - mark.chip()) * ratio + zero;
        double own = counted.ampSeconds() - mark.ampSeconds();
        double share = ratio == 1 ? APART_UNKNOWN : APART;
        double limit = share * (counted.through() - mark.through()) + APART_A * since * 1e-9
                + SKEW_S * (Math.abs(counted.amps()) + Math.abs(mark.amps()));
        return Math.abs(own - chip) > limit ? new Breach(places.accumulated.index(), own - chip, limit) : Breach.NONE;
    }
}
