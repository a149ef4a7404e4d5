package rigwarden.paper;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rigwarden.findings.Joints;
import rigwarden.joint.JointOhms;
import rigwarden.rig.Rig;

/** A walk's readings on the bars between cells, as the findings take them: of the two ends of a bar the worse one. */
final class WalkedBars {
    private WalkedBars() {}

    /** Readings on lugs and on other parts belong to no cell, and are left out. */
    static List<Joints.Walked> of(Rig rig, List<JointOhms> walked) {
        Map<Integer, JointOhms> worst = new TreeMap<>();
        for (JointOhms one : walked) {
            for (int cell = 1; cell < rig.cells().series(); cell++) {
                if (onBar(one.joint(), cell)) {
                    worst.merge(cell, one, (before, other) -> other.ohms() > before.ohms() ? other : before);
                }
            }
        }
        return worst.entrySet().stream().map(bar -> new Joints.Walked(bar.getKey(), bar.getValue().ohms(), 1, bar.getValue().expandedOhms())).toList();
    }

    /** The outer studs carry lugs, and their names begin with B+ or B−. */
    private static boolean onBar(String joint, int lowerCell) {
        return joint.endsWith(" at " + Wiring.stud(lowerCell)) || joint.endsWith(" at cell " + (lowerCell + 1) + ", − stud");
    }
}
