package rigwarden.pack;

/** A programmable source: settings, and a limit that follows them at the slew rate. */
final class OrderedSource implements Source {
    private final Setting setting;
    private final Ramp limitAmps;
    private boolean relay;
    private double addedVolts;
    private double factor = 1;

    OrderedSource(double slewAmpsPerSecond) {
        setting = new Setting();
        limitAmps = new Ramp(slewAmpsPerSecond);
    }

    private OrderedSource(OrderedSource other) {
        setting = new Setting(other.setting);
        limitAmps = new Ramp(other.limitAmps);
        relay = other.relay;
        addedVolts = other.addedVolts;
        factor = other.factor;
    }

    @Override
    public Source copy() {
        return new OrderedSource(this);
    }

    @Override
    public void order(boolean on, double volts, double amps) {
        setting.order(on, volts, amps);
    }

    @Override
    public void deafen() {
        setting.deafen();
    }

    @Override
    public void stray(double moreVolts, double timesAmps) {
        addedVolts += moreVolts;
        factor = Math.max(factor, timesAmps);
    }

    /** Turns the limit towards the setting while current can flow; without a path it is nothing at once. */
    @Override
    public void aim(boolean nowRelay, boolean joined, long nanos) {
        relay = nowRelay;
        limitAmps.aim(setting.on() && relay && joined ? settingAmps() : 0, nanos);
    }

    @Override
    public boolean saw(double amps, long nanos) {
        return false;
    }

    @Override
    public Ramp limitAmps() {
        return limitAmps;
    }

    @Override
    public long dueNanos() {
        return limitAmps.dueNanos();
    }

    @Override
    public boolean on() {
        return setting.on();
    }

    @Override
    public boolean feeds() {
        return relay && setting.on();
    }

    @Override
    public double volts() {
        return setting.volts() + addedVolts;
    }

    @Override
    public double settingAmps() {
        return setting.amps() * factor;
    }

    /** Its sense leads sit on the outer studs. */
    @Override
    public double wantedAmps(Knot knot) {
        return (volts() - knot.emfVolts()) / knot.senseOhms() * knot.share() + knot.loadAmps() + knot.ownAmps()
                - knot.othersAmps();
    }

    @Override
    public boolean relayInLead() {
        return true;
    }
}
