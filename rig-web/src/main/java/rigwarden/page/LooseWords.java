package rigwarden.page;

import java.util.Optional;
import rigwarden.live.Laying;
import rigwarden.live.Snapshot;
import rigwarden.live.Watched;
import rigwarden.paper.Spots;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Spot;
import rigwarden.warden.Reading;

/** The loose probe in words, for the page and the terminal alike. */
final class LooseWords {
    /** What {@code findings.trace.SpotWatch} leaves out: five time constants of the bead and a hand's twenty seconds. */
    private static final double LAGS = 5;
    private static final double HAND_SECONDS = 20;

    private LooseWords() {}

    /** Where it lies, since when, and what it reads; empty for a rig that has none. */
    static String of(Watched run, Optional<Snapshot> now) {
        Optional<Channel> loose = run.rig().possible(Role.LOOSE);
        if (loose.isEmpty() || now.isEmpty()) {
            return "";
        }
        Optional<Laying.Laid> laid = run.laying().flatMap(Laying::last);
        return laid.map(at -> where(at, loose.get(), now.get().scan().nanos())).orElse("nobody has said where it lies") + ": "
                + reads(loose.get(), now.get());
    }

    private static String where(Laying.Laid laid, Channel loose, long nanos) {
        double seconds = (nanos - laid.nanos()) * 1e-9;
        boolean settles = seconds < HAND_SECONDS + LAGS * loose.lagSeconds();
        String on = laid.spot().equals(Spot.AWAY) ? "on nothing" : "on " + laid.spot().name();
        return on + ", " + Spots.span(Math.round(seconds * 1e9)) + (settles ? ", settling" : "");
    }

    private static String reads(Channel loose, Snapshot now) {
        if (!(now.scan().readings().get(loose.index()) instanceof Reading.Valid valid)) {
            return "no reading";
        }
        String change = now.trends().get(loose.index()).isPresent() ? Spots.arrow(now.trends().get(loose.index()).getAsDouble()) : "";
        return Spots.value(loose.quantity(), valid.value()) + change;
    }
}
