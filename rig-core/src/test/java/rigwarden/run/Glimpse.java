package rigwarden.run;

import java.util.Optional;
import java.util.Set;

/** What a state of the machine carries unseen, for tests that tell situations apart. */
public final class Glimpse {
    private Glimpse() {}

    /** Switched sources that have shown their no-load voltage, by place in the rig's list. */
    public static Set<Integer> shown(RunState state) {
        return progress(state).map(p -> p.carried().shown()).orElse(Set.of());
    }

    /** When the step that runs began, waiting left out; never for none. */
    public static long sinceNanos(RunState state) {
        return progress(state).map(Progress::sinceNanos).orElse(Long.MAX_VALUE);
    }

    /** How often the heartbeat stage has let go in this run. */
    public static int heartbeats(RunState state) {
        return progress(state).map(p -> p.carried().heartbeats()).orElse(0);
    }

    /** Whether the step's highest cell has met its ceiling. */
    public static boolean metCeiling(RunState state) {
        return progress(state).map(p -> p.ceilingNanos() != Long.MAX_VALUE).orElse(false);
    }

    private static Optional<Progress> progress(RunState state) {
        return switch (state) {
            case RunState.Waiting s -> Optional.of(s.progress());
            case RunState.Showing s -> Optional.of(s.progress());
            case RunState.Closes s -> Optional.of(s.progress());
            case RunState.Stepping s -> Optional.of(s.progress());
            case RunState.Parting s -> Optional.of(s.progress());
            case RunState.Resting s -> Optional.of(s.progress());
            case RunState.Opening s -> Optional.of(s.progress());
            case RunState.Idle _, RunState.Proving _, RunState.Interrupted _, RunState.Finished _ -> Optional.empty();
        };
    }
}
