package rigwarden.findings.trace;

/** Notes the crossings of a step as they come; a cell must be beyond a level in two rows running. */
public final class KneeWatch {
    private final int cells;
    private final double flowsAmps;
    private final double[] lower;
    private final double[] upper;
    private final int[] nextDown;
    private final int[] nextUp;
    private Knees knees;
    private double sinceCoulombs = Double.NaN;
    private double ampHours;
    private double amps;

    /** Less than {@code flowsAmps}, either way, is no current. */
    public KneeWatch(int cells, double flowsAmps) {
        this.cells = cells;
        this.flowsAmps = flowsAmps;
        lower = new double[cells];
        upper = new double[cells];
        nextDown = new int[cells];
        nextUp = new int[cells];
        knees = Knees.fresh(cells);
    }

    public void begin(Numbers now) {
        knees = Knees.fresh(cells);
        sinceCoulombs = now.coulombs;
        ampHours = 0;
        amps = 0;
        for (int cell = 0; cell < cells; cell++) {
            lower[cell] = Double.POSITIVE_INFINITY;
            upper[cell] = Double.NEGATIVE_INFINITY;
            nextDown[cell] = 0;
            nextUp[cell] = 0;
        }
    }

    public void take(Numbers now) {
        if (Double.isNaN(sinceCoulombs)) {
            sinceCoulombs = now.coulombs;
        }
        boolean flows = Math.abs(now.amps) > flowsAmps;
        if (!flows || Double.isNaN(now.coulombs)) {
            return;
        }
        ampHours = (now.coulombs - sinceCoulombs) / 3600;
        amps = now.amps;
        for (int cell = 0; cell < cells; cell++) {
            double volts = now.volts[cell];
            if (Double.isNaN(volts)) {
                continue;
            }
            cross(cell, Math.max(volts, lower[cell]), Math.min(volts, upper[cell]));
            lower[cell] = volts;
            upper[cell] = volts;
            knees.endVolts()[cell] = volts;
        }
    }

    /** The higher of two rows is below a level, or the lower of two above it. */
    private void cross(int cell, double higher, double less) {
        double[] down = knees.emptying()[cell];
        while (nextDown[cell] < down.length && higher <= Knees.EMPTY_FROM_VOLTS - nextDown[cell] * Knees.LEVEL_VOLTS) {
            down[nextDown[cell]++] = -ampHours;
        }
        double[] up = knees.filling()[cell];
        while (nextUp[cell] < up.length && less >= Knees.FULL_FROM_VOLTS + nextUp[cell] * Knees.LEVEL_VOLTS) {
            up[nextUp[cell]++] = ampHours;
        }
    }

    public Knees end() {
        return new Knees(knees.emptying(), knees.filling(), knees.endVolts(), ampHours, amps);
    }
}
