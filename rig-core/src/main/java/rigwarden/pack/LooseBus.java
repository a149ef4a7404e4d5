package rigwarden.pack;

import java.util.Arrays;

/** The bus while nothing stiff ties it to the pack: a capacitor, solved by its exponential. */
final class LooseBus {
    private final double farads;
    private final boolean[] asked;
    private double volts;
    private boolean held;
    private double aimVolts;
    private double tauSeconds;
    private double meanVolts;

    LooseBus(PathParameters p) {
        farads = p.allFarads();
        asked = new boolean[p.supplies().size()];
    }

    LooseBus(LooseBus other) {
        farads = other.farads;
        asked = other.asked.clone();
        volts = other.volts;
        held = other.held;
        aimVolts = other.aimVolts;
        tauSeconds = other.tauSeconds;
        meanVolts = other.meanVolts;
    }

    double volts() {
        return volts;
    }

    double meanVolts() {
        return meanVolts;
    }

    /** Something stiff sets it; returns the coulombs that go into its capacitance. */
    double set(double next) {
        double coulombs = farads * (next - volts);
        volts = next;
        return coulombs;
    }

    /**
     * The source with the highest voltage holds it if it can; else it gives all it has and the next one helps.
     *
     * @param siemens across the bus
     * @param packSiemens through the pre-charge resistor to the pack, 0 if it is open
     * @param sourceAmps receives what each source delivers
     * @param sinkAmps receives what each sink takes besides its conductance
     */
    void solve(double emfVolts, double siemens, double packSiemens, Devices devices, double[] sourceAmps,
            double[] sinkAmps) {
        Source[] sources = devices.sources();
        Sink[] sinks = devices.sinks();
        double total = siemens + packSiemens;
        double fromPack = packSiemens * emfVolts;
        double given = 0;
        held = false;
        Arrays.fill(sourceAmps, 0);
        Arrays.fill(asked, false);
        for (int i = highest(sources); i >= 0 && !held; i = highest(sources)) {
            asked[i] = true;
            double own = sources[i].volts();
            double needed = draw(sinks, own) + total * own - fromPack - given;
            boolean below = volts <= own && needed >= 0;
            held = below && needed <= sources[i].settingAmps();
            if (held) {
                volts = own;
                sourceAmps[i] = needed;
            } else {
                sourceAmps[i] = below ? sources[i].settingAmps() : 0;
            }
            given += sourceAmps[i];
        }
        double load = draw(sinks, volts);
        double left = volts > 0 ? load : Math.min(load, fromPack + given);
        for (int j = 0; j < sinks.length; j++) {
            sinkAmps[j] = Math.min(sinks[j].amps(volts), left);
            left = volts > 0 ? load : left - sinkAmps[j];
        }
        tauSeconds = farads / total;
        aimVolts = (given + fromPack - load) / total;
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

    /**
     * Seconds until it falls, left to itself, to the next voltage at which something takes place; infinite if it will
     * not.
     *
     * @param takeOverVolts where a pack that may only be discharged begins to hold it; 0 for nowhere
     */
    double secondsAlone(Sink[] sinks, double takeOverVolts) {
        if (held || aimVolts >= volts) {
            return Double.POSITIVE_INFINITY;
        }
        double next = takeOverVolts < volts ? takeOverVolts : 0;
        for (Sink sink : sinks) {
            double leave = sink.leaveVolts();
            next = leave < volts ? Math.max(next, leave) : next;
        }
        return next > Math.max(aimVolts, 0) ? tauSeconds * Math.log((volts - aimVolts) / (next - aimVolts))
                : Double.POSITIVE_INFINITY;
    }

    /** Lives through a step; afterwards its mean can be read. */
    void step(double seconds) {
        if (held || volts == aimVolts) {
            meanVolts = volts;
        } else {
            run(seconds);
        }
    }

    /** A load that takes more than comes in empties it to 0 V and no further. */
    private void run(double seconds) {
        double away = volts - aimVolts;
        double alive = seconds;
        if (aimVolts < 0) {
            alive = Math.min(seconds, tauSeconds * Math.log1p(volts / -aimVolts));
        }
        double gone = -Math.expm1(-alive / tauSeconds);
        meanVolts = (aimVolts * alive + away * gone * tauSeconds) / seconds;
        double end = alive < seconds ? 0 : aimVolts + away * (1 - gone);
        volts = end < 1e-9 ? 0 : end;
    }
}
