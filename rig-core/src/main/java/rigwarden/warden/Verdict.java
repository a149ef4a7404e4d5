package rigwarden.warden;

import java.util.List;

/** What the warden makes of one scan. */
public sealed interface Verdict {
    /** Nothing is wrong: here is a lease. */
    record Healthy(Lease lease, List<Warning> warnings) implements Verdict {}

    /** A person says stop: no lease, no trip. */
    record Stopped(List<Warning> warnings) implements Verdict {}

    /** Tripped, now or before. */
    record Unhealthy(Trip first, List<Trip> also) implements Verdict {}
}
