package rigwarden.paper;

import java.util.List;

/** Running sums of one cell's rows, by the trapezoid; charge and energy in and out are told apart by the sign of the current. */
final class CellSums {
    private static final int DECIMALS = 6;

    private double lastSeconds = Double.NaN;
    private double lastAmps;
    private double lastWatts;
    private double inAmpHours;
    private double outAmpHours;
    private double inWattHours;
    private double outWattHours;

    /** Takes the next row: seconds since the run began, V, and A positive into the cell. */
    void take(double seconds, double volts, double amps) {
        double watts = volts * amps;
        if (!Double.isNaN(lastSeconds)) {
            double half = (seconds - lastSeconds) / 3600 / 2;
            inAmpHours += half * (Math.max(amps, 0) + Math.max(lastAmps, 0));
            outAmpHours += half * (Math.max(-amps, 0) + Math.max(-lastAmps, 0));
            inWattHours += half * ((amps > 0 ? watts : 0) + (lastAmps > 0 ? lastWatts : 0));
            outWattHours -= half * ((amps < 0 ? watts : 0) + (lastAmps < 0 ? lastWatts : 0));
        }
        lastSeconds = seconds;
        lastAmps = amps;
        lastWatts = watts;
    }

    /** Power and the six sums, as fields in the order of their columns. */
    List<String> fields() {
        return List.of(field(lastWatts), field(inAmpHours), field(outAmpHours), field(inAmpHours - outAmpHours), field(inWattHours),
                field(outWattHours), field(inWattHours - outWattHours));
    }

    private static String field(double value) {
        return CsvExport.plain(value, DECIMALS);
    }
}
