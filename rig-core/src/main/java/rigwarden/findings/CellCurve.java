package rigwarden.findings;

/**
 * Slow curve of one cell over a step, both ways.
 *
 * @param cell its number, from 1
 * @param perVolt charge by voltage, chip's own clock
 * @param perCharge voltage by charge, chip's own clock
 */
public record CellCurve(int cell, ChargePerVolt perVolt, VoltsPerCharge perCharge) {
    /** Twenty steps of the coarsest readings that are taken, V. */
    static final double BIN_VOLTS = 2e-3;
    private static final double FROM_VOLTS = 2.0;
    private static final double TO_VOLTS = 3.8;
    /** A hundredth of the rated charge a bin, and half as much again. */
    private static final double BIN_SHARE = 0.01;
    private static final int CHARGE_BINS = 150;

    static CellCurve fresh(int cell, double ratedAmpHours) {
        return new CellCurve(cell, new ChargePerVolt(FROM_VOLTS, TO_VOLTS, BIN_VOLTS), new VoltsPerCharge(BIN_SHARE * ratedAmpHours, CHARGE_BINS));
    }

    void take(double volts, double movedAmpHours) {
        perVolt.take(volts, movedAmpHours);
        perCharge.take(volts, movedAmpHours);
    }
}
