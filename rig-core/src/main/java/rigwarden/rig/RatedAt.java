package rigwarden.rig;

import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Where a seller's rating of the cells holds, and what it counts.
 *
 * @param celsius temperature of the cells' bodies, °C
 * @param nearKelvin how far from it a test may be and still decide, K
 * @param leastC lowest rate that it holds at, 1/h
 * @param mostC highest rate, 1/h
 * @param cutOffVolts voltage of the first cell at which the discharge ends, V
 * @param wattHours what is promised of one place, Wh, where the rating counts energy; empty where it counts charge
 * @param stated whether a file states any of it; else all are the usual conditions of a cell's sheet
 */
public record RatedAt(double celsius, double nearKelvin, double leastC, double mostC, double cutOffVolts, OptionalDouble wattHours,
        boolean stated) {
    /** 25 ± 5 °C (IEC 62620, from memory). */
    public static final double USUAL_CELSIUS = 25;
    public static final double USUAL_NEAR_KELVIN = 5;
    /** From 0.05 to 0.55 C (project's assumption: sheets print 0.2 to 0.5 C, and a source is not exact). */
    public static final double USUAL_LEAST_C = 0.05;
    public static final double USUAL_MOST_C = 0.55;

    /** The usual conditions of a cell's sheet, in charge, to the cells' own cut-off. */
    public static RatedAt usual(double cutOffVolts) {
        return new RatedAt(USUAL_CELSIUS, USUAL_NEAR_KELVIN, USUAL_LEAST_C, USUAL_MOST_C, cutOffVolts, OptionalDouble.empty(), false);
    }

    /** For a person, for example "at 25 ± 5 °C, 0.05…0.55 C, to 2.50 V, counted in Ah; the usual conditions, none being stated". */
    public String words() {
        return String.format(Locale.ROOT, "at %.0f ± %.0f °C, %.2f…%.2f C, to %.2f V, counted in %s%s", celsius, nearKelvin, leastC, mostC,
                cutOffVolts, wattHours.isPresent() ? "Wh" : "Ah", stated ? "" : "; the usual conditions, none being stated");
    }
}
