package rigwarden.pack;

/** A plain charger at work: no mains, soft start, constant current, own voltage, finished or floating. */
final class MainsCharger implements Source {
    /** How long its current must be below the finish before it believes it. */
    private static final long FINISH_NANOS = 2_000_000_000L;

    private enum Stage { DARK, WORKING, FLOATING, FINISHED }

    private final Supply.Charger p;
    private final double leadOhms;
    private final Ramp limitAmps;
    private Stage stage = Stage.DARK;
    private boolean carried;
    private long finishNanos = Long.MAX_VALUE;
    private double addedVolts;
    private double factor = 1;

    MainsCharger(Supply.Charger p, double leadOhms) {
        this.p = p;
        this.leadOhms = leadOhms;
        limitAmps = new Ramp(p.amps() / p.softSeconds());
    }

    private MainsCharger(MainsCharger other) {
        p = other.p;
        leadOhms = other.leadOhms;
        limitAmps = new Ramp(other.limitAmps);
        stage = other.stage;
        carried = other.carried;
        finishNanos = other.finishNanos;
        addedVolts = other.addedVolts;
        factor = other.factor;
    }

    @Override
    public Source copy() {
        return new MainsCharger(this);
    }

    /** Its relay is its mains; where its current goes is nothing to it. */
    @Override
    public void aim(boolean mains, boolean joined, long nanos) {
        if (!mains) {
            stage = Stage.DARK;
            carried = false;
            finishNanos = Long.MAX_VALUE;
        } else if (stage == Stage.DARK) {
            stage = Stage.WORKING;
        } else if (finishNanos <= nanos) {
            stage = p.floats() ? Stage.FLOATING : Stage.FINISHED;
            finishNanos = Long.MAX_VALUE;
        }
        limitAmps.aim(on() ? settingAmps() : 0, nanos);
    }

    @Override
    public boolean saw(double amps, long nanos) {
        if (stage != Stage.WORKING) {
            return false;
        }
        carried |= amps > p.finishAmps();
        boolean low = carried && amps < p.finishAmps();
        if (low == (finishNanos != Long.MAX_VALUE)) {
            return false;
        }
        finishNanos = low ? nanos + FINISH_NANOS : Long.MAX_VALUE;
        return true;
    }

    @Override
    public Ramp limitAmps() {
        return limitAmps;
    }

    @Override
    public long dueNanos() {
        return Math.min(limitAmps.dueNanos(), finishNanos);
    }

    @Override
    public boolean on() {
        return switch (stage) {
            case WORKING, FLOATING -> true;
            case DARK, FINISHED -> false;
        };
    }

    @Override
    public boolean feeds() {
        return on();
    }

    @Override
    public double volts() {
        return (stage == Stage.FLOATING ? p.floatVolts() : p.volts()) + addedVolts;
    }

    @Override
    public double settingAmps() {
        return p.amps() * factor;
    }

    /** It regulates at its own terminals, a lead away from the bus. */
    @Override
    public double wantedAmps(Knot knot) {
        double stiff = knot.ohms() / knot.share();
        double rest = knot.loadAmps() + knot.ownAmps() - knot.othersAmps();
        return (volts() - knot.emfVolts() + rest * stiff) / (leadOhms + stiff);
    }

    @Override
    public boolean relayInLead() {
        return false;
    }

    @Override
    public void order(boolean on, double volts, double amps) {
        throw new IllegalArgumentException("a plain charger takes no orders");
    }

    @Override
    public void deafen() {
        throw new IllegalArgumentException("a plain charger has never heard an order");
    }

    @Override
    public void stray(double moreVolts, double timesAmps) {
        addedVolts += moreVolts;
        factor = Math.max(factor, timesAmps);
    }
}
