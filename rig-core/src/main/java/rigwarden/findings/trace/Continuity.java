package rigwarden.findings.trace;

/**
 * Whether a step was seen in one piece.
 *
 * @param firstScan number of its first scan
 * @param lastScan number of its last
 * @param missingRows scans of it that are not there
 * @param longestGapSeconds longest time between two rows
 * @param clockWentBack whether a row's time was not later than the one before: two clocks, or a time that was set
 * @param blindSeconds time over which the accumulator cannot be followed: it failed, or what it did does not fit the current
 * @param blindAmps greatest current seen around those times, A, magnitude
 * @param countedCoulombs what the accumulator moved, without those times, A·s of the chip's clock
 * @param guessedCoulombs mean current times time over them, A·s: bounded, not known
 * @param rawCoulombs difference of the accumulator's last and first reading, whatever happened between, A·s of the chip's clock
 * @param cellsMissing cells of which no voltage was ever read, as a count
 * @param rippleShare what the host's own samples give more or less than the accumulator, relative; 0 where some are not there
 * @param unreadSeconds time over which rows came and the current was in none of them, where that was more than a moment
 * @param summed whether nothing counted the charge and it is the sum of the rows: then "blind" is where rows or their currents are
 *     missing, and the blind current is all that lies between the least and the greatest seen until then, with nothing among them
 */
public record Continuity(long firstScan, long lastScan, long missingRows, double longestGapSeconds, boolean clockWentBack,
        double blindSeconds, double blindAmps, double countedCoulombs, double guessedCoulombs, double rawCoulombs, int cellsMissing,
        double rippleShare, double unreadSeconds, boolean summed) {
    /** The same with so many scans counted before it. */
    public Continuity counted(long scansBefore) {
        return new Continuity(firstScan + scansBefore, lastScan + scansBefore, missingRows, longestGapSeconds, clockWentBack, blindSeconds,
                blindAmps, countedCoulombs, guessedCoulombs, rawCoulombs, cellsMissing, rippleShare, unreadSeconds, summed);
    }

    /** Of a step that was broken off and went on so: what lies between the two is not in it. */
    public Continuity then(Continuity after) {
        double all = countedCoulombs + guessedCoulombs;
        double later = after.countedCoulombs + after.guessedCoulombs;
        return new Continuity(firstScan, after.lastScan, missingRows + after.missingRows, Math.max(longestGapSeconds, after.longestGapSeconds),
                clockWentBack || after.clockWentBack, blindSeconds + after.blindSeconds, Math.max(blindAmps, after.blindAmps),
                countedCoulombs + after.countedCoulombs, guessedCoulombs + after.guessedCoulombs, rawCoulombs + after.rawCoulombs,
                Math.max(cellsMissing, after.cellsMissing), all + later == 0 ? 0 : (all * rippleShare + later * after.rippleShare) / (all + later),
                unreadSeconds + after.unreadSeconds, summed);
    }
}
