package rigwarden.prove;

import static rigwarden.prove.Outcome.Part.LOOP;

import java.util.List;
import java.util.Locale;
import rigwarden.rig.Channel;
import rigwarden.rig.Guards;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * Each contact of the loop in turn: it opens the loop, and it stays open until it is reset. Nothing beats meanwhile, so that the coil supply is dead whatever the
 * wiring: that the coils' own feed passes through the same contacts is not shown here, and the words do not say so.
 */
final class Loops implements Stage {
    private static final double LONGEST_SECONDS = 60;
    /** After its release the loop is watched for so long, s. */
    private static final double STAYS_SECONDS = 0.5;
    private static final double ON = 0.5;

    private enum Phase {
        CLOSED,
        OPEN,
        RELEASED,
        RESETTING
    }

    private final Guards guards;
    private final List<String> contacts;
    private final boolean latching;
    private final Channel loop;
    private final Channel coilFeed;
    private int at;
    private Phase phase = Phase.CLOSED;
    private long sinceNanos = Long.MIN_VALUE;

    Loops(Rig rig) {
        guards = rig.guards();
        contacts = guards.loopContacts();
        latching = guards.latching();
        loop = rig.channel(Role.LOOP);
        coilFeed = rig.channel(Role.COIL_FEED);
    }

    @Override
    public Turn take(Scan scan, Answer answer) {
        if (contacts.isEmpty()) {
            return Turn.over(new Prompt.Watch("The loop has no contact."), List.of(Outcome.failed(LOOP, "contacts", "the rig file names none")));
        }
        sinceNanos = sinceNanos == Long.MIN_VALUE ? scan.nanos() : sinceNanos;
        double seconds = (scan.nanos() - sinceNanos) * 1e-9;
        return switch (phase) {
            case CLOSED -> closed(scan, answer, seconds);
            case OPEN -> open(scan, answer, seconds);
            case RELEASED -> released(scan, seconds);
            case RESETTING -> resetting(scan, seconds);
        };
    }

    private Turn closed(Scan scan, Answer answer, double seconds) {
        if (answer == Answer.SKIP) {
            return next(scan, Outcome.skipped(LOOP, name()));
        }
        if (is(scan, loop, false)) {
            return to(Phase.OPEN, scan);
        }
        return seconds > LONGEST_SECONDS
                ? next(scan, Outcome.failed(LOOP, name(), "the loop stayed closed: this contact is bridged, or is not in the loop"))
                : Turn.asks(prompt());
    }

    private Turn open(Scan scan, Answer answer, double seconds) {
        if (is(scan, coilFeed, true)) {
            return next(scan, Outcome.failed(LOOP, name(), "the coil supply is alive with the loop open: it does not pass through the loop"));
        }
        if (answer == Answer.DONE) {
            return to(Phase.RELEASED, scan);
        }
        return seconds > LONGEST_SECONDS ? next(scan, Outcome.failed(LOOP, name(), "nobody said that it was released")) : Turn.asks(prompt());
    }

    private Turn released(Scan scan, double seconds) {
        if (latching && is(scan, loop, true)) {
            return next(scan, Outcome.failed(LOOP, name(), "the loop closed by itself when the contact did: it does not latch"));
        }
        return seconds > STAYS_SECONDS ? to(Phase.RESETTING, scan) : Turn.asks(prompt());
    }

    private Turn resetting(Scan scan, double seconds) {
        if (is(scan, loop, true)) {
            return next(scan, Outcome.passed(LOOP, name(), latching
                    ? "opens the loop, which stays open until it is reset"
                    : "opens the loop"));
        }
        return seconds > LONGEST_SECONDS ? next(scan, Outcome.failed(LOOP, name(), "the loop cannot be reset")) : Turn.asks(prompt());
    }

    private static boolean is(Scan scan, Channel channel, boolean on) {
        return scan.readings().get(channel.index()) instanceof Reading.Valid valid && valid.value() > ON == on;
    }

    private Turn to(Phase to, Scan scan) {
        phase = to;
        sinceNanos = scan.nanos();
        return Turn.asks(prompt());
    }

    private Turn next(Scan scan, Outcome outcome) {
        at++;
        phase = Phase.CLOSED;
        sinceNanos = scan.nanos();
        return at == contacts.size()
                ? Turn.over(new Prompt.Watch("That was the last contact."), List.of(outcome))
                : Turn.found(prompt(), outcome);
    }

    private String name() {
        return contacts.get(at);
    }

    /** A window is opened by a voltage: a lead that is pulled shows nothing of its edges. */
    private String how(String said) {
        return guards.windowFitted() && said.contains("window")
                ? String.format(Locale.ROOT, " (by a bench voltage at its input instead of the cell's: above %.2f V, and another time below %.2f V).",
                        guards.windowHighVolts(), guards.windowLowVolts())
                : " (press it, or warm it, or pull its plug).";
    }

    private Prompt prompt() {
        String said = name().replace('_', ' ');
        return switch (phase) {
            case CLOSED -> new Prompt.Press(at, "Open the " + said + how(said));
            case OPEN -> new Prompt.Release(at, "Open. Now close the " + said + " again, reset nothing, and say done.");
            case RELEASED -> new Prompt.Watch("Wait.");
            case RESETTING -> new Prompt.Reset("Reset the loop.");
        };
    }
}
