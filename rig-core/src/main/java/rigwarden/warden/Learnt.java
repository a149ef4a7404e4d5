package rigwarden.warden;

import rigwarden.rig.Channel;

/**
 * Resistance of what lies between the pack's measuring points and outside the cells', learnt anew in each path. What the
 * two sides differ by without current is not of the path: the gain errors of both, which stay when the current changes.
 *
 * @param restVolts pack less cells while everything was off, mean of some seconds, V
 * @param looks scans from which the resistance was learnt so far
 * @param ohms mean from half a minute to a minute and a half of current
 */
record Learnt(double restVolts, int looks, double ohms) {
    static final Learnt NOTHING = new Learnt(0, 0, 0);
    static final double LEAST_AMPS = 5;
    private static final long FROM_NANOS = 30_000_000_000L;
    private static final long TO_NANOS = 90_000_000_000L;
    private static final double SHARE = 0.02;
    /** By then the mean has forgotten where it began. */
    private static final int ENOUGH = 300;
    /** One scan moves a mean by no more than its share of this: a bit that was turned on the wire must not be learnt. */
    private static final double MOST_V = 0.05;
    private static final double MOST_OHMS = 0.005;

    Learnt then(Scan scan, Reading[] readings, Places places, InForce inForce) {
        if (!inForce.energised()) {
            double apart = apart(readings, places);
            return Double.isNaN(apart) ? this : new Learnt(restVolts + SHARE * within(apart - restVolts, MOST_V), 0, 0);
        }
        if (inForce.stage() != Closing.CURRENT) {
            return looks > 0 ? new Learnt(restVolts, 0, 0) : this;
        }
        long flowing = scan.nanos() - inForce.pathSinceNanos();
        boolean learning = flowing > FROM_NANOS && flowing <= TO_NANOS;
        if (!learning || !(readings[places.current.index()] instanceof Reading.Valid current)
                || Math.abs(current.value()) < LEAST_AMPS) {
            return this;
        }
        double apart = apart(readings, places);
        if (Double.isNaN(apart)) {
            return this;
        }
        double now = (apart - restVolts) / current.value();
        return new Learnt(restVolts, looks + 1, ohms + SHARE * within(now - ohms, MOST_OHMS));
    }

    private static double within(double value, double most) {
        return Math.clamp(value, -most, most);
    }

    /** Whether the resistance was learnt. */
    boolean known() {
        return looks >= ENOUGH;
    }

    /** Pack less cells, V; NaN in this class only, where one of them cannot be seen. */
    private static double apart(Reading[] readings, Places places) {
        if (!(readings[places.pack.index()] instanceof Reading.Valid pack)) {
            return Double.NaN;
        }
        double apart = pack.value();
        for (Channel cell : places.cells) {
            if (!(readings[cell.index()] instanceof Reading.Valid valid)) {
                return Double.NaN;
            }
            apart -= valid.value();
        }
        return apart;
    }

    /** What the two sides should differ by at this current, V. */
    double volts(double amps) {
        return known() ? restVolts + ohms * amps : 0;
    }
}
