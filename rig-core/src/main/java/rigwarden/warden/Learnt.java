package rigwarden.warden;

import rigwarden.rig.Channel;

/**
 * Resistance of what lies between the pack's measuring points and outside the cells', learnt anew in each path: it has the
 * gain errors of both in it, which change their sign with the current's.
 *
 * @param known whether it was learnt
 * @param ohms mean from half a minute to a minute and a half of current
 */
record Learnt(boolean known, double ohms) {
    static final Learnt NOTHING = new Learnt(false, 0);
    static final double LEAST_AMPS = 5;
    private static final long FROM_NANOS = 30_000_000_000L;
    private static final long TO_NANOS = 90_000_000_000L;
    private static final double SHARE = 0.02;

    Learnt then(Scan scan, Reading[] readings, Places places, InForce inForce) {
        if (!inForce.energised() || inForce.stage() != Closing.CURRENT) {
            return NOTHING;
        }
        long flowing = scan.nanos() - inForce.pathSinceNanos();
        boolean learning = flowing > FROM_NANOS && flowing <= TO_NANOS;
        if (!learning || !(readings[places.current.index()] instanceof Reading.Valid current)
                || Math.abs(current.value()) < LEAST_AMPS || !(readings[places.pack.index()] instanceof Reading.Valid pack)) {
            return this;
        }
        double rest = pack.value();
        for (Channel cell : places.cells) {
            if (!(readings[cell.index()] instanceof Reading.Valid valid)) {
                return this;
            }
            rest -= valid.value();
        }
        double now = rest / current.value();
        return new Learnt(true, known ? ohms + SHARE * (now - ohms) : now);
    }
}
