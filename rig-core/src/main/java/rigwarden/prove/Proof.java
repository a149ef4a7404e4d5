package rigwarden.prove;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Rig;
import rigwarden.warden.Scan;

/**
 * The part of the check with nothing energised, from the first look to the grounds. It has no clock: the scans carry the
 * time. One thread.
 */
public final class Proof {
    private final List<Stage> stages;
    private final List<Outcome> outcomes = new ArrayList<>();
    private int at;

    public Proof(Rig rig) {
        stages = List.of(new AtRest(rig), new Fingers(rig), new Loops(rig), new Grounds(rig));
    }

    /** Looks at a scan, and at what the person says with it. */
    public Turn take(Scan scan, Answer answer) {
        Turn turn = stages.get(at).take(scan, answer);
        outcomes.addAll(turn.outcomes());
        boolean last = at == stages.size() - 1;
        if (turn.over() && !last) {
            at++;
            return new Turn(turn.prompt(), turn.outcomes(), false);
        }
        return turn;
    }

    /** All that was found so far. */
    public List<Outcome> outcomes() {
        return List.copyOf(outcomes);
    }

    /** Whether nothing was found that forbids energising the rig. */
    public boolean fit() {
        return outcomes.stream().noneMatch(Outcome::spoils);
    }
}
