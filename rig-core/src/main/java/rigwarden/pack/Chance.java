package rigwarden.pack;

import java.util.random.RandomGenerator;

/**
 * A random stream that can be copied at any instant. There is one for each (seed, part, purpose), so that one part's
 * draws never shift another's: a rehearsal with one more probe keeps the noise of every other channel.
 *
 * <p>The generator is the 64-bit mixing counter that the JDK documents for {@code SplittableRandom}; the JDK's own
 * cannot be copied. Gaussian draws come from the JDK's default in {@link RandomGenerator}.
 */
public final class Chance implements RandomGenerator {
    private static final long STEP = 0x9E3779B97F4A7C15L;

    private long state;

    private Chance(long state) {
        this.state = state;
    }

    /**
     * Opens the stream of one purpose of one part.
     *
     * @param seed the run's seed
     * @param part name of the part as in the rig file
     * @param purpose what is drawn, for example "noise"
     */
    public static Chance of(long seed, String part, String purpose) {
        long state = mixed(seed + STEP);
        for (char letter : (part + '\n' + purpose).toCharArray()) {
            state = mixed(state ^ letter) + STEP;
        }
        return new Chance(state);
    }

    /** A stream that goes on from here exactly as this one does. */
    public Chance copy() {
        return new Chance(state);
    }

    @Override
    public long nextLong() {
        state += STEP;
        return mixed(state);
    }

    private static long mixed(long word) {
        long z = (word ^ (word >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
