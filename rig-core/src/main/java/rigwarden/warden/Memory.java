package rigwarden.warden;

import java.util.Arrays;
import java.util.List;
import rigwarden.rig.Rig;

/**
 * What the warden must know of earlier scans. Immutable.
 *
 * @param last the scan before this one
 * @param earlier the scan before that
 * @param since by rule: first scan of a breach that goes on, {@link #NEVER} without one
 * @param said by rule: whether a rule that only warns has said so
 * @param inForce orders in force and since when
 * @param trail temperatures of the last minutes
 * @param started whether an armed start was granted and nothing has ended it
 * @param breachNanos last instant with any breach of a rule that trips
 */
public record Memory(
        Scan last,
        Scan earlier,
        long[] since,
        boolean[] said,
        InForce inForce,
        Trail trail,
        boolean started,
        long breachNanos) {
    /** No breach. */
    static final long NEVER = Long.MAX_VALUE;

    /** Memory before the first scan. */
    static Memory blank(int rules, Rig rig, long nanos) {
        long[] since = new long[rules];
        Arrays.fill(since, NEVER);
        Scan none = new Scan(0, nanos - rig.scanNanos(), List.of());
        return new Memory(none, none, since, new boolean[rules], InForce.off(nanos), Trail.EMPTY, false, nanos);
    }
}
