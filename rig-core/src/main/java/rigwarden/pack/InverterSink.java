package rigwarden.pack;

/** An inverter at work: switched off, running, or resting after it quit. */
final class InverterSink implements Sink {
    /** How long the restart voltage must stand before it starts again. */
    private static final long REST_NANOS = 3_000_000_000L;
    private static final double NANOS = 1e9;
    private static final double SHORTFALL = 1e-9;

    private enum Stage { OFF, RUNNING, RESTING }

    private final Load.Inverter p;
    private final double leadOhms;
    private final Ramp watts;
    private boolean remote;
    private Stage stage = Stage.OFF;
    private boolean heating;
    private double factor = 1;
    private long startNanos = Long.MAX_VALUE;
    private long thermostatNanos = Long.MAX_VALUE;

    InverterSink(Load.Inverter p, double leadOhms) {
        this.p = p;
        this.leadOhms = leadOhms;
        watts = new Ramp(p.watts() / p.efficiency() / p.startSeconds());
    }

    private InverterSink(InverterSink other) {
        p = other.p;
        leadOhms = other.leadOhms;
        watts = new Ramp(other.watts);
        remote = other.remote;
        stage = other.stage;
        heating = other.heating;
        factor = other.factor;
        startNanos = other.startNanos;
        thermostatNanos = other.thermostatNanos;
    }

    @Override
    public Sink copy() {
        return new InverterSink(this);
    }

    @Override
    public void aim(boolean nowRemote, long nanos) {
        remote = nowRemote;
        if (!remote) {
            leave(Stage.OFF);
        } else if (startNanos <= nanos) {
            stage = Stage.RUNNING;
            startNanos = Long.MAX_VALUE;
            heating = true;
            thermostatNanos = nextTurn(nanos);
        } else if (thermostatNanos <= nanos) {
            heating = !heating;
            thermostatNanos = nextTurn(nanos);
        }
        watts.aim(stage == Stage.RUNNING ? factor * p.watts() / p.efficiency() : 0, nanos);
    }

    @Override
    public void stray(double times) {
        factor *= times;
    }

    private void leave(Stage next) {
        stage = next;
        startNanos = Long.MAX_VALUE;
        thermostatNanos = Long.MAX_VALUE;
    }

    private long nextTurn(long nanos) {
        boolean turns = p.thermostatOnSeconds() > 0 && p.thermostatOffSeconds() > 0;
        double seconds = heating ? p.thermostatOnSeconds() : p.thermostatOffSeconds();
        return turns ? nanos + Math.round(seconds * NANOS) : Long.MAX_VALUE;
    }

    @Override
    public boolean saw(double volts, double amps, long nanos) {
        return switch (stage) {
            case OFF -> remote && start(volts >= p.quitVolts(), nanos, 0);
            case RESTING -> start(volts >= p.restartVolts(), nanos, REST_NANOS);
            case RUNNING -> {
                boolean quits = volts < p.quitVolts() || volts * amps < wantedWatts() * (1 - SHORTFALL);
                if (quits) {
                    leave(Stage.RESTING);
                }
                yield quits;
            }
        };
    }

    private boolean start(boolean ready, long nanos, long afterNanos) {
        if (ready == (startNanos != Long.MAX_VALUE)) {
            return false;
        }
        startNanos = ready ? nanos + afterNanos : Long.MAX_VALUE;
        return true;
    }

    private double wantedWatts() {
        return stage == Stage.RUNNING && heating ? watts.now() : 0;
    }

    @Override
    public Ramp ramp() {
        return watts;
    }

    @Override
    public long dueNanos() {
        return Math.min(watts.dueNanos(), Math.min(startNanos, thermostatNanos));
    }

    @Override
    public boolean on() {
        return stage == Stage.RUNNING;
    }

    @Override
    public double siemens() {
        return 0;
    }

    /**
     * I = (V − √(V² − 4·R·P)) / 2R, written so that R may be 0. If so much power is not there it takes the most that
     * there is, which is short of what it wants: it will quit.
     */
    @Override
    public double amps(double openVolts, double ohms) {
        double wanted = wantedWatts();
        if (wanted == 0 || openVolts <= 0) {
            return 0;
        }
        double root = Math.max(0, openVolts * openVolts - 4 * (ohms + leadOhms) * wanted);
        return Math.min(2 * wanted / (openVolts + Math.sqrt(root)), openVolts / (2 * (ohms + leadOhms)));
    }

    @Override
    public double amps(double busVolts) {
        return amps(busVolts, 0);
    }

    @Override
    public double leaveVolts() {
        double wanted = wantedWatts();
        return wanted == 0 ? 0 : p.quitVolts() + leadOhms * wanted / p.quitVolts();
    }

    @Override
    public double rippleShare() {
        return p.rippleShare();
    }

    @Override
    public boolean relayInLead() {
        return false;
    }

    @Override
    public void order(boolean on, double amps) {
        throw new IllegalArgumentException("an inverter takes no orders");
    }

    @Override
    public void deafen() {
        throw new IllegalArgumentException("an inverter has never heard an order");
    }
}
