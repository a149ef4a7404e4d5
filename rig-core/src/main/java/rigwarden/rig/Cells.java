package rigwarden.rig;

/**
 * What is under test.
 *
 * @param series cells in series, 1…16
 * @param parallel equal cells side by side in each place, 1…16
 * @param ratedAmpHours rating of one place by the seller, Ah: of its cells in parallel together
 * @param ceilingVolts highest charge voltage by the cell maker's sheet, V
 * @param cutOffVolts lowest discharge voltage by the sheet, V
 * @param chargeC highest charge rate by the sheet, 1/h
 * @param dischargeC highest discharge rate by the sheet, 1/h
 */
public record Cells(
        int series,
        int parallel,
        double ratedAmpHours,
        double ceilingVolts,
        double cutOffVolts,
        double chargeC,
        double dischargeC) {

    /** Highest charge current that cells and envelope allow, A. */
    public double chargeAmps() {
        return ratedAmpHours * Math.min(chargeC, Envelope.CHARGE_C);
    }

    /** Highest discharge current that cells and envelope allow, A. */
    public double dischargeAmps() {
        return ratedAmpHours * Math.min(dischargeC, Envelope.DISCHARGE_C);
    }
}
