package rigwarden.live;

import java.util.Optional;
import java.util.function.BiPredicate;
import rigwarden.rig.Spot;
import rigwarden.warden.Scan;

/** Where the loose probe is said to lie. A person says so, on the page or at a terminal; it is kept with the run. Any thread. */
public final class Laying {
    /**
     * What was said last.
     *
     * @param spot where it lies
     * @param nanos time of the scan that was the newest then
     */
    public record Laid(Spot spot, long nanos) {}

    private final BiPredicate<Spot, Scan> keeps;
    private volatile Optional<Laid> last = Optional.empty();

    /**
     * Nothing said yet.
     *
     * @param keeps takes what is said, with the newest scan; never waits, and is false where it cannot be kept
     */
    public Laying(BiPredicate<Spot, Scan> keeps) {
        this.keeps = keeps;
    }

    /** Somebody says where it lies; false when that could not be kept, and nothing has changed. */
    public boolean lay(Spot spot, Scan newest) {
        boolean kept = keeps.test(spot, newest);
        if (kept) {
            laid(spot, newest.nanos());
        }
        return kept;
    }

    /** It was laid there, and that is kept already. */
    public void laid(Spot spot, long nanos) {
        last = Optional.of(new Laid(spot, nanos));
    }

    public Optional<Laid> last() {
        return last;
    }
}
