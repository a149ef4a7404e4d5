package rigwarden.warden;

/**
 * What source or sink shall do.
 *
 * @param amps magnitude, A
 * @param volts the instrument's own voltage limit, V: upper for a source, lower for a sink
 */
public record Setpoint(double amps, double volts) {
    public static final Setpoint NONE = new Setpoint(0, 0);

    public Setpoint {
        if (!(amps >= 0) || !(volts >= 0) || Double.isInfinite(amps) || Double.isInfinite(volts)) {
            throw new IllegalArgumentException("not a set point: " + amps + " A, " + volts + " V");
        }
    }
}
