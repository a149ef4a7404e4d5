package rigwarden.notice;

import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.concurrent.TimeUnit;
import rigwarden.live.Ahead;
import rigwarden.live.AheadWords;
import rigwarden.live.Doing;
import rigwarden.live.Left;
import rigwarden.live.Phase;
import rigwarden.live.Snapshot;
import rigwarden.live.Watched;
import rigwarden.paper.Spots;
import rigwarden.paper.TripWords;
import rigwarden.program.Ended;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.warden.Reading;
import rigwarden.warden.Trip;
import rigwarden.warden.Warning;

/** Looks at a run from outside, a few times a second, and says what is worth telling. It reads snapshots and nothing else. */
final class Lookout {
    /** Real time without a scan after which a loop counts as standing still. */
    private static final double SILENT_SECONDS = 10;
    /** The same rule at the same place is told again after this at the earliest. */
    private static final long SAME_WARNING_NANOS = TimeUnit.MINUTES.toNanos(30);
    /** Below this under no current a cell is nearly empty (common practice; no source). */
    private static final double EMPTY_VOLTS = 3.0;

    private final Watched run;
    private final InstantSource clock;
    private final long checkInNanos;
    private final long repeatNanos;
    private final Map<String, Long> warned = new HashMap<>();
    private List<Warning> seen = List.of();
    private Optional<Trip> trip = Optional.empty();
    private boolean finished;
    private boolean silent;
    private boolean left;
    private int foretold;
    private long checkInDue = Long.MIN_VALUE;
    private long emptyDue = Long.MIN_VALUE;

    /**
     * A lookout that has seen nothing.
     *
     * @param checkInNanos between check-ins; 0 for none
     * @param repeatNanos after which cells that are still nearly empty are told of again
     */
    Lookout(Watched run, InstantSource clock, long checkInNanos, long repeatNanos) {
        this.run = run;
        this.clock = clock;
        this.checkInNanos = checkInNanos;
        this.repeatNanos = repeatNanos;
    }

    /**
     * What is to be told now.
     *
     * @param now the newest snapshot
     * @param ageSeconds real time since it was made
     * @param nanos real time, monotonic
     */
    List<Notice> look(Snapshot now, double ageSeconds, long nanos) {
        List<Notice> told = new ArrayList<>();
        silence(now, ageSeconds).ifPresent(told::add);
        trip(now).ifPresent(told::add);
        finish(now).ifPresent(told::add);
        leaving(now).ifPresent(told::add);
        warnings(now, nanos).ifPresent(told::add);
        ahead(now).ifPresent(told::add);
        empty(now, nanos).ifPresent(told::add);
        if (checkInNanos > 0 && !silent && nanos >= checkInDue) {
            checkInDue = nanos + checkInNanos;
            told.add(notice(What.CHECK_IN, stands(now.doing().phase()), doing(now)));
        }
        return told;
    }

    /** The last words before this process ends: nothing comes after them. */
    Optional<Notice> last(Snapshot now) {
        return checkInNanos == 0
                ? Optional.empty()
                : Optional.of(new Notice(UUID.randomUUID(), What.CHECK_IN, title("the last check-in"), doing(now)
                        + " Rigwarden ends here; no more check-ins come.", run.number(), run.rehearsal(), 0, at()));
    }

    private Optional<Notice> silence(Snapshot now, double ageSeconds) {
        boolean was = silent;
        silent = !now.over() && ageSeconds > SILENT_SECONDS;
        return silent && !was
                ? Optional.of(notice(What.INTERRUPTED, "no scan for " + Math.round(ageSeconds) + " s", "The loop stands still. A loop"
                        + " that stands still opens the contactor within a second. Look at the rig. " + doing(now)))
                : Optional.empty();
    }

    private Optional<Notice> trip(Snapshot now) {
        Optional<Trip> before = trip;
        trip = now.trip();
        if (trip.isEmpty() || trip.equals(before)) {
            return Optional.empty();
        }
        return Optional.of(notice(What.TRIPPED, "TRIPPED, " + trip.get().rule().name(), TripWords.of(run.rig(), trip.get()) + " "
                + "Everything is ordered off. " + cells(now)));
    }

    private Optional<Notice> finish(Snapshot now) {
        boolean was = finished;
        finished = now.doing().by().isPresent();
        return finished && !was && trip.isEmpty()
                ? Optional.of(notice(What.DONE, over(now.doing().by().orElseThrow()), doing(now) + " " + cells(now)))
                : Optional.empty();
    }

    private static String over(Ended by) {
        return switch (by) {
            case STOPPED -> "stopped by a person";
            case NEVER_FIT -> "given up, the cells stayed too cold or too warm for eight hours";
            case NOT_CONTINUED -> "not continued, a condition for it was not met";
            case TRIPPED -> "tripped and cleared";
            case TAPER, CEILING, CUT_OFF, CHARGER, SINK, PROTECTION, SETTLED, PROVED, TIME, CHARGE_REACHED, CUT -> "done";
        };
    }

