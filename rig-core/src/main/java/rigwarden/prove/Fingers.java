package rigwarden.prove;

import static rigwarden.prove.Outcome.Part.PROBE;

import java.util.List;
import java.util.Locale;
import rigwarden.rig.Channel;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.warden.Scan;

/** Each probe in turn, warmed between two fingers: the channel that rises is the one that sits there. */
final class Fingers implements Stage {
    /** Time over which a probe's level before the touch is taken, s. */
    private static final double LEVEL_SECONDS = 1;
    /** A sound probe has risen long before, s. */
    private static final double LONGEST_SECONDS = 20;
    /** What goes on moving after the fingers left it is not looked at for so long, s. */
    private static final double LEAVING_SECONDS = 3;
    /** What only another channel, or a fall, says must last this long, s. */
    private static final double SURE_SECONDS = 1;
    private static final double LEAST_RISE_K = 0.5;
    private static final double NOISES = 8;
    private static final double CLEAR_TIMES = 2;
    private static final int SCANS_SURE = 2;

    private final List<Probe> probes;
    private final List<Channel> channels;
    private final boolean[] moved;
    private final Levels levels;
    private int at;
    private long sinceNanos = Long.MIN_VALUE;
    private int last = -1;
    private int sure;

    Fingers(Rig rig) {
        probes = rig.probes();
        channels = probes.stream().map(p -> rig.column(p.name()).orElseThrow()).toList();
        moved = new boolean[probes.size()];
        levels = new Levels(channels, Math.max(2, (int) Math.round(LEVEL_SECONDS * 1e9 / rig.scanNanos())));
    }

    @Override
    public Turn take(Scan scan, Answer answer) {
        if (sinceNanos == Long.MIN_VALUE) {
            levels.take(scan);
            if (!levels.full()) {
                return Turn.asks(new Prompt.Watch("Touch no probe yet."));
            }
            levels.hold();
            sinceNanos = scan.nanos();
            return Turn.asks(prompt());
        }
        levels.take(scan);
        if (answer == Answer.SKIP) {
            return next(scan, Outcome.skipped(PROBE, name()));
        }
        return judged(scan);
    }

    private Turn judged(Scan scan) {
        double seconds = (scan.nanos() - sinceNanos) * 1e-9;
        double threshold = Math.max(LEAST_RISE_K, NOISES * levels.noise());
        double own = levels.rise(at);
        int other = strongest(seconds, 1);
        double others = other < 0 ? 0 : levels.rise(other);
        if (own >= threshold && own > CLEAR_TIMES * others) {
            return sure(SCANS_SURE) ? next(scan, Outcome.passed(PROBE, name(), said("rose %.1f K in %.1f s", own, seconds))) : Turn.asks(prompt());
        }
        int need = (int) Math.ceil(SURE_SECONDS / levels.scanSeconds());
        if (others >= threshold && others > CLEAR_TIMES * own) {
            return sure(need) ? wrong(scan, other, "rose where " + name() + " was warmed: the two are swapped, or sit in the wrong places") : Turn.asks(prompt());
        }
        int falling = strongest(seconds, -1);
        boolean ownFalls = !moved[at] && -own >= threshold;
        if (ownFalls || falling >= 0 && -levels.rise(falling) >= threshold) {
            return sure(need) ? wrong(scan, ownFalls ? at : falling, ownFalls
                    ? "falls when it is warmed: its two wires are reversed"
                    : "fell where " + name() + " was warmed: wrong place, and its two wires are reversed") : Turn.asks(prompt());
        }
        sure = 0;
        return seconds > LONGEST_SECONDS
                ? next(scan, Outcome.failed(PROBE, name(), "nothing moved when it was warmed: it is dead, or another was touched, or the room is as warm as a hand"))
                : Turn.asks(prompt());
    }

    private boolean sure(int scans) {
        return ++sure >= scans;
    }

    private Turn wrong(Scan scan, int channel, String words) {
        last = channel;
        moved[channel] = true;
        return next(scan, Outcome.failed(PROBE, name(), channels.get(channel).name() + " " + words));
    }

    private static String said(String format, double kelvin, double seconds) {
        return String.format(Locale.ROOT, format, kelvin, seconds);
    }

    /** Of all others the one that moves most this way; what cools after it was warmed neither falls nor rises here. */
    private int strongest(double seconds, int sign) {
        int strongest = -1;
        for (int i = 0; i < channels.size(); i++) {
            boolean leaving = i == last && seconds < LEAVING_SECONDS;
            boolean counts = i != at && !leaving && (sign > 0 || !moved[i]);
            if (counts && (strongest < 0 || sign * levels.rise(i) > sign * levels.rise(strongest))) {
                strongest = i;
            }
        }
        return strongest;
    }

    private Turn next(Scan scan, Outcome outcome) {
        if (outcome.result() == Outcome.Result.PASSED) {
            last = at;
            moved[at] = true;
        }
        at++;
        sure = 0;
        if (at == probes.size()) {
            return Turn.over(new Prompt.Watch("That was the last probe."), List.of(outcome));
        }
        levels.hold();
        sinceNanos = scan.nanos();
        return Turn.found(prompt(), outcome);
    }

    private String name() {
        return channels.get(at).name();
    }

    private Prompt prompt() {
        return new Prompt.Warm(at, "Warm the probe " + ProbeSeat.of(probes.get(at)) + " (" + name() + ") between two fingers.");
    }
}
