package rigwarden.run;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rigwarden.program.Step;
import rigwarden.run.Answer.Condition;
import rigwarden.run.Answer.Unmet;
import rigwarden.run.LeftOff.Ending;

/**
 * The conditions under which a run may go on after a crash, a power cut or a trip (safety design, section 5). Those that
 * need the rig itself (start-up, arm, outage at the start, rest voltage) are asked by the {@link RunMachine} again.
 */
public final class Continuing {
    private static final int HASH_SHOWN = 12;

    private Continuing() {}

    /**
     * What a run would go on with.
     *
     * @param rigHash SHA-256 of the rig file now
     * @param programmeHash SHA-256 of the programme now
     * @param versions of software and runtime now
     * @param outage how long ago it was broken off
     */
    public record Offered(String rigHash, String programmeHash, Map<String, String> versions, Outage outage) {
        public Offered {
            versions = Map.copyOf(versions);
        }
    }

    /** Whether it may go on: the first condition that is not met, or the place where it goes on. */
    public static Answer answer(LeftOff left, Offered now) {
        Optional<Unmet> unmet = left.fault().map(fault -> new Unmet(Condition.FILE, fault, "a whole file that replays"))
                .or(() -> ending(left))
                .or(() -> left.decided().map(words -> new Unmet(Condition.UNDECIDED, words, "a run that waits for a decision")))
                .or(() -> same(Condition.RIG, left.rigHash(), now.rigHash()))
                .or(() -> same(Condition.PROGRAMME, left.programmeHash(), now.programmeHash()))
                .or(() -> software(left.versions(), now.versions()))
                .or(() -> cause(left))
                .or(() -> step(left));
        if (unmet.isPresent()) {
            return unmet.get();
        }
        PickUp place = left.place().orElseThrow();
        return switch (now.outage()) {
            case Outage.Unknown(String why) -> new Unmet(Condition.OUTAGE, "one that cannot be told, " + why,
                    String.format(Locale.ROOT, "at most %.0f min", PickUp.LONGEST_NANOS / 60e9));
            case Outage.Known known -> {
                PickUp here = place.brokenAt(known.brokenNanos());
                Optional<Unmet> late = here.late(known.nowNanos());
                yield late.isPresent() ? late.get() : new Answer.Allowed(here);
            }
        };
    }

    private static Optional<Unmet> ending(LeftOff left) {
        boolean broken = left.ending() == Ending.BROKEN_OFF || left.ending() == Ending.TRIPPED;
        return broken ? Optional.empty()
                : Optional.of(new Unmet(Condition.ENDING, left.endingWords(), "a crash, a power cut or a trip"));
    }

    private static Optional<Unmet> same(Condition condition, String then, String now) {
        return then.equals(now) ? Optional.empty()
                : Optional.of(new Unmet(condition, "SHA-256 " + shown(now), shown(then) + ", as in the run's file"));
    }

    private static String shown(String hash) {
        return hash.length() <= HASH_SHOWN ? hash : hash.substring(0, HASH_SHOWN) + "…";
    }

    private static Optional<Unmet> software(Map<String, String> then, Map<String, String> now) {
        return then.equals(now) ? Optional.empty()
                : Optional.of(new Unmet(Condition.SOFTWARE, new TreeMap<>(now).toString(), new TreeMap<>(then).toString()));
    }

    private static Optional<Unmet> cause(LeftOff left) {
        boolean gone = !left.tripStands() && (left.ending() != Ending.TRIPPED || left.cleared());
        return gone ? Optional.empty()
                : Optional.of(new Unmet(Condition.CAUSE, "a trip that was never cleared",
                        "one that a person cleared, armed, before that run's process ended"));
    }

    private static Optional<Unmet> step(LeftOff left) {
        String allowed = "charge, rest or discharge, and no recovery of low cells after it";
        if (left.step().isEmpty() || left.place().isEmpty()) {
            return Optional.of(new Unmet(Condition.STEP, "none: it was broken off outside a step, or while one ended", allowed));
        }
        Step step = left.step().get();
        boolean plain = switch (step) {
            case Step.Charge _, Step.Rest _, Step.Discharge _ -> true;
            case Step.Park _, Step.HeatRun _, Step.Pulse _, Step.Balance _, Step.ProveProtection _, Step.Recover _,
                    Step.ProveStop _ -> false;
        };
        return plain && !left.recovers() ? Optional.empty()
                : Optional.of(new Unmet(Condition.STEP, step.kind().replace('_', ' ')
                        + (left.recovers() ? ", with a recovery of low cells to come" : ""), allowed));
    }
}