    private Optional<Notice> leaving(Snapshot now) {
        boolean was = left;
        left = now.over();
        Phase phase = now.doing().phase();
        boolean open = phase != Phase.IDLE && phase != Phase.TRIPPED && phase != Phase.FINISHED;
        return left && !was && open
                ? Optional.of(notice(What.INTERRUPTED, "interrupted", "The run is watched no longer, and it was not over. Everything was"
                        + " ordered off. Look at the rig. " + doing(now) + " " + cells(now)))
                : Optional.empty();
    }

    private Optional<Notice> warnings(Snapshot now, long nanos) {
        List<String> fresh = new ArrayList<>();
        for (Warning warning : now.warnings()) {
            String spot = Spots.of(run.rig(), warning.where());
            String key = warning.rule().number() + " " + spot;
            boolean known = seen.stream().anyMatch(w -> w == warning);
            if (!known && nanos >= warned.getOrDefault(key, Long.MIN_VALUE)) {
                warned.put(key, nanos + SAME_WARNING_NANOS);
                fresh.add("Rule " + warning.rule().number() + ", " + warning.rule().name() + ", at " + spot + ": "
                        + warning.rule().sentence());
            }
        }
        seen = now.warnings();
        return fresh.isEmpty()
                ? Optional.empty()
                : Optional.of(notice(What.WARNED, "the warden warns", String.join(" ", fresh) + " The run goes on. " + doing(now)));
    }

    /** A limit that is likely to be met before the step ends is told once for each step. */
    private Optional<Notice> ahead(Snapshot now) {
        int step = now.doing().step();
        foretold = step < foretold ? 0 : foretold;
        if (now.ahead().filter(Ahead::crosses).isEmpty() || step == foretold) {
            return Optional.empty();
        }
        foretold = step;
        return Optional.of(notice(What.WARNED, "a limit lies ahead", "By the end of the step: "
                + AheadWords.of(run.rig(), now.ahead().orElseThrow()) + ". The run goes on until then. Less current, or a look at that joint, would"
                + " save the night. " + doing(now)));
    }

    private Optional<Notice> empty(Snapshot now, long nanos) {
        boolean over = trip.isPresent() || finished;
        Optional<String> how = over ? nearlyEmpty(now) : Optional.empty();
        if (how.isEmpty()) {
            emptyDue = Long.MIN_VALUE;
            return Optional.empty();
        }
        if (nanos < emptyDue) {
            return Optional.empty();
        }
        emptyDue = nanos + repeatNanos;
        return Optional.of(notice(What.NEARLY_EMPTY, "nearly empty, recharge within 24 h", how.orElseThrow()
                + " Cells that are left like this age; recharge them within 24 h. This is said again until a run begins or"
                + " Rigwarden is ended."));
    }

    private Optional<String> nearlyEmpty(Snapshot now) {
        if (now.left().care() == Left.Care.RECHARGE) {
            return Optional.of("The cells are left " + now.left().words() + ".");
        }
        OptionalDouble lowest = run.rig().channels(Role.CELL_VOLTS).stream()
                .filter(c -> now.scan().readings().get(c.index()) instanceof Reading.Valid)
                .mapToDouble(c -> valid(now, c)).min();
        return lowest.isPresent() && lowest.getAsDouble() < EMPTY_VOLTS
                ? Optional.of(Spots.say("The lowest cell is at %.3f V.", lowest.getAsDouble()))
                : Optional.empty();
    }

    private static double valid(Snapshot now, Channel channel) {
        return ((Reading.Valid) now.scan().readings().get(channel.index())).value();
    }

    private String cells(Snapshot now) {
        return "The cells are left " + now.left().words() + ".";
    }

    private static String stands(Phase phase) {
        return switch (phase) {
            case IDLE -> "check-in, not started";
            case PROVING, WAITING, CLOSING, CURRENT, RESTING -> "check-in, under way";
            case TRIPPED -> "check-in, still TRIPPED";
            case FINISHED -> "check-in, over";
        };
    }

    /** What the run does, in one or two sentences. */
    private String doing(Snapshot now) {
        int step = now.doing().step();
        String where = step == 0
                ? "The run " + now.doing().phase().words() + "."
                : Spots.say("Step %d of %d, %s, %s after the first scan. %s.", step, run.program().steps().size(),
                        now.doing().kind().replace('_', ' '), Spots.span(now.elapsedNanos()), phase(now.doing()));
        return where + now.forecast().map(f -> " The step ends by " + f.ends()
                + (f.leftNanos().isPresent() ? ", in about " + Spots.span(f.leftNanos().getAsLong()) : "") + ".").orElse("");
    }

    private static String phase(Doing doing) {
        return doing.phase() == Phase.CURRENT
                ? Spots.say("The current is on, %.1f A ordered", Math.abs(doing.setAmps()))
                : "The run " + doing.phase().words();
    }

    private Notice notice(What what, String title, String words) {
        return new Notice(UUID.randomUUID(), what, title(title), words, run.number(), run.rehearsal(),
                (int) TimeUnit.NANOSECONDS.toMinutes(checkInNanos), at());
    }

    private String title(String words) {
        return (run.rehearsal() ? "REHEARSAL: " : "") + words + " (" + run.program().name() + " on " + run.rig().name() + ")";
    }

    private Instant at() {
        return clock.instant();
    }
}
