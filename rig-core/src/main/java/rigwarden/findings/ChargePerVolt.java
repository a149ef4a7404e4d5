package rigwarden.findings;

import java.util.Arrays;

/**
 * Incremental capacity dQ/dV of a slow charge or discharge: charge gathered in bins of voltage, one row at a time.
 * A voltage that only moves within one bin gives its charge to that bin, so that nothing is divided by a difference of zero.
 */
public final class ChargePerVolt {
    /** Faster than this, resistance and not the cell makes the curve, 1/h. */
    public static final double MOST_C = 0.1;
    /** Coarser readings than this make peaks of their own, V. */
    public static final double COARSEST_VOLTS = 1e-4;

    private final double fromVolts;
    private final double binVolts;
    private final double[] ampHours;
    private double lastVolts = Double.NaN;
    private double lastAmpHours;

    /**
     * Bins from a voltage on.
     *
     * @param fromVolts lower edge of the first
     * @param toVolts upper edge of the last
     * @param binVolts width of each, ten steps of the readings or more
     */
    public ChargePerVolt(double fromVolts, double toVolts, double binVolts) {
        this.fromVolts = fromVolts;
        this.binVolts = binVolts;
        ampHours = new double[(int) Math.ceil((toVolts - fromVolts) / binVolts - 1e-9)];
    }

    /** The next row: voltage, and charge moved until then, Ah. */
    public void take(double volts, double movedAmpHours) {
        if (!Double.isNaN(lastVolts)) {
            spread(Math.min(volts, lastVolts), Math.max(volts, lastVolts), movedAmpHours - lastAmpHours);
        }
        lastVolts = volts;
        lastAmpHours = movedAmpHours;
    }

    /** Gives a row's charge to the bins that its voltages span, each its share. */
    private void spread(double low, double high, double charge) {
        double first = (low - fromVolts) / binVolts;
        double last = (high - fromVolts) / binVolts;
        if (last - first < 1e-12) {
            add((int) Math.floor(first), charge);
            return;
        }
        for (int bin = (int) Math.floor(first); bin <= (int) Math.floor(last); bin++) {
            double share = (Math.min(bin + 1, last) - Math.max(bin, first)) / (last - first);
            add(bin, share * charge);
        }
    }

    private void add(int bin, double charge) {
        if (bin >= 0 && bin < ampHours.length) {
            ampHours[bin] += charge;
        }
    }

    /** Middle of a bin, V. */
    public double volts(int bin) {
        return fromVolts + (bin + 0.5) * binVolts;
    }

    /** dQ/dV by bin, Ah/V. */
    public double[] perVolt() {
        return Arrays.stream(ampHours).map(q -> q / binVolts).toArray();
    }

    /** Voltage at the top of the highest bin, V. */
    public double peakVolts() {
        int best = 0;
        for (int i = 1; i < ampHours.length; i++) {
            best = Math.abs(ampHours[i]) > Math.abs(ampHours[best]) ? i : best;
        }
        return volts(best);
    }

    /** Why such a measurement gives none; empty when it does. */
    static String refusal(double rateC, double stepVolts) {
        if (stepVolts > COARSEST_VOLTS) {
            return Words.say("a cell is read in steps of %.3f mV, coarser than the 0.1 mV that it needs", 1000 * stepVolts);
        }
        return rateC > MOST_C ? Words.say("%.2f C is faster than the 0.1 C at which the cell makes the curve", rateC) : "";
    }
}
