package rigwarden.pack;

/** A limit that follows its aim at a steady rate, and falls to 0 at once. */
final class Ramp {
    private static final double NANOS = 1e9;

    private final double perSecond;
    private double aim;
    private double now;
    private long dueNanos = Long.MAX_VALUE;

    /** A ramp at 0; with an infinite rate it arrives a nanosecond later. */
    Ramp(double perSecond) {
        this.perSecond = perSecond;
    }

    Ramp(Ramp other) {
        perSecond = other.perSecond;
        aim = other.aim;
        now = other.now;
        dueNanos = other.dueNanos;
    }

    /** Turns towards an aim; arrives if its time has come. */
    void aim(double next, long nanos) {
        if (dueNanos <= nanos || next == 0) {
            now = next == 0 ? 0 : aim;
            dueNanos = Long.MAX_VALUE;
        }
        if (next != aim) {
            aim = next;
            double way = Math.abs(next - now);
            dueNanos = way == 0 ? Long.MAX_VALUE : nanos + 1 + (long) (way / perSecond * NANOS);
        }
    }

    /** Moves for a while, never past the aim. */
    void move(double seconds) {
        double way = aim - now;
        now += Math.copySign(Math.min(Math.abs(way), perSecond * seconds), way);
    }

    boolean moving() {
        return dueNanos != Long.MAX_VALUE;
    }

    double now() {
        return now;
    }

    /** When it arrives, or the end of time. */
    long dueNanos() {
        return dueNanos;
    }
}
