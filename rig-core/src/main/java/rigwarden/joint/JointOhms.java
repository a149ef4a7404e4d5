package rigwarden.joint;

import rigwarden.calibration.MeterStatement;

/**
 * Resistance of one joint, from a hand meter's millivolts and the current of the scan in which they were typed.
 *
 * @param joint name, as the wiring table has it
 * @param family of joints that are made alike
 * @param ohms never negative
 * @param expandedOhms expanded uncertainty (k = 2), ohm
 */
public record JointOhms(String joint, String family, double ohms, double expandedOhms) {
    private static final double RECTANGULAR = Math.sqrt(3);
    private static final double FACTOR = 2;

    public JointOhms {
        if (!(ohms >= 0) || !(expandedOhms >= 0)) {
            throw new IllegalArgumentException(joint + ": not a resistance: " + ohms + " ± " + expandedOhms);
        }
    }

    /**
     * The current that flowed.
     *
     * @param amps in the scan of the reading, not 0; its sign does not matter
     * @param expandedAmps its expanded uncertainty (k = 2)
     * @param changedAmps by which it changed over the minute before: the meter was read a little earlier than it was typed, limits ±
     */
    public record Current(double amps, double expandedAmps, double changedAmps) {}

    /** Of a drop that a meter showed, V; either way round. */
    public static JointOhms of(String joint, String family, double volts, MeterStatement meter, Current current) {
        double amps = Math.abs(current.amps());
        double ohms = Math.abs(volts) / amps;
        double byMeter = Math.hypot(meter.limits(volts) / RECTANGULAR, meter.eachU()) / amps;
        double byCurrent = ohms * Math.hypot(current.expandedAmps() / FACTOR, current.changedAmps() / RECTANGULAR) / amps;
        return new JointOhms(joint, family, ohms, FACTOR * Math.hypot(byMeter, byCurrent));
    }
}
