package rigwarden.pack;

/** The two true values of a cell, found by running a fresh copy of it at 25 °C. */
final class CellProof {
    private static final double CELSIUS = 25;
    private static final double FULL_VOLTS = 3.60;
    private static final double EMPTY_VOLTS = 2.50;
    private static final double STEP_SECONDS = 1;
    private static final double REST_SECONDS = 7200;

    private CellProof() {}

    /** Charge from 3.60 V and 0.05 C down to 2.50 V at 0.1 C, after two hours of rest. */
    static double ampHours(CellParameters p) {
        Cell cell = new Cell(p.withStartHysteresis(1), 0.90, CELSIUS);
        double amps = 0.2 * p.nominalAmpHours();
        while (amps > 0.05 * p.nominalAmpHours()) {
            live(cell, amps, STEP_SECONDS);
            amps = Math.min(amps, (FULL_VOLTS - cell.emfVolts(CELSIUS)) / cell.ohms());
        }
        live(cell, 0, REST_SECONDS);
        double taken = 0.1 * p.nominalAmpHours();
        double seconds = 0;
        double before = volts(cell, taken);
        double after = before;
        while (after > EMPTY_VOLTS) {
            before = after;
            live(cell, -taken, STEP_SECONDS);
            seconds += STEP_SECONDS;
            after = volts(cell, taken);
        }
        double beyond = STEP_SECONDS * (EMPTY_VOLTS - after) / (before - after);
        return taken * (seconds - beyond) / 3600;
    }

    /** Fall of the voltage over ten seconds of discharge at 0.5 C from rest at half charge, over the current. */
    static double ohms10s(CellParameters p) {
        Cell cell = new Cell(p.withStartHysteresis(-1), 0.5, CELSIUS);
        double amps = 0.5 * p.nominalAmpHours();
        double before = cell.emfVolts(CELSIUS);
        for (int i = 0; i < 10; i++) {
            live(cell, -amps, STEP_SECONDS);
        }
        return (before - volts(cell, amps)) / amps;
    }

    private static double volts(Cell cell, double takenAmps) {
        return cell.emfVolts(CELSIUS) - takenAmps * cell.ohms();
    }

    private static void live(Cell cell, double amps, double seconds) {
        cell.step(amps, seconds, CELSIUS);
        cell.settle(CELSIUS);
    }
}
