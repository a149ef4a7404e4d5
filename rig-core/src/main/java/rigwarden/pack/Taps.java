package rigwarden.pack;

/** The sense wires: tap 0 at B−, tap k on the positive stud of the k-th cell. */
final class Taps {
    private final boolean[] cut;
    private final double[] offsetVolts;

    Taps(int cells) {
        cut = new boolean[cells + 1];
        offsetVolts = new double[cells + 1];
    }

    Taps(Taps other) {
        cut = other.cut.clone();
        offsetVolts = other.offsetVolts.clone();
    }

    void cut(int tap) {
        cut[known(tap)] = true;
    }

    void offset(int tap, double volts) {
        offsetVolts[known(tap)] += volts;
    }

    boolean isCut(int tap) {
        return cut[known(tap)];
    }

    /** Against B−: the cells up to the tap's stud, and what the bars between them drop. */
    double volts(int tap, double[] cellVolts, Warmth warmth, double amps) {
        if (isCut(tap)) {
            return 0;
        }
        double volts = offsetVolts[tap];
        for (int k = 0; k < tap; k++) {
            volts += cellVolts[k] + (k > 0 ? amps * warmth.barOhms(k) : 0);
        }
        return volts;
    }

    private int known(int tap) {
        if (tap < 0 || tap >= cut.length) {
            throw new IllegalArgumentException("no tap " + tap + " among " + cut.length);
        }
        return tap;
    }
}
