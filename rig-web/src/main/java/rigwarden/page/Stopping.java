package rigwarden.page;

import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;
import rigwarden.live.Phase;
import rigwarden.live.Snapshot;
import rigwarden.live.Watched;
import rigwarden.paper.Spots;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Role;
import rigwarden.warden.Reading;
import rigwarden.warden.Severity;
import rigwarden.warden.Sides;

/** STOP: the flag first, then a look at what is measured, so that the answer says what happened and not what was wished. */
final class Stopping {
    private static final long LONGEST_LOOK_NANOS = 3_000_000_000L;
    private static final long NAP_NANOS = 20_000_000L;
    private static final int LOOKING = 8;

    private final Semaphore looking = new Semaphore(LOOKING);
    private volatile Optional<Snapshot> before = Optional.empty();
    private volatile long pressedNanos;
    /** Number of the run in which somebody has pressed STOP; 0 for none. */
    private volatile int pressedIn;

    /** Sets the flag, then looks for up to three seconds; with many others looking it answers at once. */
    String stop(Optional<Watched> run) {
        if (run.isEmpty()) {
            return told(run);
        }
        Watched watched = run.orElseThrow();
        Optional<Snapshot> seen = watched.live().now();
        watched.desk().stop();
        before = seen;
        pressedNanos = System.nanoTime();
        pressedIn = watched.number();
        if (looking.tryAcquire()) {
            try {
                long until = System.nanoTime() + LONGEST_LOOK_NANOS;
                while (System.nanoTime() - until < 0 && !settled(watched)) {
                    LockSupport.parkNanos(NAP_NANOS);
                }
            } finally {
                looking.release();
            }
        }
        return told(run);
    }

    private boolean settled(Watched run) {
        Optional<Snapshot> now = run.live().now();
        long from = before.map(s -> s.scan().number()).orElse(0L);
        return now.isPresent() && now.get().scan().number() > from && quiet(now.get()) && off(run, now.get())
                || now.isPresent() && now.get().over();
    }

    private static boolean quiet(Snapshot now) {
        Phase phase = now.doing().phase();
        return phase == Phase.FINISHED || phase == Phase.TRIPPED || phase == Phase.IDLE;
    }

    /** Current zero, contactor open, every output off, the bus below the pack, and no trip that says otherwise. */
    private static boolean off(Watched run, Snapshot now) {
        return dead(run, now) && !held(now) && empty(run, now) && run.rig().channels().stream()
                .filter(c -> c.role() == Role.SOURCE_ON || c.role() == Role.SINK_ON)
                .allMatch(c -> now.scan().readings().get(c.index()) instanceof Reading.Valid on && on.value() < 0.5);
    }

    private static boolean dead(Watched run, Snapshot now) {
        return Math.abs(value(run, now, Role.CURRENT).orElse(Double.MAX_VALUE)) < Envelope.NO_CURRENT_A
                && value(run, now, Role.FEEDBACK).orElse(1.0) < 0.5;
    }

    private static boolean empty(Watched run, Snapshot now) {
        return Sides.below(now.scan(), run.rig().channel(Role.PACK_VOLTS), run.rig().channel(Role.BUS_VOLTS));
    }

    /** Whether a contact or an output is known not to have let go. */
    static boolean held(Snapshot now) {
        return Stream.concat(now.trip().stream(), now.also().stream())
                .anyMatch(t -> t.rule().severity() == Severity.TRIPS_UNTIL_PROVED);
    }

    private static boolean seen(Watched run, Snapshot now) {
        return value(run, now, Role.CURRENT).isPresent() && value(run, now, Role.FEEDBACK).isPresent();
    }

    /** What is measured now, in the words of an answer. */
    String told(Optional<Watched> run) {
        if (run.isEmpty()) {
            return "<h1>Nothing runs</h1><p>This process has nothing switched on.</p>";
        }
        Watched watched = run.orElseThrow();
        Optional<Snapshot> now = watched.live().now();
        if (now.isEmpty()) {
            return "<h1>Stop is ordered</h1><p>No scan has been taken yet.</p>";
        }
        Snapshot last = now.orElseThrow();
        String measured = "<p>Measured now: " + Html.text(measured(watched, last)) + ".</p>";
        boolean quiet = quiet(last) || last.over();
        if (quiet && off(watched, last)) {
            return "<h1 class=\"good\">Stopped: everything is off</h1>" + measured
                    + "<p>Nothing starts again by itself.</p>";
        }
        if (!quiet && pressedIn != watched.number()) {
            return "<h1>Nobody has pressed STOP in this run</h1>" + measured + "<p><a href=\"/\">Back to Now</a></p>";
        }
        boolean fresh = last.scan().number() > before.map(s -> s.scan().number()).orElse(0L);
        if (!fresh && System.nanoTime() - pressedNanos < LONGEST_LOOK_NANOS) {
            return "<h1>Stop is given</h1>" + measured + "<p>No scan has been taken since; this view looks again.</p>";
        }
        if (quiet && dead(watched, last) && !held(last)) {
            return "<h1>Stopped: no current, contactor open</h1>" + measured
                    + "<p>The bus is not yet empty, or an output not yet read as off; this view looks again.</p>";
        }
        String why = !fresh
                ? "It did NOT work yet: the control loop has taken no scan since; the heartbeat stage opens the contactor within "
                        + "a second of that"
                : !seen(watched, last) ? "STOP is given, and what it did cannot be seen"
                : "It did NOT work yet: " + (held(last) ? "something did not let go" : "current or contactor did not obey");
        return "<h1 class=\"bad\">" + Html.text(why) + "</h1>" + measured + """
                <ol><li>Push the emergency stop at the rig, if you can reach it safely.</li>
                <li>Cut the mains of the charger or source, and switch off the inverter or load.</li>
                <li>If there is smoke or a hiss, leave, close the door and call the fire brigade: the gas burns and is
                poisonous.</li></ol><p>This view looks again every two seconds.</p>""";
    }

    /** Whether a view should look again. */
    boolean open(Optional<Watched> run) {
        return run.isPresent() && run.get().live().now().map(s -> !s.over()).orElse(true);
    }

    private String measured(Watched run, Snapshot now) {
        String current = value(run, now, Role.CURRENT).map(a -> Spots.say("current %.1f A", a + 0.0))
                .orElse("the current cannot be read");
        String contactor = value(run, now, Role.FEEDBACK).map(on -> on > 0.5 ? "contactor CLOSED" : "contactor open")
                .orElse("the contactor's feedback cannot be read");
        return current + ", " + contactor + ", " + bus(run, now);
    }

    private String bus(Watched run, Snapshot now) {
        Optional<Double> volts = value(run, now, Role.BUS_VOLTS);
        if (volts.isEmpty()) {
            return "the bus cannot be read";
        }
        Optional<Double> was = before.flatMap(s -> value(run, s, Role.BUS_VOLTS));
        String falling = was.isPresent() && volts.get() < was.get() - 0.05
                ? Spots.say(" and falling (it was %.2f V)", was.get())
                : "";
        return Spots.say("bus %.2f V", volts.get()) + falling;
    }

    private static Optional<Double> value(Watched run, Snapshot now, Role role) {
        for (Channel channel : run.rig().channels(role)) {
            if (now.scan().readings().get(channel.index()) instanceof Reading.Valid valid) {
                return Optional.of(valid.value());
            }
        }
        return Optional.empty();
    }
}
