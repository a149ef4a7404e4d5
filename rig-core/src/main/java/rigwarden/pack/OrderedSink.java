package rigwarden.pack;

/** An electronic sink, whose current follows its setting at the slew rate, or a heater that is only switched. */
final class OrderedSink implements Sink {
    private final Load load;
    private final double leadOhms;
    private final Setting setting;
    private final Ramp amps;
    private boolean relay;
    private double factor = 1;

    OrderedSink(Load load, double slewAmpsPerSecond, double leadOhms) {
        this.load = load;
        this.leadOhms = leadOhms;
        setting = new Setting();
        amps = new Ramp(slewAmpsPerSecond);
    }

    private OrderedSink(OrderedSink other) {
        load = other.load;
        leadOhms = other.leadOhms;
        setting = new Setting(other.setting);
        amps = new Ramp(other.amps);
        relay = other.relay;
        factor = other.factor;
    }

    @Override
    public Sink copy() {
        return new OrderedSink(this);
    }

    @Override
    public void order(boolean on, double wantedAmps) {
        setting.order(on, 0, wantedAmps);
    }

    @Override
    public void deafen() {
        setting.deafen();
    }

    @Override
    public void stray(double times) {
        factor *= times;
    }

    @Override
    public void aim(boolean nowRelay, long nanos) {
        relay = nowRelay;
        amps.aim(setting.on() && relay ? setting.amps() * factor : 0, nanos);
    }

    @Override
    public boolean saw(double volts, double nowAmps, long nanos) {
        return false;
    }

    @Override
    public Ramp ramp() {
        return amps;
    }

    @Override
    public long dueNanos() {
        return amps.dueNanos();
    }

    @Override
    public boolean on() {
        return setting.on();
    }

    private boolean takes() {
        return relay && setting.on();
    }

    @Override
    public double siemens() {
        return load instanceof Load.Resistor(double ohms) && takes() ? 1 / (ohms + leadOhms) : 0;
    }

    @Override
    public double amps(double openVolts, double ohms) {
        double wanted = amps(openVolts);
        if (wanted > 0 && load instanceof Load.Electronic(double floorVolts)
                && openVolts - wanted * (ohms + leadOhms) < floorVolts) {
            return Math.max(0, (openVolts - floorVolts) / (ohms + leadOhms));
        }
        return wanted;
    }

    @Override
    public double amps(double busVolts) {
        return load instanceof Load.Electronic && takes() ? amps.now() : 0;
    }

    @Override
    public double leaveVolts() {
        return 0;
    }

    @Override
    public double rippleShare() {
        return 0;
    }

    @Override
    public boolean relayInLead() {
        return true;
    }
}
