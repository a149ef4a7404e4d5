package rigwarden.warden;

/**
 * The orders that were in force while a scan was taken, and since when.
 *
 * @param energised whether a way was on
 * @param way the way, of the last energised orders if none is on
 * @param through the device, likewise
 * @param stage its stage, likewise
 * @param sinceNanos when this stage, or Off, began
 * @param pathSinceNanos when this path's first stage was ordered, its pre-charge as a rule; when Off began if none is
 * @param amps set point now, A
 * @param earlierAmps set point before that, A
 * @param ampsSinceNanos when the set point changed last
 * @param chargeCeilingAmps lowest charge ceiling of this path so far: a ceiling only falls within a step
 * @param roomCelsius room when the path was closed
 */
record InForce(
        boolean energised,
        Way way,
        int through,
        Closing stage,
        long sinceNanos,
        long pathSinceNanos,
        double amps,
        double earlierAmps,
        long ampsSinceNanos,
        double chargeCeilingAmps,
        double roomCelsius) {

    static InForce off(long nanos) {
        return new InForce(false, Way.CHARGE, 0, Closing.PRECHARGE, nanos, nanos, 0, 0, nanos, Double.MAX_VALUE, 0);
    }

    /** What follows when these orders are in force from this instant. */
    InForce then(Orders orders, long nanos, double roomNow) {
        return switch (orders) {
            case Orders.Off _ -> energised
                    ? new InForce(false, way, through, stage, nanos, nanos, 0, amps, nanos, Double.MAX_VALUE, roomNow)
                    : this;
            case Orders.Energised on -> then(on, nanos, roomNow);
        };
    }

    private InForce then(Orders.Energised on, long nanos, double roomNow) {
        boolean same = energised && on.way() == way && on.through() == through && on.stage() == stage;
        double wanted = on.set().amps();
        double ceiling = Math.min(energised ? chargeCeilingAmps : Double.MAX_VALUE,
                on.lease().ceilingAmps(Way.CHARGE));
        if (same && wanted == amps && ceiling == chargeCeilingAmps) {
            return this;
        }
        boolean steady = wanted == amps;
        return new InForce(true, on.way(), on.through(), on.stage(), same ? sinceNanos : nanos, energised ? pathSinceNanos : nanos,
                wanted, steady ? earlierAmps : amps, steady ? ampsSinceNanos : nanos, ceiling,
                energised ? roomCelsius : roomNow);
    }
}
