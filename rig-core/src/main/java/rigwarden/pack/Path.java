package rigwarden.pack;

/**
 * Currents and voltages between the pack and the instruments at one instant, and the bus while nothing stiff holds it.
 *
 * <p>With K1 closed the bus follows the pack at once and its capacitance counts only in the spark at the closing.
 * With K1 open the bus is a capacitor between bleed, pre-charge resistor, source and sink, solved by its exponential.
 */
final class Path {
    private final PathParameters p;
    private double busVolts;
    private double amps;
    private double sourceAmps;
    private double sinkAmps;
    private boolean joined;
    private boolean held;
    private double aimVolts;
    private double tauSeconds;
    private double prechargeSiemens;
    private double meanAmps;
    private double meanBusVolts;

    Path(PathParameters p) {
        this.p = p;
    }

    Path(Path other) {
        p = other.p;
        busVolts = other.busVolts;
        amps = other.amps;
        sourceAmps = other.sourceAmps;
        sinkAmps = other.sinkAmps;
        joined = other.joined;
        held = other.held;
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
     * @return coulombs that the spark of a closing K1 took out of the pack; 0 otherwise
     */
    double solve(Contacts contacts, double emfVolts, double senseOhms, double outerOhms, Output source, Output sink) {
        double siemens = 1 / p.bleedOhms();
        double load = 0;
        if (contacts.sink() && sink.on()) {
            switch (p.load()) {
                case Load.Electronic _ -> load = sink.limitAmps();
                case Load.Resistor(double ohms) -> siemens += 1 / (ohms + p.sinkLeadOhms());
            }
        }
        double sinkSiemens = siemens - 1 / p.bleedOhms();
        if (contacts.contactor()) {
            double before = busVolts;
            solveJoined(contacts, emfVolts, senseOhms, senseOhms + outerOhms, siemens, load, source);
            sinkAmps += sinkSiemens * busVolts;
            double spark = joined ? 0 : p.busFarads() * (busVolts - before);
            joined = true;
            return spark;
        }
        joined = false;
        prechargeSiemens = contacts.precharge() ? 1 / (p.prechargeOhms() + senseOhms + outerOhms) : 0;
        solveParted(contacts.source() && source.on(), emfVolts, siemens, load, source);
        sinkAmps += sinkSiemens * busVolts;
        return 0;
    }

    private void solveJoined(Contacts contacts, double emfVolts, double senseOhms, double ohms, double siemens,
            double wantedLoad, Output source) {
        double load = wantedLoad;
        double share = 1 + siemens * ohms;
        double own = siemens * emfVolts;
        double limit = contacts.source() ? source.limitAmps() : 0;
        double wanted = (source.volts() - emfVolts) / senseOhms * share + load + own;
        sourceAmps = Math.clamp(wanted, 0, limit);
        amps = (sourceAmps - load - own) / share;
        if (load > 0 && p.load() instanceof Load.Electronic(double floorVolts)
                && emfVolts + amps * ohms - load * p.sinkLeadOhms() < floorVolts) {
            double room = emfVolts + (sourceAmps - own) * ohms / share - floorVolts;
            load = Math.max(0, room / (ohms / share + p.sinkLeadOhms()));
            amps = (sourceAmps - load - own) / share;
        }
        sinkAmps = load;
        busVolts = emfVolts + amps * ohms;
    }

    private void solveParted(boolean driven, double emfVolts, double siemens, double load, Output source) {
        double total = siemens + prechargeSiemens;
        double fromPack = prechargeSiemens * emfVolts;
        double needed = load + total * source.volts() - fromPack;
        boolean below = driven && busVolts <= source.volts() && needed >= 0;
        held = below && needed <= source.settingAmps();
        if (held) {
            busVolts = source.volts();
            sourceAmps = needed;
        } else {
            sourceAmps = below ? source.settingAmps() : 0;
        }
        sinkAmps = busVolts > 0 ? load : Math.min(load, fromPack + sourceAmps);
        tauSeconds = p.busFarads() / total;
        aimVolts = (sourceAmps + fromPack - load) / total;
        amps = prechargeSiemens * (busVolts - emfVolts);
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

    double sourceAmps() {
        return sourceAmps;
    }

    double sinkAmps() {
        return sinkAmps;
    }

    double meanAmps() {
        return meanAmps;
    }

    double meanBusVolts() {
        return meanBusVolts;
    }
}
