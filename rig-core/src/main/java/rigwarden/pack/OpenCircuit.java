package rigwarden.pack;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * Open-circuit voltage of a cell at 25 °C and its change with temperature, straight lines between nodes.
 *
 * <p>{@link #lfp()} is the published table in {@code open-circuit-lfp.csv}. Its ends are prolonged by straight lines:
 * 2.0 V at −0.0073, 0 V at −0.04, 3.65 V at 1.0066, 4.2 V at 1.043 and on at the last slope. That is an assumption;
 * it only has to stop a charge or discharge at a plausible place.
 */
public final class OpenCircuit {
    private static final OpenCircuit LFP = new OpenCircuit(
            prolonged(table("open-circuit-lfp.csv")), table("entropy-lfp.csv"));
    private static final int BINS = 2048;

    private final double[] charges;
    private final double[] volts;
    private final double[] slopes;
    private final double[] entropies;
    private final int[] firstOfBin = new int[BINS];
    private final double binsPerUnit;

    private OpenCircuit(double[][] curve, double[][] entropy) {
        int segments = curve.length - 1;
        charges = column(curve, 0);
        volts = column(curve, 1);
        entropies = column(entropy, 1);
        slopes = new double[segments];
        for (int i = 0; i < segments; i++) {
            slopes[i] = (volts[i + 1] - volts[i]) / (charges[i + 1] - charges[i]);
        }
        binsPerUnit = BINS / (charges[segments] - charges[0]);
        int segment = 0;
        for (int bin = 0; bin < BINS; bin++) {
            while (segment < segments - 1 && charges[0] + bin / binsPerUnit >= charges[segment + 1]) {
                segment++;
            }
            firstOfBin[bin] = segment;
        }
    }

    /** The published LFP curve. */
    public static OpenCircuit lfp() {
        return LFP;
    }

    /** A curve that is the same voltage at every charge and temperature, for checks against closed forms. */
    public static OpenCircuit flat(double volts) {
        return new OpenCircuit(new double[][] {{0, volts}, {1, volts}}, new double[][] {{0, 0}, {1, 0}});
    }

    /** Open-circuit volts at 25 °C for a state of charge, 0 empty to 1 full, a little beyond at both ends. */
    public double volts(double charge) {
        int bin = (int) ((charge - charges[0]) * binsPerUnit);
        int i = firstOfBin[Math.clamp(bin, 0, BINS - 1)];
        while (i < slopes.length - 1 && charge >= charges[i + 1]) {
            i++;
        }
        return volts[i] + slopes[i] * (charge - charges[i]);
    }

    /** Volts per kelvin at a state of charge; beyond the ends as at the end. The nodes are evenly spaced. */
    public double voltsPerKelvin(double charge) {
        double place = Math.clamp(charge, 0.0, 1.0) * (entropies.length - 1);
        int i = Math.min((int) place, entropies.length - 2);
        return entropies[i] + (place - i) * (entropies[i + 1] - entropies[i]);
    }

    private static double[][] prolonged(double[][] inner) {
        double[][] all = new double[inner.length + 4][];
        all[0] = new double[] {-0.04, 0.0};
        all[1] = new double[] {-0.0073, 2.0};
        System.arraycopy(inner, 0, all, 2, inner.length);
        all[inner.length + 2] = new double[] {1.0066, 3.65};
        all[inner.length + 3] = new double[] {1.043, 4.2};
        return all;
    }

    private static double[] column(double[][] rows, int column) {
        double[] values = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            values[i] = rows[i][column];
        }
        return values;
    }

    /** Two columns of numbers below one line of names; lines that start with # are words. */
    private static double[][] table(String resource) {
        try (InputStream in = OpenCircuit.class.getResourceAsStream(resource)) {
            List<String> lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines()
                    .filter(line -> !line.startsWith("#")).skip(1).toList();
            return lines.stream().map(OpenCircuit::row).toArray(double[][]::new);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static double[] row(String line) {
        int comma = line.indexOf(',');
        return new double[] {
            Double.parseDouble(line.substring(0, comma)), Double.parseDouble(line.substring(comma + 1))
        };
    }
}
