package rigwarden.circuit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** The heartbeat line of a controller: it begins low and changes at each of these times, s. */
record Beats(List<Double> edges) {
    static final double PERIOD = 0.1;
    private static final double SLOPE = 1e-5;
    private static final double HIGH = 3.3;

    /** A line that never moves. */
    static Beats none() {
        return new Beats(List.of());
    }

    /** These edges, then so many more at this interval, the first after another gap. */
    Beats then(double gap, int count, double interval) {
        List<Double> all = new ArrayList<>(edges);
        double time = (all.isEmpty() ? 0 : all.getLast()) + gap;
        for (int edge = 0; edge < count; edge++) {
            all.add(time + edge * interval);
        }
        return new Beats(all);
    }

    double last() {
        return edges.getLast();
    }

    /** As a source of ngspice. */
    String source(String node) {
        StringBuilder points = new StringBuilder("V" + node + " " + node + " 0 pwl(0 0");
        for (int edge = 0; edge < edges.size(); edge++) {
            double before = edge % 2 == 0 ? 0 : HIGH;
            points.append(String.format(Locale.ROOT, "%n+ %.6f %.1f %.6f %.1f", edges.get(edge), before, edges.get(edge) + SLOPE,
                    HIGH - before));
        }
        return points.append(")").toString();
    }
}
