package rigwarden.prove;

import static rigwarden.prove.Outcome.Part.AT_REST;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Scan;

/** Five seconds with nothing energised: what every channel says then. */
final class AtRest implements Stage {
    private static final double SECONDS = 5;
    /** A channel that fails more often than this is not there. */
    private static final double LEAST_SHARE = 0.75;
    private static final double ON = 0.9;
    private static final double OFF = 0.1;
    /** Of the pack's voltage: behind an open contactor the bleed has emptied the bus. */
    private static final double EMPTY_SHARE = 0.05;
    /** What probes may differ beyond their uncertainties, K: a room is not one temperature. */
    private static final double ROOM_K = 0.3;
    private static final Prompt WATCH = new Prompt.Watch("Arm key on. Touch nothing for five seconds.");

    private final Rig rig;
    private final long scans;
    private final Means means;
    private final List<Outcome> found = new ArrayList<>();
    private List<Channel> unlike = List.of();

    AtRest(Rig rig) {
        this.rig = rig;
        scans = Math.round(SECONDS * 1e9 / rig.scanNanos());
        means = new Means(rig);
    }

    @Override
    public Turn take(Scan scan, Answer answer) {
        if (means.scans() < scans) {
            means.take(scan);
            if (means.scans() < scans) {
                return Turn.asks(WATCH);
            }
            judge();
        }
        if (unlike.isEmpty()) {
            return Turn.over(WATCH, found);
        }
        return switch (answer) {
            case NONE -> Turn.asks(new Prompt.Confirm(named() + ". Is it truly so warm or cold there?"));
            case DONE -> {
                found.add(Outcome.passed(AT_REST, "probes", named() + ", as the person beside it says"));
                yield Turn.over(WATCH, found);
            }
            case SKIP -> {
                found.add(Outcome.failed(AT_REST, "probes",
                        named() + ": look for a wrong chip, a wrong thermocouple type, a wet or loose plug"));
                yield Turn.over(WATCH, found);
            }
        };
    }

    private void judge() {
        answering();
        found.addAll(new Studs(rig, means).look());
        zero();
        unlike = rig.channels().stream().filter(c -> probe(c) && means.seen(c) && unlike(c)).toList();
        if (unlike.isEmpty()) {
            found.add(Outcome.passed(AT_REST, "probes", "all alike, the room at " + celsius(rig.channel(Role.ROOM))));
        }
        on(Role.LOOP, "loop", "closed", "the loop is open: press nothing, reset it, look along its contacts");
        on(Role.ARM, "arm key", "on", "the arm key is off: turn it");
        off(Role.COIL_FEED, "coil supply", "dead", "the coil supply is alive although no beat is given: the heartbeat stage lets it through");
        off(Role.FEEDBACK, "feedback", "open", "the contactor's feedback says closed: a weld, or its wire is on the wrong contact");
        bus();
    }

    private void answering() {
        List<String> silent = rig.channels().stream().filter(c -> means.share(c) < LEAST_SHARE && needed(c)).map(Channel::name).toList();
        found.add(silent.isEmpty()
                ? Outcome.passed(AT_REST, "channels", "every chip and every instrument answers")
                : Outcome.failed(AT_REST, "channels", "no reading of " + String.join(", ", silent)
                        + ": look for a wire off, a wrong address, a port that is another's"));
    }

    /** The ratio of clocks comes once a minute; instruments are asked less often than the chips. */
    private boolean needed(Channel channel) {
        return channel.role() != Role.CLOCK_RATIO && !(channel.role().ofInstrument() && means.share(channel) >= LEAST_SHARE / 2);
    }

    private void zero() {
        Channel current = rig.channel(Role.CURRENT);
        if (!means.seen(current)) {
            return;
        }
        double amps = means.mean(current);
        double limit = Limit.alone(current.offsetU()) + 3 * means.standard(current);
        String words = String.format(Locale.ROOT, "%+.1f mA at no current; stated are %.1f mA", amps * 1e3, limit * 1e3);
        found.add(Math.abs(amps) <= limit
                ? Outcome.passed(AT_REST, "zero", words)
                : Outcome.failed(AT_REST, "zero", words + ": look for a ground through the sense leads, a warm end of the shunt, a current that flows"));
    }

    private static boolean probe(Channel channel) {
        return switch (channel.role()) {
            case BODY, STUD, BAR, SHUNT_BODY, CONTACTOR_BODY, ROOM, LOOSE -> true;
            case CURRENT, ACCUMULATED, CLOCK_RATIO, PACK_VOLTS, TAP_VOLTS, CELL_VOLTS, BUS_VOLTS, LOOP, COIL_FEED, FEEDBACK, ARM, SOURCE_VOLTS, SOURCE_AMPS, SOURCE_ON,
                    SINK_VOLTS, SINK_AMPS, SINK_ON, RECORDER_LAG, FREE_SPACE, LATENESS -> false;
        };
    }

    private boolean unlike(Channel probe) {
        Channel room = rig.channel(Role.ROOM);
        double limit = probe.offsetU() + room.offsetU() + ROOM_K;
        return Math.abs(means.mean(probe) - means.mean(room)) > limit;
    }

    private String named() {
        return unlike.stream().map(c -> c.name() + " " + celsius(c)).collect(Collectors.joining(", "))
                + " where the room has " + celsius(rig.channel(Role.ROOM));
    }

    private String celsius(Channel channel) {
        return String.format(Locale.ROOT, "%.1f °C", means.mean(channel));
    }

    private void on(Role role, String what, String is, String wrong) {
        Channel channel = rig.channel(role);
        found.add(means.seen(channel) && means.mean(channel) > ON ? Outcome.passed(AT_REST, what, is) : Outcome.failed(AT_REST, what, wrong));
    }

    private void off(Role role, String what, String is, String wrong) {
        Channel channel = rig.channel(role);
        found.add(means.seen(channel) && means.mean(channel) < OFF ? Outcome.passed(AT_REST, what, is) : Outcome.failed(AT_REST, what, wrong));
    }

    private void bus() {
        Channel bus = rig.channel(Role.BUS_VOLTS);
        double volts = means.mean(bus);
        double limit = EMPTY_SHARE * Math.max(1, means.mean(rig.channel(Role.PACK_VOLTS))) + bus.offsetU();
        found.add(Math.abs(volts) <= limit
                ? Outcome.passed(AT_REST, "bus", "empty")
                : Outcome.failed(AT_REST, "bus", String.format(Locale.ROOT,
                        "%.2f V behind the open contactor: something feeds it, or it has not emptied yet", volts)));
    }
}
