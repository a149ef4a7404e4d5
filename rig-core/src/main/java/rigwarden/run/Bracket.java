package rigwarden.run;

/**
 * Between which voltages a cell comes to rest, by what flowed until everything opened.
 *
 * @param lowVolts lowest, V
 * @param highVolts highest, V
 */
public record Bracket(double lowVolts, double highVolts) {
    boolean holds(double volts) {
        return volts >= lowVolts && volts <= highVolts;
    }
}
