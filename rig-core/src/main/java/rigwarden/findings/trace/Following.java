package rigwarden.findings.trace;

import java.util.Arrays;

/** Follows the charge from row to row, and tells where it cannot be followed: what a chip counted, or where none did the rows' own sum. */
public final class Following {
    /** A chip's clock, a ripple's phase and one scan's jump of the current: what a row may differ by and still fit, relative. */
    private static final double FITS = 0.5;
    /** The same where hardly any current flows, A. */
    private static final double FITS_AMPS = 2;
    /** Beyond it two rows tell nothing of the current between them but its bounds, s. */
    private static final double FAR_SECONDS = 5;
    /** Over a long gap the accumulator is believed where it fits the currents at both ends so well, relative. */
    private static final double FITS_FAR = 0.02;

    /** A step with less than this part of all current seen is a rest. */
    private static final double RESTS = 0.02;

    private final boolean[] seen;
    private final boolean summed;
    private long coulombsScan;
    private double leastAmps;
    private double greatestAmps;
    private long firstScan;
    private long lastScan;
    private long lastNanos;
    private double lastAmps = Double.NaN;
    private double lastCoulombs = Double.NaN;
    private double firstCoulombs = Double.NaN;
    private long coulombsNanos;
    private double ampsAtCoulombs;
    private double mostAmps;
    private double counted;
    private double guessed;
    private double trapezoid;
    private long ampsNanos;
    private long ampsScan;
    private double unreadSeconds;
    private double blindSeconds;
    private double blindAmps;
    private long missing;
    private double longest;
    private boolean back;

    public Following(int cells, boolean summed) {
        seen = new boolean[cells];
        this.summed = summed;
    }

    public void begin(Numbers now) {
        Arrays.fill(seen, false);
        firstScan = now.scan;
        lastScan = now.scan;
        lastNanos = now.nanos;
        lastAmps = now.amps;
        lastCoulombs = now.coulombs;
        firstCoulombs = now.coulombs;
        coulombsNanos = now.nanos;
        coulombsScan = now.scan;
        ampsAtCoulombs = now.amps;
        mostAmps = Double.isNaN(now.amps) || !summed ? 0 : Math.abs(now.amps);
        if (!Double.isNaN(now.amps)) {
            range(now.amps);
        }
        counted = 0;
        guessed = 0;
        trapezoid = 0;
        ampsNanos = now.nanos;
        ampsScan = now.scan;
        unreadSeconds = 0;
        blindSeconds = 0;
        blindAmps = 0;
        missing = 0;
        longest = 0;
        back = false;
        cells(now);
    }

    public void take(Numbers now) {
        double seconds = (now.nanos - lastNanos) * 1e-9;
        back |= seconds <= 0;
        missing += now.scan - lastScan - 1;
        longest = Math.max(longest, seconds);
        if (!Double.isNaN(now.amps)) {
            mostAmps = Math.max(mostAmps, Math.abs(now.amps));
            range(now.amps);
            double since = (now.nanos - ampsNanos) * 1e-9;
            unreadSeconds += since > FAR_SECONDS && ampsScan < lastScan ? since : 0;
            trapezoid += since * (Double.isNaN(lastAmps) ? now.amps : (now.amps + lastAmps) / 2);
            lastAmps = now.amps;
            ampsNanos = now.nanos;
            ampsScan = now.scan;
        }
        if (!Double.isNaN(now.coulombs) && summed) {
            sum(now);
        } else if (!Double.isNaN(now.coulombs)) {
            move(now);
        }
        lastScan = now.scan;
        lastNanos = now.nanos;
        cells(now);
    }

    private void cells(Numbers now) {
        for (int i = 0; i < seen.length; i++) {
            seen[i] |= !Double.isNaN(now.volts[i]);
        }
    }

    private void move(Numbers now) {
        double seconds = (now.nanos - coulombsNanos) * 1e-9;
        double moved = now.coulombs - lastCoulombs;
        double before = Double.isNaN(ampsAtCoulombs) ? now.amps : ampsAtCoulombs;
        double after = Double.isNaN(now.amps) ? before : now.amps;
        double mean = Double.isNaN(before) ? 0 : (before + after) / 2;
        double most = Double.isNaN(before) ? mostAmps : Math.max(Math.abs(before), Math.abs(after));
        boolean far = seconds > FAR_SECONDS;
        double play = seconds * ((far ? FITS_FAR : FITS) * most + (far ? FITS_FAR : 1) * FITS_AMPS)
                + (far ? 0 : seconds * Math.abs(after - before) / 2);
        if (Double.isNaN(lastCoulombs) || Math.abs(moved - mean * seconds) > play) {
            blindSeconds += seconds;
            blindAmps = Math.max(blindAmps, most);
            guessed += mean * seconds;
        } else {
            counted += moved;
        }
        lastCoulombs = now.coulombs;
        coulombsNanos = now.nanos;
        ampsAtCoulombs = now.amps;
    }

    /** Rows in their order are believed; what lies between two that do not follow each other is guessed. */
    private void sum(Numbers now) {
        double seconds = (now.nanos - coulombsNanos) * 1e-9;
        double moved = Double.isNaN(lastCoulombs) ? now.amps * seconds : now.coulombs - lastCoulombs;
        if (Double.isNaN(lastCoulombs) || now.scan - coulombsScan > 1) {
            blindSeconds += seconds;
            guessed += moved;
        } else {
            counted += moved;
        }
        lastCoulombs = now.coulombs;
        coulombsNanos = now.nanos;
        coulombsScan = now.scan;
    }

    private void range(double amps) {
        leastAmps = Math.min(leastAmps, amps);
        greatestAmps = Math.max(greatestAmps, amps);
    }

    /** What may be wrong with a guessed current: all that was seen until now, nothing among it; in a rest what was seen in that. */
    private double unseen() {
        double all = greatestAmps - leastAmps;
        return mostAmps < RESTS * all ? mostAmps : all;
    }

    public Continuity end() {
        double open = (lastNanos - coulombsNanos) * 1e-9;
        double blind = blindSeconds + (open > 1 || Double.isNaN(lastCoulombs) ? open : 0);
        int never = 0;
        for (boolean cell : seen) {
            never += cell ? 0 : 1;
        }
        double all = counted + guessed;
        double last = (lastNanos - ampsNanos) * 1e-9;
        double unread = unreadSeconds + (last > FAR_SECONDS ? last : 0);
        double amps = summed ? unseen() : Math.max(blindAmps, blind > blindSeconds ? mostAmps : 0);
        return new Continuity(firstScan, lastScan, missing, longest, back, blind, amps, counted, guessed, lastCoulombs - firstCoulombs,
                never, Math.abs(all) < 100 || unread > 0 ? 0 : trapezoid / all - 1, unread, summed);
    }
}
