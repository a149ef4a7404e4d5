package rigwarden.pack;

import java.util.Arrays;

/**
 * Currents and voltages between the pack, sources and sinks at one instant.
 *
 * <p>With K1 and the battery's protection closed the bus follows the pack at once, and its capacitance counts only in
 * the spark at the closing. A protection that blocks one direction lets the other through, like a diode. Else the bus
 * is loose.
 */
final class Path {
    private static final double SETTLED_AMPS = 1e-12;
    private static final int PASSES = 200;

    private final PathParameters p;
    private final LooseBus bus;
    private final double[] sourceAmps;
    private final double[] sinkAmps;
    private final double[] sinkSiemens;
    private double amps;
    private boolean joined;
    private double prechargeSiemens;
    private double meanAmps;
    private double meanBusVolts;
    private double shortSiemens;
    private boolean parted;

    Path(PathParameters p) {
        this.p = p;
        bus = new LooseBus(p);
        sourceAmps = new double[p.supplies().size()];
        sinkAmps = new double[p.loads().size()];
        sinkSiemens = new double[sinkAmps.length];
    }

    Path(Path other) {
        p = other.p;
        bus = new LooseBus(other.bus);
        sourceAmps = other.sourceAmps.clone();
        sinkAmps = other.sinkAmps.clone();
        sinkSiemens = other.sinkSiemens.clone();
        amps = other.amps;
        joined = other.joined;
        prechargeSiemens = other.prechargeSiemens;
        meanAmps = other.meanAmps;
        meanBusVolts = other.meanBusVolts;
        shortSiemens = other.shortSiemens;
        parted = other.parted;
    }

    /** Something conducts across the bus from now on. */
    void shorten(double ohms) {
        shortSiemens += 1 / ohms;
    }

    /** The fuse has blown: K1 and the pre-charge relay behind it lead nowhere. */
    void part() {
        parted = true;
    }

    /**
     * Finds the currents of this instant.
     *
     * @param emfVolts of the cells in series
     * @param senseOhms between the outer studs
     * @param outerOhms from there to the bus and back
     * @return coulombs that the spark of a closing switch took out of the pack; 0 otherwise
     */
    double solve(Contacts contacts, ProtectionSwitch protection, double emfVolts, double senseOhms, double outerOhms,
            Devices devices) {
        double siemens = siemens(devices.sinks());
        double ohms = senseOhms + outerOhms;
        double spark = 0;
        if (contacts.contactor() && !parted && flows(protection, emfVolts, senseOhms, ohms, siemens, devices)) {
            double coulombs = bus.set(emfVolts + amps * ohms);
            spark = joined || coulombs < 0 && protection.chargeBlocked() ? 0 : coulombs;
            joined = true;
        } else {
            joined = false;
            boolean through = !contacts.contactor() && contacts.precharge() && !parted
                    && !(bus.volts() < emfVolts ? protection.dischargeBlocked() : protection.chargeBlocked());
            prechargeSiemens = through ? 1 / (p.prechargeOhms() + senseOhms + outerOhms) : 0;
            bus.solve(emfVolts, siemens, prechargeSiemens, devices, sourceAmps, sinkAmps);
            amps = prechargeSiemens * (bus.volts() - emfVolts);
        }
        for (int j = 0; j < sinkAmps.length; j++) {
            sinkAmps[j] += sinkSiemens[j] * bus.volts();
        }
        return spark;
    }

    private double siemens(Sink[] sinks) {
        double siemens = 1 / p.bleedOhms() + shortSiemens;
        for (int j = 0; j < sinks.length; j++) {
            double before = siemens;
            siemens += sinks[j].siemens();
            sinkSiemens[j] = siemens - before;
        }
        return siemens;
    }

    /** Finds the current through K1 and whether the protection lets it through; a bus above the pack cannot draw yet. */
    private boolean flows(ProtectionSwitch protection, double emfVolts, double senseOhms, double ohms, double siemens,
            Devices devices) {
        solveJoined(emfVolts, senseOhms, ohms, siemens, devices.sources(), devices.sinks());
        boolean charge = !protection.chargeBlocked() || amps <= 0 && (joined || bus.volts() <= emfVolts);
        return charge && (!protection.dischargeBlocked() || amps >= 0);
    }

    /** Each source and sink in turn answers what the others leave it, until nobody moves any more. */
    private void solveJoined(double emfVolts, double senseOhms, double ohms, double siemens, Source[] sources,
            Sink[] sinks) {
        double share = 1 + siemens * ohms;
        double own = siemens * emfVolts;
        Arrays.fill(sourceAmps, 0);
        for (int j = 0; j < sinks.length; j++) {
            sinkAmps[j] = sinks[j].amps(emfVolts);
        }
        double moved = 1;
        for (int pass = 0; pass < PASSES && moved > SETTLED_AMPS; pass++) {
            moved = 0;
            double load = sum(sinkAmps);
            double given = sum(sourceAmps);
            for (int i = 0; i < sources.length; i++) {
                double limit = sources[i].limitAmps().now();
                double others = given - sourceAmps[i];
                double next = limit == 0 ? 0 : Math.clamp(sources[i].wantedAmps(
                        new Knot(emfVolts, senseOhms, ohms, share, load, own, others)), 0, limit);
                moved += Math.abs(next - sourceAmps[i]);
                sourceAmps[i] = next;
                given = others + next;
            }
            for (int j = 0; j < sinks.length; j++) {
                double others = load - sinkAmps[j];
                double next = sinks[j].amps(emfVolts + (given - own - others) * ohms / share, ohms / share);
                moved += Math.abs(next - sinkAmps[j]);
                sinkAmps[j] = next;
                load = others + next;
            }
        }
        amps = (sum(sourceAmps) - sum(sinkAmps) - own) / share;
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum;
    }

    /** Seconds until a loose bus falls to where something takes place; infinite if it will not. */
    double secondsAlone(Contacts contacts, ProtectionSwitch protection, double emfVolts, Sink[] sinks) {
        boolean diode = contacts.contactor() && protection.chargeBlocked() && !protection.dischargeBlocked();
        return joined ? Double.POSITIVE_INFINITY : bus.secondsAlone(sinks, diode ? emfVolts : 0);
    }

    /** Lives through a step; afterwards the means can be read. Tied to the pack they are the values of its start. */
    void step(double seconds, double emfVolts) {
        if (joined) {
            meanAmps = amps;
            meanBusVolts = bus.volts();
            return;
        }
        bus.step(seconds);
        meanBusVolts = bus.meanVolts();
        meanAmps = prechargeSiemens * (meanBusVolts - emfVolts);
    }

    double busVolts() {
        return bus.volts();
    }

    double amps() {
        return amps;
    }

    double sourceAmps(int source) {
        return sourceAmps[source];
    }

    double sinkAmps(int sink) {
        return sinkAmps[sink];
    }

    double sinkVolts(int sink) {
        return bus.volts() - sinkAmps[sink] * p.sinkLeadOhms();
    }

    /** Amplitude of the 100 Hz part of the current through the shunt. */
    double rippleAmps(Sink[] sinks) {
        double ripple = 0;
        for (int j = 0; j < sinks.length; j++) {
            ripple += joined ? sinks[j].rippleShare() * sinkAmps[j] : 0;
        }
        return ripple;
    }

    double meanAmps() {
        return meanAmps;
    }

    double meanBusVolts() {
        return meanBusVolts;
    }
}
