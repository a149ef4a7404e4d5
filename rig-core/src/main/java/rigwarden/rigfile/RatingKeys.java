package rigwarden.rigfile;

import java.util.OptionalDouble;
import rigwarden.rig.Cells;
import rigwarden.rig.RatedAt;

/** Reads where the seller's rating holds. Every key may be left out: the usual condition then stands in its place, and is printed. */
public final class RatingKeys {
    /** Why there is such a table. */
    public static final String WHY = "a capacity is held against the rating at its own conditions only; without it at the usual ones";
    private static final double MOST_WATT_HOURS = 40_000;

    private RatingKeys() {}

    /**
     * The cells with the conditions of their rating.
     *
     * @param keys of the table
     * @param lowestVolts lowest cut-off that may be written, V
     * @param highestVolts highest, V
     */
    public static Cells read(Keys keys, Cells cells, double lowestVolts, double highestVolts) {
        double celsius = keys.has("temperature_c")
                ? keys.number("temperature_c", "°C", -20, 60, "the cells' temperature that the rating holds at; 25 without this key")
                : RatedAt.USUAL_CELSIUS;
        double near = keys.has("within_k")
                ? keys.number("within_k", "K", 0.5, 15, "farther away a test decides nothing; 5 without this key")
                : RatedAt.USUAL_NEAR_KELVIN;
        double least = keys.has("least_rate_c")
                ? keys.number("least_rate_c", "1/h", 0.001, 5, "slower, cells give more than is promised; 0.05 without this key")
                : RatedAt.USUAL_LEAST_C;
        double most = keys.has("most_rate_c")
                ? keys.number("most_rate_c", "1/h", 0.001, 10, "faster, cells give less than is promised; 0.55 without this key")
                : RatedAt.USUAL_MOST_C;
        if (most < least) {
            keys.refuse(RefusalKind.OUT_OF_RANGE, keys.good("most_rate_c") ? "most_rate_c" : "least_rate_c",
                    "a highest rate above the lowest, " + Figures.of(least, "1/h"), "else it holds at no rate", "");
        }
        double cutOff = keys.has("cut_off_v")
                ? keys.number("cut_off_v", "V", lowestVolts, highestVolts, "the discharge of the rating ends at it; that of the cells without this key")
                : cells.cutOffVolts();
        OptionalDouble wattHours = keys.has("rated_wh")
                ? OptionalDouble.of(cells.parallel() * keys.number("rated_wh", "Wh", 1, MOST_WATT_HOURS,
                        "the promise for one cell, where the seller counts energy; without this key it is the charge, rated_ah"))
                : OptionalDouble.empty();
        keys.noOthers();
        return cells.rated(new RatedAt(celsius, near, least, most, cutOff, wattHours, true));
    }
}
