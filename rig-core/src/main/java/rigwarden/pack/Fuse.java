package rigwarden.pack;

/**
 * A fuse that melts. Ten times its rating blows it in 10 ms and twice its rating in about a minute (assumption, of the size that data
 * sheets of such fuses state); up to 1.6 times it carries for ever.
 */
final class Fuse {
    private static final double NANOS = 1e9;
    private static final double CARRIES = 1.6;
    private static final double FAST = 10;
    private static final double FAST_SECONDS = 0.01;
    private static final double SLOPE = 5.5;
    /** Beyond that no heat leaves it while it melts. */
    private static final double ADIABATIC_SLOPE = 2;

    private final double ratedAmps;
    private double molten;

    Fuse(double ratedAmps) {
        this.ratedAmps = ratedAmps;
    }

    Fuse(Fuse other) {
        ratedAmps = other.ratedAmps;
        molten = other.molten;
    }

    private double seconds(double amps) {
        double times = ratedAmps == 0 ? 0 : Math.abs(amps) / ratedAmps;
        return times <= CARRIES ? Double.POSITIVE_INFINITY
                : FAST_SECONDS * Math.pow(FAST / times, times < FAST ? SLOPE : ADIABATIC_SLOPE);
    }

    /** Carries a current for a time; one that it can carry for ever lets it cool at once. */
    void carry(double amps, double seconds) {
        double whole = seconds(amps);
        molten = blown() ? molten : whole == Double.POSITIVE_INFINITY ? 0 : molten + seconds / whole;
    }

    boolean blown() {
        return molten >= 1 - 1e-9;
    }

    /** When it will blow if this current goes on, or the end of time. */
    long dueNanos(double amps, long nanos) {
        double left = blown() ? Double.POSITIVE_INFINITY : seconds(amps) * (1 - molten) * NANOS;
        return left < Long.MAX_VALUE / 2.0 ? nanos + 1 + (long) left : Long.MAX_VALUE;
    }
}
