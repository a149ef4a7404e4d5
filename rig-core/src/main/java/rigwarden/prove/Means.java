package rigwarden.prove;

import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** Mean and scatter of every channel over some scans; what failed is left out and counted. */
final class Means {
    private final int[] valid;
    private final double[] first;
    private final double[] sum;
    private final double[] squares;
    private int scans;

    Means(Rig rig) {
        valid = new int[rig.channels().size()];
        first = new double[valid.length];
        sum = new double[valid.length];
        squares = new double[valid.length];
    }

    void take(Scan scan) {
        scans++;
        for (int i = 0; i < valid.length; i++) {
            if (scan.readings().get(i) instanceof Reading.Valid reading) {
                first[i] = valid[i] == 0 ? reading.value() : first[i];
                double from = reading.value() - first[i];
                valid[i]++;
                sum[i] += from;
                squares[i] += from * from;
            }
        }
    }

    int scans() {
        return scans;
    }

    /** Share of the scans in which the channel had a value, 0…1. */
    double share(Channel channel) {
        return scans == 0 ? 0 : (double) valid[channel.index()] / scans;
    }

    boolean seen(Channel channel) {
        return valid[channel.index()] > 0;
    }

    /** In the channel's unit; NaN for one that never had a value. */
    double mean(Channel channel) {
        int i = channel.index();
        return valid[i] == 0 ? Double.NaN : first[i] + sum[i] / valid[i];
    }

    /** Standard deviation of the mean, in the channel's unit, its resolution included: a code that never moves hides its noise. */
    double standard(Channel channel) {
        int i = channel.index();
        int n = valid[i];
        double variance = n < 2 ? 0 : Math.max(0, (squares[i] - sum[i] * sum[i] / n) / (n - 1));
        return Math.sqrt(Math.max(variance, channel.scale() * channel.scale() / 12) / Math.max(1, n));
    }
}
