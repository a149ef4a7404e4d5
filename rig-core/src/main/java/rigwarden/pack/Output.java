package rigwarden.pack;

/** Settings of a source or sink, and the current limit that follows them at the slew rate. */
final class Output {
    private static final double NANOS = 1e9;

    private final double slewAmpsPerSecond;
    private boolean on;
    private double volts;
    private double amps;
    private boolean deaf;
    private double addedVolts;
    private double factor = 1;
    private double aimAmps;
    private double limitAmps;
    private long dueNanos = Long.MAX_VALUE;

    Output(double slewAmpsPerSecond) {
        this.slewAmpsPerSecond = slewAmpsPerSecond;
    }

    Output(Output other) {
        slewAmpsPerSecond = other.slewAmpsPerSecond;
        on = other.on;
        volts = other.volts;
        amps = other.amps;
        deaf = other.deaf;
        addedVolts = other.addedVolts;
        factor = other.factor;
        aimAmps = other.aimAmps;
        limitAmps = other.limitAmps;
        dueNanos = other.dueNanos;
    }

    void order(boolean nowOn, double nowVolts, double nowAmps) {
        if (!(nowVolts >= 0 && nowAmps >= 0)) {
            throw new IllegalArgumentException("not a setting: " + nowVolts + " V, " + nowAmps + " A");
        }
        if (!deaf) {
            on = nowOn;
            volts = nowVolts;
            amps = nowAmps;
        }
    }

    void deafen() {
        deaf = true;
    }

    void runAway(double moreVolts) {
        addedVolts += moreVolts;
        factor = 2;
    }

    /** Turns the limit towards the setting while current can flow; without a path it is nothing at once. */
    void aim(boolean joined, long nanos) {
        double aim = on && joined ? amps * factor : 0;
        if (dueNanos <= nanos || aim == 0) {
            limitAmps = aim == 0 ? 0 : aimAmps;
            dueNanos = Long.MAX_VALUE;
        }
        if (aim != aimAmps) {
            aimAmps = aim;
            double way = Math.abs(aim - limitAmps);
            dueNanos = way == 0 ? Long.MAX_VALUE : nanos + 1 + (long) (way / slewAmpsPerSecond * NANOS);
        }
    }

    /** Lets the limit move for a while, never past its aim. */
    void move(double seconds) {
        double way = aimAmps - limitAmps;
        limitAmps += Math.copySign(Math.min(Math.abs(way), slewAmpsPerSecond * seconds), way);
    }

    boolean moving() {
        return dueNanos != Long.MAX_VALUE;
    }

    boolean on() {
        return on;
    }

    /** What it regulates to. */
    double volts() {
        return volts + addedVolts;
    }

    /** What it may deliver in the end. */
    double settingAmps() {
        return amps * factor;
    }

    /** What it may deliver now. */
    double limitAmps() {
        return limitAmps;
    }

    /** When the limit arrives, or the end of time. */
    long dueNanos() {
        return dueNanos;
    }
}
