package rigwarden.prove;

import static rigwarden.prove.Outcome.Part.GROUNDS;

import java.util.List;
import java.util.Locale;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Scan;

/**
 * Links that are plugged in must not move the shunt's reading. No current is made here, so that what shows is a link that drives one of its own through the
 * ground; one that only lies beside the shunt shows in a run, against what source and sink say of themselves (rule 38), and in a calibration.
 */
final class Grounds implements Stage {
    private static final double SECONDS = 2;
    /** Of the path's current. */
    private static final double SHARE = 0.001;
    private static final Prompt PLUG =
            new Prompt.Plug("Plug in every link that the night will have (screen, network, chargers of other things), and say done.");
    private static final Prompt WATCH = new Prompt.Watch("Wait.");

    private final Rig rig;
    private final Means before;
    private final Means after;
    private final long scans;
    private boolean plugged;

    Grounds(Rig rig) {
        this.rig = rig;
        before = new Means(rig);
        after = new Means(rig);
        scans = Math.round(SECONDS * 1e9 / rig.scanNanos());
    }

    @Override
    public Turn take(Scan scan, Answer answer) {
        if (!plugged) {
            if (before.scans() < scans) {
                before.take(scan);
                return Turn.asks(new Prompt.Watch("Leave every further link unplugged for two seconds."));
            }
            plugged = answer == Answer.DONE;
            return answer == Answer.SKIP ? Turn.over(WATCH, List.of(Outcome.skipped(GROUNDS, ""))) : Turn.asks(PLUG);
        }
        after.take(scan);
        return after.scans() < scans ? Turn.asks(WATCH) : Turn.over(WATCH, List.of(judged()));
    }

    private Outcome judged() {
        var current = rig.channel(Role.CURRENT);
        double amps = Math.max(rig.chargeCeilingAmps(), rig.dischargeCeilingAmps());
        double moved = after.mean(current) - before.mean(current);
        String words = String.format(Locale.ROOT, "the shunt's reading moved by %+.1f mA; %.0f mA are allowed", moved * 1e3, SHARE * amps * 1e3);
        return Math.abs(moved) <= SHARE * amps
                ? Outcome.passed(GROUNDS, "", words)
                : Outcome.failed(GROUNDS, "", words + ": a link is not isolated, and ties two grounds together; plug them one at a time");
    }
}
