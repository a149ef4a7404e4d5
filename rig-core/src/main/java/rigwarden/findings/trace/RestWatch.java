package rigwarden.findings.trace;

import java.util.stream.IntStream;

/** Keeps a rest's hourly means. */
public final class RestWatch {
    private static final long SPAN_NANOS = 3_600_000_000_000L;

    private final int cells;
    private final Means means;

    public RestWatch(int cells) {
        this.cells = cells;
        means = new Means(cells, RestTrail.MOST, SPAN_NANOS);
    }

    public void begin(Numbers now) {
        means.begin(now.nanos);
    }

    public void take(Numbers now) {
        means.take(now.nanos, now.volts);
    }

    public RestTrail end() {
        return new RestTrail(means.hours(), IntStream.range(0, cells).mapToObj(means::column).toArray(double[][]::new));
    }
}
