package rigwarden.findings.trace;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Channel;

/** Keeps the course of the temperatures and of the current over a step, bounded. */
public final class WarmthWatch {
    private static final int MOST = 240;
    private static final long FIRST_SPAN_NANOS = 10_000_000_000L;

    private final List<Channel> places;
    private final double[] first;
    private final double[] row;
    private final Means means;

    public WarmthWatch(List<Channel> places) {
        this.places = places;
        first = new double[places.size()];
        row = new double[places.size() + 2];
        means = new Means(row.length, MOST, FIRST_SPAN_NANOS);
    }

    public void begin(Numbers now) {
        System.arraycopy(now.celsius, 0, first, 0, first.length);
        means.begin(now.nanos);
    }

    public void take(Numbers now) {
        System.arraycopy(now.celsius, 0, row, 0, first.length);
        row[first.length] = now.amps;
        row[first.length + 1] = now.amps * now.amps;
        means.take(now.nanos, row);
    }

    public List<Warmth> end() {
        double[] hours = means.hours();
        double[] amps = means.column(first.length);
        double[] squares = means.column(first.length + 1);
        List<Warmth> all = new ArrayList<>();
        for (int i = 0; i < first.length; i++) {
            all.add(new Warmth(places.get(i), first[i], hours, means.column(i), amps, squares));
        }
        return all;
    }
}
