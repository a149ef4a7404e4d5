package rigwarden.findings;

/**
 * What a seller promised, and where.
 *
 * @param ampHours the promise
 * @param celsius temperature that it holds at
 * @param nearKelvin how far from it a test may be and still decide (IEC 62620, 25 ± 5 °C, from memory)
 * @param leastC lowest rate that it holds at, 1/h
 * @param mostC highest rate, 1/h
 * @param perKelvin the capacity's rise per kelvin: somewhere between nothing and this, relative (check-values 9.2: 0.3 to 0.5 %;
 *     taken with its full uncertainty)
 */
public record Rating(double ampHours, double celsius, double nearKelvin, double leastC, double mostC, double perKelvin) {
    /** The usual conditions of a cell's sheet, where the rig file states none: 25 ± 5 °C, up to 0.5 C. */
    public static Rating usual(double ampHours) {
        return new Rating(ampHours, 25, 5, 0.05, 0.55, 0.008);
    }
}
