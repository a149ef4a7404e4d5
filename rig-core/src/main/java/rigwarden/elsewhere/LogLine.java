package rigwarden.elsewhere;

/**
 * A line as numbers.
 *
 * @param line its number in the file
 * @param seconds its time, by the file's own clock
 * @param step what the column of the steps says; empty where there is none
 * @param values by channel, in our units; NaN where there is none
 * @param nonsense a bit for each channel whose field was filled and is no reading
 */
record LogLine(long line, double seconds, String step, double[] values, long nonsense) {}
