package rigwarden.emulated;

import rigwarden.pack.World;
import rigwarden.rig.Guards;
import rigwarden.rig.Rig;

/** The independent hardware window of each cell, where the rig file says that one is fitted: it opens the latching loop. */
final class CellWindow {
    private final Guards guards;
    private final int cells;
    private boolean opened;

    CellWindow(Rig rig, boolean opened) {
        guards = rig.guards();
        cells = rig.cells().series();
        this.opened = opened;
    }

    void look(World world) {
        for (int k = 0; k < cells && guards.windowFitted() && !opened; k++) {
            double volts = world.cellVolts(k);
            if (volts > guards.windowHighVolts() || volts < guards.windowLowVolts()) {
                opened = true;
                world.openLoop();
            }
        }
    }

    boolean opened() {
        return opened;
    }
}
