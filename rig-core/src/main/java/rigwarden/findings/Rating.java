package rigwarden.findings;

import rigwarden.rig.Cells;
import rigwarden.rig.RatedAt;

/**
 * What a seller promised of all that is under test, and where.
 *
 * @param amount the promise, in its unit: of cells in series the charge of one place, or the energy of all
 * @param unit "Ah" or "Wh"
 * @param at where it holds
 * @param perKelvin the capacity's rise per kelvin: somewhere between nothing and this, relative (check-values 9.2: 0.3 to 0.5 %;
 *     taken with its full uncertainty)
 */
public record Rating(double amount, String unit, RatedAt at, double perKelvin) {
    static final double PER_KELVIN = 0.008;
    private static final double USUAL_CUT_OFF_VOLTS = 2.5;

    /** The rating that a rig file, or a log's map, states of its cells. */
    public static Rating of(Cells cells) {
        return cells.ratedAt().wattHours().isPresent()
                ? new Rating(cells.series() * cells.ratedAt().wattHours().getAsDouble(), "Wh", cells.ratedAt(), PER_KELVIN)
                : new Rating(cells.ratedAmpHours(), "Ah", cells.ratedAt(), PER_KELVIN);
    }

    /** The usual conditions of a cell's sheet: 25 ± 5 °C, up to 0.55 C, down to 2.5 V. */
    public static Rating usual(double ampHours) {
        return new Rating(ampHours, "Ah", RatedAt.usual(USUAL_CUT_OFF_VOLTS), PER_KELVIN);
    }

    /** For example "rated 105 Ah". */
    public String promise() {
        return Words.say("rated %s %s", amount == Math.rint(amount) ? Words.say("%.0f", amount) : Words.say("%.1f", amount), unit);
    }
}
