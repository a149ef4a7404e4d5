package rigwarden.pack;

import java.util.Arrays;

/**
 * Currents and voltages between the pack, sources and sinks at one instant, and the bus while nothing stiff holds it.
 *
 * <p>With K1 and the battery's protection closed the bus follows the pack at once and its capacitance counts only in
 * the spark at the closing. A protection that blocks one direction lets the other through, like a diode. Else the bus is a capacitor between bleed, pre-charge resistor, sources and sinks, solved by its exponential.
 */
final class Path {
    private static final double SETTLED_AMPS = 1e-12;
    private static final int PASSES = 200;

    private final PathParameters p;
    private final double busFarads;
    private final double[] sourceAmps;
    private final double[] sinkAmps;
    private final double[] sinkSiemens;
    private final boolean[] asked;
    private double busVolts;
    private double amps;
    private boolean joined;
    private boolean held;
    private double takeOverVolts;
    private double aimVolts;
    private double tauSeconds;
    private double prechargeSiemens;
    private double meanAmps;
    private double meanBusVolts;

    Path(PathParameters p) {
        this.p = p;
        busFarads = p.allFarads();
        sourceAmps = new double[p.supplies().size()];
        asked = new boolean[sourceAmps.length];
        sinkAmps = new double[p.loads().size()];
        sinkSiemens = new double[sinkAmps.length];
    }

    Path(Path other) {
        p = other.p;
        busFarads = other.busFarads;
        sourceAmps = other.sourceAmps.clone();
        sinkAmps = other.sinkAmps.clone();
        sinkSiemens = other.sinkSiemens.clone();
        asked = other.asked.clone();
        busVolts = other.busVolts;
        amps = other.amps;
        joined = other.joined;
        held = other.held;
        takeOverVolts = other.takeOverVolts;
        aimVolts = other.aimVolts;
        tauSeconds = other.tauSeconds;
        prechargeSiemens = other.prechargeSiemens;
        meanAmps = other.meanAmps;
        meanBusVolts = other.meanBusVolts;
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
        Source[] sources = devices.sources();
        Sink[] sinks = devices.sinks();
        double siemens = 1 / p.bleedOhms();
        for (int j = 0; j < sinks.length; j++) {
            double before = siemens;
            siemens += sinks[j].siemens();
            sinkSiemens[j] = siemens - before;
        }
        double before = busVolts;
        boolean open = !contacts.contactor();
        if (!open) {
            solveJoined(emfVolts, senseOhms, senseOhms + outerOhms, siemens, sources, sinks);
            open = !passes(protection, before, emfVolts);
        }
        double spark = 0;
        if (open) {
            busVolts = before;
            joined = false;
            takeOverVolts = contacts.contactor() && protection.chargeBlocked() ? emfVolts : 0;
            boolean through = !contacts.contactor() && contacts.precharge()
                    && !(busVolts < emfVolts ? protection.dischargeBlocked() : protection.chargeBlocked());
            prechargeSiemens = through ? 1 / (p.prechargeOhms() + senseOhms + outerOhms) : 0;
            solveParted(emfVolts, siemens, sources, sinks);
        } else {
            spark = joined ? 0 : spark(protection, busFarads * (busVolts - before));
            joined = true;
        }
        for (int j = 0; j < sinks.length; j++) {
            sinkAmps[j] += sinkSiemens[j] * busVolts;
        }
        return spark;
    }

    /** Whether the protection lets this current through; a bus above the pack cannot draw from it yet. */
    private boolean passes(ProtectionSwitch protection, double before, double emfVolts) {
        boolean charge = !protection.chargeBlocked() || amps <= 0 && (joined || before <= emfVolts);
        return charge && (!protection.dischargeBlocked() || amps >= 0);
    }

    /** What a blocked direction does not let out of the pack, or into it, the source gave or the sink took. */
    private static double spark(ProtectionSwitch protection, double coulombs) {
        double out = protection.dischargeBlocked() ? Math.min(coulombs, 0) : coulombs;
        return protection.chargeBlocked() ? Math.max(out, 0) : out;
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
        busVolts = emfVolts + amps * ohms;
    }

