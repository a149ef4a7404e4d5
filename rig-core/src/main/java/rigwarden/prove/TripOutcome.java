package rigwarden.prove;

import java.util.Locale;
import java.util.Optional;
import rigwarden.prove.Outcome.Part;
import rigwarden.warden.Trip;

/** A trip in a proof, in plain words with what to look at. */
final class TripOutcome {
    private TripOutcome() {}

    /** {@code during} is what was being proved. */
    static Outcome of(Trip trip, String during) {
        Optional<LookAt> look = LookAt.of(trip.rule().number());
        String words = String.format(Locale.ROOT, "%s Found %.4g at %s where %.4g is the limit (rule %d, while proving %s). %s", trip.rule().sentence(),
                trip.value(), trip.where().name(), trip.limit(), trip.rule().number(), during,
                look.map(LookAt::words).orElse("Find the cause before anything is tried again."));
        Part part = look.map(LookAt::part).orElse(Part.STOP);
        return Outcome.failed(part, part == Part.STOP ? during : "", words);
    }
}
