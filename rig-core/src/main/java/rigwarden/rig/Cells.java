package rigwarden.rig;

import java.util.List;

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
 * @param labels what is written on each, from B− to B+; empty where the rig file does not say
 * @param ratedAt where the seller's rating holds
 */
public record Cells(
        int series,
        int parallel,
        double ratedAmpHours,
        double ceilingVolts,
        double cutOffVolts,
        double chargeC,
        double dischargeC,
        List<String> labels,
        RatedAt ratedAt) {
    /** A cell that takes more than this at its ceiling is not full, 1/h (project's choice; makers print 0.02 to 0.1). */
    private static final double FULL_C = 0.1;

    public Cells {
        labels = List.copyOf(labels);
    }

    /** Of which nobody says what is written on them, or where their rating holds. */
    public Cells(int series, int parallel, double ratedAmpHours, double ceilingVolts, double cutOffVolts, double chargeC, double dischargeC) {
        this(series, parallel, ratedAmpHours, ceilingVolts, cutOffVolts, chargeC, dischargeC, List.of(), RatedAt.usual(cutOffVolts));
    }

    /** The same cells, rated at other conditions. */
    public Cells rated(RatedAt conditions) {
        return new Cells(series, parallel, ratedAmpHours, ceilingVolts, cutOffVolts, chargeC, dischargeC, labels, conditions);
    }

    /** The same cells with what is written on them, from B− to B+. */
    public Cells labelled(List<String> written) {
        return new Cells(series, parallel, ratedAmpHours, ceilingVolts, cutOffVolts, chargeC, dischargeC, written, ratedAt);
    }

    /** Highest current at which a charge at the ceiling may count as tapered, A. */
    public double fullAmps() {
        return FULL_C * ratedAmpHours;
    }

    /** Highest charge current that cells and envelope allow, A. */
    public double chargeAmps() {
        return ratedAmpHours * Math.min(chargeC, Envelope.CHARGE_C);
    }

    /** Highest discharge current that cells and envelope allow, A. */
    public double dischargeAmps() {
        return ratedAmpHours * Math.min(dischargeC, Envelope.DISCHARGE_C);
    }
}
