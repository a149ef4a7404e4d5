package rigwarden.pack;

import java.util.Arrays;
import java.util.OptionalLong;

/** What truly happened in a world since its start or since the oracle was reset. Only rehearsal tests may ask it. */
public final class Oracle {
    private static final double CURRENT_AMPS = 1;

    private double highestVolts = Double.NEGATIVE_INFINITY;
    private double lowestVolts = Double.POSITIVE_INFINITY;
    private double hottestCelsius = Double.NEGATIVE_INFINITY;
    private double greatestAmps;
    private Node hottest = Node.ROOM;
    private boolean flowed;
    private long lastAmps;
    private boolean fedBack;
    private long lastFeedback;
    private Watch[] watches = new Watch[0];

    Oracle() {}

    Oracle(Oracle other) {
        highestVolts = other.highestVolts;
        lowestVolts = other.lowestVolts;
        hottestCelsius = other.hottestCelsius;
        greatestAmps = other.greatestAmps;
        hottest = other.hottest;
        flowed = other.flowed;
        lastAmps = other.lastAmps;
        fedBack = other.fedBack;
        lastFeedback = other.lastFeedback;
        watches = Arrays.stream(other.watches).map(Watch::new).toArray(Watch[]::new);
    }

    /** Highest voltage of any cell, at its studs. */
    public double highestCellVolts() {
        return highestVolts;
    }

    /** Lowest voltage of any cell, at its studs. */
    public double lowestCellVolts() {
        return lowestVolts;
    }

    /** Temperature of the hottest node. */
    public double hottestCelsius() {
        return hottestCelsius;
    }

    /** Which node was the hottest. */
    public Node hottestNode() {
        return hottest;
    }

    /** Greatest magnitude of the current, A; the spark of a closing contactor is not in it. */
    public double greatestAmps() {
        return greatestAmps;
    }

    /** Last instant at which more than 1 A flowed either way; empty if never. */
    public OptionalLong lastAmpsNanos() {
        return flowed ? OptionalLong.of(lastAmps) : OptionalLong.empty();
    }

    /** Last instant at which the mirror contact of K1 said closed; empty if never. */
    public OptionalLong lastFeedbackNanos() {
        return fedBack ? OptionalLong.of(lastFeedback) : OptionalLong.empty();
    }

    /**
     * First instant at which a watched threshold was reached, interpolated within the step; empty if not yet.
     *
     * @throws IllegalArgumentException if nobody asked to watch it
     */
    public OptionalLong crossedNanos(Threshold threshold) {
        for (Watch watch : watches) {
            if (watch.threshold.equals(threshold)) {
                return watch.crossed;
            }
        }
        throw new IllegalArgumentException("not watched: " + threshold);
    }

    void watch(Threshold threshold) {
        watches = Arrays.copyOf(watches, watches.length + 1);
        watches[watches.length - 1] = new Watch(threshold);
    }

    void cells(double highest, double lowest) {
        highestVolts = Math.max(highestVolts, highest);
        lowestVolts = Math.min(lowestVolts, lowest);
    }

    boolean hotter(double celsius) {
        return celsius > hottestCelsius;
    }

    void hottest(double celsius, Node node) {
        hottestCelsius = celsius;
        hottest = node;
    }

    void current(double amps, boolean feedback, long nanos) {
        greatestAmps = Math.max(greatestAmps, Math.abs(amps));
        if (Math.abs(amps) > CURRENT_AMPS) {
            flowed = true;
            lastAmps = nanos;
        }
        if (feedback) {
            fedBack = true;
            lastFeedback = nanos;
        }
    }

    void thresholds(long before, long now, double highest, double lowest, double celsius, double amps) {
        for (Watch watch : watches) {
            watch.see(before, now, watch.threshold.beyond(highest, lowest, celsius, amps));
        }
    }

    private static final class Watch {
        private final Threshold threshold;
        private double last = Double.NEGATIVE_INFINITY;
        private OptionalLong crossed = OptionalLong.empty();

        private Watch(Threshold threshold) {
            this.threshold = threshold;
        }

        private Watch(Watch other) {
            threshold = other.threshold;
            last = other.last;
            crossed = other.crossed;
        }

        private void see(long before, long now, double beyond) {
            if (crossed.isEmpty() && beyond >= 0) {
                double back = beyond / (beyond - last);
                crossed = OptionalLong.of(now - Math.round(back * (now - before)));
            }
            last = beyond;
        }
    }
}
