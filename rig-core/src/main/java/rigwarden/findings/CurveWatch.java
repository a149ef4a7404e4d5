package rigwarden.findings;

import java.util.ArrayList;
import java.util.List;
import rigwarden.findings.trace.Numbers;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;

/** Gathers each cell's charge by voltage over a step: of rigs and logs only whose taps are fine enough; else it keeps nothing. */
final class CurveWatch {
    private final List<Channel> cells;
    private final boolean fine;
    private final double rated;
    private List<CellCurve> curves = List.of();
    private double since = Double.NaN;

    CurveWatch(Traced rig) {
        cells = rig.channels(Role.CELL_VOLTS);
        fine = coarsest(rig) <= ChargePerVolt.COARSEST_VOLTS;
        rated = rig.cells().ratedAmpHours();
    }

    /** Coarsest step in which a cell of the rig is read, V. */
    static double coarsest(Traced rig) {
        return rig.channels(Role.CELL_VOLTS).stream().mapToDouble(c -> Resistance.resolution(rig, c)).max().orElse(1);
    }

    void begin(Numbers now) {
        List<CellCurve> fresh = new ArrayList<>();
        if (fine) {
            cells.forEach(cell -> fresh.add(CellCurve.fresh(cell.cell(), rated)));
        }
        curves = List.copyOf(fresh);
        since = now.coulombs;
    }

    void take(Numbers now) {
        since = Double.isNaN(since) ? now.coulombs : since;
        if (Double.isNaN(now.coulombs)) {
            return;
        }
        for (int i = 0; i < curves.size(); i++) {
            if (!Double.isNaN(now.volts[i])) {
                curves.get(i).take(now.volts[i], (now.coulombs - since) / 3600);
            }
        }
    }

    List<CellCurve> end() {
        return curves;
    }
}
