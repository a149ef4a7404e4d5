package rigwarden.pack;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * Open-circuit voltage of an LFP cell at 25 °C and its slope over temperature, by straight lines between the nodes of a
 * published table (source and licence in the resource beside this class); outside 0…1 the lines are an assumption.
 */
public final class OpenCircuit {
    private static final double BUCKETS_PER_UNIT = 2000;

    /** The shipped table. */
    public static final OpenCircuit LFP = read();

    private final double[] charge;
    private final double[] volts;
    private final double[] entropy;
    private final int[] bucket;

    private OpenCircuit(List<double[]> nodes) {
        charge = nodes.stream().mapToDouble(n -> n[0]).toArray();
        volts = nodes.stream().mapToDouble(n -> n[1]).toArray();
        entropy = nodes.stream().mapToDouble(n -> n[2]).toArray();
        bucket = new int[(int) ((charge[charge.length - 1] - charge[0]) * BUCKETS_PER_UNIT) + 1];
        for (int i = 0; i < bucket.length; i++) {
            double s = charge[0] + i / BUCKETS_PER_UNIT;
            while (bucket[i] < charge.length - 2 && charge[bucket[i] + 1] <= s) {
                bucket[i]++;
            }
            if (i + 1 < bucket.length) {
                bucket[i + 1] = bucket[i];
            }
        }
    }

    private static OpenCircuit read() {
        try (InputStream stream = OpenCircuit.class.getResourceAsStream("open-circuit-lfp.csv");
                BufferedReader lines = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            List<double[]> nodes = new ArrayList<>();
            lines.lines().filter(l -> !l.startsWith("#") && !l.startsWith("soc")).forEach(line -> {
                String[] cells = line.split(",", -1);
                nodes.add(new double[] {
                    Double.parseDouble(cells[0]), Double.parseDouble(cells[1]), Double.parseDouble(cells[2])
                });
            });
            return new OpenCircuit(nodes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private int segment(double s) {
        int i = (int) ((s - charge[0]) * BUCKETS_PER_UNIT);
        int at = bucket[Math.clamp(i, 0, bucket.length - 1)];
        while (at < charge.length - 2 && s >= charge[at + 1]) {
            at++;
        }
        return at;
    }

    /** Volts at a state of charge, 25 °C. */
    public double volts(double s) {
        return between(volts, s, segment(s));
    }

    /** Change of the open-circuit voltage with temperature, V/K. */
    public double voltsPerKelvin(double s) {
        return between(entropy, s, segment(s));
    }

    private double between(double[] values, double s, int at) {
        double part = (s - charge[at]) / (charge[at + 1] - charge[at]);
        return values[at] + part * (values[at + 1] - values[at]);
    }
}
