package rigwarden.findings.trace;

import rigwarden.rig.Spot;

/**
 * What the loose probe showed on one spot under one current, after it had settled there.
 *
 * @param spot where a person said that it lay
 * @param step number of the step; 0 between steps
 * @param celsius mean of its readings over the last minute of the stay; NaN where the stay was too short to settle
 * @param overKelvin over the spot's own cell, or over the room where the spot has none, as read in the same minute; NaN likewise
 * @param zeroKelvin the same difference before any current of the run; NaN where the run showed none
 * @param squareAmps mean of the current's square over that minute, A²
 * @param perHour how fast the difference still rose, K/h
 * @param flowedHours how long the current had flowed
 * @param fell whether its reading jumped under a steady current, so that it had dropped, or was moved without a word
 * @param firstScan first scan of that minute
 * @param lastScan last scan of that minute
 */
public record Visit(Spot spot, int step, double celsius, double overKelvin, double zeroKelvin, double squareAmps, double perHour,
        double flowedHours, boolean fell, long firstScan, long lastScan) {
    /** The same with so many scans counted before it, and without a zero: a run that goes on with another begins with what that one warmed. */
    public Visit goneOn(long scansBefore) {
        return new Visit(spot, step, celsius, overKelvin, Double.NaN, squareAmps, perHour, flowedHours, fell, firstScan + scansBefore,
                lastScan + scansBefore);
    }

    /** Whether it stayed long enough for a reading to be of this spot. */
    public boolean settled() {
        return !Double.isNaN(overKelvin);
    }
}
