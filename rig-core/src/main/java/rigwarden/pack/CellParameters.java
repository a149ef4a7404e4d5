package rigwarden.pack;

/**
 * One cell. Sources: the project's pack model page; where it says assumption, so does the comment here.
 *
 * @param ampHours Q, charge between s = 0 and s = 1, Ah
 * @param ohms R0 at 25 °C, mid charge
 * @param fastOhms R1 of the pair with {@code fastSeconds}
 * @param fastSeconds its time constant
 * @param slowOhms R2 of the pair with {@code slowSeconds}
 * @param slowSeconds its time constant
 * @param hysteresisVolts M, half the gap between charge and discharge curves
 * @param hysteresisRate γ, dimensionless
 * @param bodyJoulesPerKelvin heat capacity of the body: 2.0 kg × 1.05 kJ/kgK
 * @param roomWattsPerKelvin heat path from body to room
 * @param leakAmps self-discharge
 */
public record CellParameters(
        double ampHours,
        double ohms,
        double fastOhms,
        double fastSeconds,
        double slowOhms,
        double slowSeconds,
        double hysteresisVolts,
        double hysteresisRate,
        double bodyJoulesPerKelvin,
        double roomWattsPerKelvin,
        double leakAmps) {
    /** A large prismatic cell sold as 105 Ah, alone on a bench; leak 2 % a month (from memory). */
    public static final CellParameters LARGE = new CellParameters(
            108, 0.25e-3, 0.25e-3, 30, 0.25e-3, 600, 0.025, 70, 2100, 0.6, 0.003);

    public CellParameters withAmpHours(double other) {
        return new CellParameters(other, ohms, fastOhms, fastSeconds, slowOhms, slowSeconds, hysteresisVolts,
                hysteresisRate, bodyJoulesPerKelvin, roomWattsPerKelvin, leakAmps);
    }
}
