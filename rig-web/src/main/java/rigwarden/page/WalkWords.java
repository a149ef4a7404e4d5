package rigwarden.page;

import java.util.Optional;
import rigwarden.joint.JointOhms;
import rigwarden.live.Snapshot;
import rigwarden.live.Walk;
import rigwarden.paper.JointPath;
import rigwarden.paper.Spots;

/** A walk in words, for the page and the terminal alike. */
final class WalkWords {
    private WalkWords() {}

    static String next(Walk walk, Optional<JointPath.Joint> next, Optional<Snapshot> now) {
        String amps = walk.amps(now).isPresent() ? Spots.number(1, walk.amps(now).getAsDouble()) + " A flow now." : "No current is known now.";
        return next.map(joint -> Spots.say("Next, %d of %d: %s. ", joint.place(), walk.joints().size(), joint.name()))
                .orElse("Every joint of this path has been visited. ") + amps;
    }

    static String lines(Walk walk, Optional<JointPath.Joint> next, Optional<Snapshot> now) {
        StringBuilder lines = new StringBuilder();
        if (next.isEmpty()) {
            for (JointOhms joint : walk.ranked()) {
                lines.append("  ").append(joint.joint()).append(": ").append(Walk.words(joint)).append('\n');
            }
        }
        walk.outOfFamily().forEach(one -> lines.append(one).append('\n'));
        return lines.append(next(walk, next, now)).append('\n').toString();
    }
}
