package rigwarden.elsewhere;

import java.util.Locale;
import rigwarden.program.Ended;
import rigwarden.rig.Cells;

/** What the last row of a step shows of its end. */
final class Shown {
    /** A log's last row may lie so far before the end, V (project's assumption). */
    private static final double NEAR_VOLTS = 0.02;
    /** A taper has at least halved the current, and come down to what our own programmes take for full. */
    private static final double TAPERED = 0.5;

    private final Cells cells;
    private double most;
    private double amps;
    private double lowest = Double.NaN;
    private double highest = Double.NaN;

    Shown(Cells cells) {
        this.cells = cells;
    }

    /** The next row of the step; NaN where something was not read. */
    void take(double current, double lowestVolts, double highestVolts) {
        if (!Double.isNaN(current)) {
            most = Math.max(most, Math.abs(current));
            amps = current;
        }
        lowest = Double.isNaN(lowestVolts) ? lowest : lowestVolts;
        highest = Double.isNaN(highestVolts) ? highest : highestVolts;
    }

    /** Whether the last row does not speak against it. */
    boolean supports(Ended stated) {
        return switch (stated) {
            case CUT_OFF -> lowest <= cells.cutOffVolts() + NEAR_VOLTS;
            case CEILING -> highest >= cells.ceilingVolts() - NEAR_VOLTS;
            case TAPER -> highest >= cells.ceilingVolts() - NEAR_VOLTS && Math.abs(amps) <= Math.min(TAPERED * most, cells.fullAmps());
            case CHARGER, SINK, PROTECTION, SETTLED, PROVED, TIME, CHARGE_REACHED, NEVER_FIT, NOT_CONTINUED, CUT, TRIPPED, STOPPED -> true;
        };
    }

    /** What is believed in the place of a stated end that the last row speaks against. */
    Ended instead(Ended stated) {
        return stated == Ended.TAPER && supports(Ended.CEILING) ? Ended.CEILING : Ended.STOPPED;
    }

    /** The end itself, where nobody states it. */
    Ended end(String kind) {
        return switch (kind) {
            case "discharge" -> supports(Ended.CUT_OFF) ? Ended.CUT_OFF : Ended.STOPPED;
            case "charge" -> supports(Ended.TAPER) ? Ended.TAPER : supports(Ended.CEILING) ? Ended.CEILING : Ended.STOPPED;
            case String _ -> Ended.TIME;
        };
    }

    /** In words, for who stated something else. */
    String words() {
        return Double.isNaN(highest) ? String.format(Locale.ROOT, "no voltage and %.4f A in its last row", amps)
                : String.format(Locale.ROOT, "%.3f to %.3f V and %.4f A in its last row", lowest, highest, amps);
    }
}
