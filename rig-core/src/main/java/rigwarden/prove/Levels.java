package rigwarden.prove;

import java.util.List;
import rigwarden.rig.Channel;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** The last second of some channels, and how far each has moved from a level that was held. */
final class Levels {
    private static final double LEAST_NOISE_K = 0.03;

    private final List<Channel> channels;
    private final double[][] ring;
    private final double[] held;
    private final double[] now;
    private double noise = LEAST_NOISE_K;
    private long lastNanos;
    private double scanSeconds = 0.1;
    private int taken;

    Levels(List<Channel> channels, int scans) {
        this.channels = channels;
        ring = new double[scans][channels.size()];
        held = new double[channels.size()];
        now = new double[channels.size()];
    }

    /** A reading that failed leaves its channel where it was. */
    void take(Scan scan) {
        double[] row = ring[taken % ring.length];
        for (int i = 0; i < now.length; i++) {
            if (scan.readings().get(channels.get(i).index()) instanceof Reading.Valid valid) {
                now[i] = valid.value();
            }
            row[i] = now[i];
        }
        scanSeconds = taken == 0 ? scanSeconds : (scan.nanos() - lastNanos) * 1e-9;
        lastNanos = scan.nanos();
        taken++;
    }

    boolean full() {
        return taken >= ring.length;
    }

    double scanSeconds() {
        return scanSeconds;
    }

    /**
     * Takes the mean of the last second as each channel's level, or what it shows now where that is more: one that was just warmed is no lower than
     * this. The first time also their noise.
     */
    void hold() {
        double worst = 0;
        for (int i = 0; i < held.length; i++) {
            double sum = 0;
            for (double[] row : ring) {
                sum += row[i];
            }
            double mean = sum / ring.length;
            held[i] = Math.max(mean, now[i]);
            double squares = 0;
            for (double[] row : ring) {
                squares += (row[i] - mean) * (row[i] - mean);
            }
            worst = Math.max(worst, Math.sqrt(squares / ring.length));
        }
        noise = taken == ring.length ? Math.max(LEAST_NOISE_K, worst) : noise;
    }

    /** Standard deviation of the noisiest channel before anything was touched, K. */
    double noise() {
        return noise;
    }

    /** How far a channel is above its held level, K. */
    double rise(int channel) {
        return now[channel] - held[channel];
    }
}