    /** The source with the highest voltage holds the bus if it can; else it gives all it has and the next one helps. */
    private void solveParted(double emfVolts, double siemens, Source[] sources, Sink[] sinks) {
        double total = siemens + prechargeSiemens;
        double fromPack = prechargeSiemens * emfVolts;
        double given = 0;
        held = false;
        Arrays.fill(sourceAmps, 0);
        Arrays.fill(asked, false);
        for (int i = highest(sources); i >= 0 && !held; i = highest(sources)) {
            asked[i] = true;
            double volts = sources[i].volts();
            double needed = draw(sinks, volts) + total * volts - fromPack - given;
            boolean below = busVolts <= volts && needed >= 0;
            held = below && needed <= sources[i].settingAmps();
            if (held) {
                busVolts = volts;
                sourceAmps[i] = needed;
            } else {
                sourceAmps[i] = below ? sources[i].settingAmps() : 0;
            }
            given += sourceAmps[i];
        }
        double load = draw(sinks, busVolts);
        double left = busVolts > 0 ? load : Math.min(load, fromPack + given);
        for (int j = 0; j < sinks.length; j++) {
            sinkAmps[j] = Math.min(sinks[j].amps(busVolts), left);
            left = busVolts > 0 ? load : left - sinkAmps[j];
        }
        tauSeconds = busFarads / total;
        aimVolts = (given + fromPack - load) / total;
        amps = prechargeSiemens * (busVolts - emfVolts);
    }

    private int highest(Source[] sources) {
        int highest = -1;
        for (int i = 0; i < sources.length; i++) {
            if (!asked[i] && sources[i].feeds()
                    && (highest < 0 || sources[i].volts() > sources[highest].volts())) {
                highest = i;
            }
        }
        return highest;
    }

    private static double draw(Sink[] sinks, double volts) {
        double amps = 0;
        for (Sink sink : sinks) {
            amps += sink.amps(volts);
        }
        return amps;
    }

    private static double sum(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value;
        }
        return sum;
    }

    /**
     * Seconds until the bus, left to itself and falling, meets a voltage at which something takes place: a sink quits,
     * or a pack that may only be discharged takes over; infinite if there is none.
     */
    double secondsAlone(Sink[] sinks) {
        if (joined || held || aimVolts >= busVolts) {
            return Double.POSITIVE_INFINITY;
        }
        double next = takeOverVolts < busVolts ? takeOverVolts : 0;
        for (Sink sink : sinks) {
            double leave = sink.leaveVolts();
            next = leave < busVolts ? Math.max(next, leave) : next;
        }
        return next > Math.max(aimVolts, 0) ? tauSeconds * Math.log((busVolts - aimVolts) / (next - aimVolts))
                : Double.POSITIVE_INFINITY;
    }

    /** Lives through a step; afterwards the means can be read. With K1 closed they are the values of its start. */
    void step(double seconds, double emfVolts) {
        if (joined) {
            meanAmps = amps;
            meanBusVolts = busVolts;
            return;
        }
        if (held || busVolts == aimVolts) {
            meanBusVolts = busVolts;
        } else {
            run(seconds);
        }
        meanAmps = prechargeSiemens * (meanBusVolts - emfVolts);
    }

    /** A load that takes more than comes in empties the bus to 0 V and no further. */
    private void run(double seconds) {
        double away = busVolts - aimVolts;
        double alive = seconds;
        if (aimVolts < 0) {
            alive = Math.min(seconds, tauSeconds * Math.log1p(busVolts / -aimVolts));
        }
        double gone = -Math.expm1(-alive / tauSeconds);
        meanBusVolts = (aimVolts * alive + away * gone * tauSeconds) / seconds;
        double end = alive < seconds ? 0 : aimVolts + away * (1 - gone);
        busVolts = end < 1e-9 ? 0 : end;
    }

    double busVolts() {
        return busVolts;
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
        return busVolts - sinkAmps[sink] * p.sinkLeadOhms();
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
