package rigwarden.warden;

import java.util.List;
import java.util.Set;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** The recorder, the card and the loop itself. */
final class RecordRules {
    /** Room that must be left for the end of a run to be written, bytes. */
    private static final double LEAST_FREE_BYTES = 64e6;
    private static final int LATE_PERIODS = 3;

    private RecordRules() {}

    static List<Rule> of(Rig rig) {
        Channel lag = rig.channel(Role.RECORDER_LAG);
        Channel free = rig.channel(Role.FREE_SPACE);
        Channel late = rig.channel(Role.LATENESS);
        double latest = LATE_PERIODS * rig.scanNanos() * 1e-9;
        return List.of(
                Rules.trips(51, "recorder behind", "What was measured has not been stored for too long.",
                        Set.of(Role.RECORDER_LAG), "10 s", 0,
                        view -> above(view, lag, Envelope.RECORDER_LAG_TRIP_S)),
                Rules.warns(52, "recorder slow", "What was measured is stored late.",
                        Set.of(Role.RECORDER_LAG), "3 s", 0,
                        view -> above(view, lag, Envelope.RECORDER_LAG_WARN_S)),
                Rules.trips(53, "card nearly full", "There is hardly room to write how this run ended.",
                        Set.of(Role.FREE_SPACE), "64 MB", 0.3,
                        view -> view.valid(free) && view.value(free) < LEAST_FREE_BYTES
                                ? new Breach(free.index(), view.value(free), LEAST_FREE_BYTES)
                                : Breach.NONE),
                Rules.trips(54, "loop late", "A scan began more than three periods after its time.",
                        Set.of(Role.LATENESS), "3 periods", 0, view -> above(view, late, latest)),
                Rules.trips(55, "time stands still", "The monotonic clock did not go on since the last scan.",
                        Set.of(Role.LATENESS), "later than the last scan", 0,
                        view -> view.nanos() <= view.memory().last().nanos()
                                ? new Breach(late.index(), 0, 0)
                                : Breach.NONE));
    }

    private static Breach above(View view, Channel channel, double limit) {
        return view.valid(channel) && view.value(channel) > limit
                ? new Breach(channel.index(), view.value(channel), limit)
                : Breach.NONE;
    }
}
