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
 * @param found by rule: what was found last, while a breach goes on
 * @param unsure by channel: grows with every scan without a valid reading, falls with every one with
 * @param said by rule: whether a rule that only warns has said so
 * @param inForce orders in force and since when
 * @param past what rules look back on further, this scan included
 * @param started whether an armed start was granted and nothing has ended it
 * @param breachNanos last instant with any breach of a rule that trips
 */
public record Memory(
        Scan last,
        Scan earlier,
        long[] since,
        Breach[] found,
        int[] unsure,
        boolean[] said,
        InForce inForce,
        Past past,
        Started started,
        long breachNanos) {
    /** No breach. */
    static final long NEVER = Long.MAX_VALUE;

    /** Whether a breach of a rule that trips goes on, inside its hold or beyond. */
    boolean pending(Rule[] rules) {
        for (int i = 0; i < rules.length; i++) {
            if (since[i] != NEVER && rules[i].severity() != Severity.WARNS) {
                return true;
            }
        }
        return false;
    }

    /** The same with another state of the start. */
    Memory startedAs(Started now, long breach) {
        return new Memory(last, earlier, since, found, unsure, said, inForce, past, now, breach);
    }

    /** What a run that goes on from here must know of the charge. */
    public Swing swing() {
        return past.counted().swing();
    }

    /** Memory before the first scan. */
    static Memory blank(int rules, Rig rig, long nanos, Swing before) {
        long[] since = new long[rules];
        Arrays.fill(since, NEVER);
        Scan none = new Scan(0, nanos - rig.scanNanos(), List.of());
        Breach[] found = new Breach[rules];
        Arrays.fill(found, Breach.NONE);
        return new Memory(none, none, since, found, new int[rig.channels().size()], new boolean[rules],
                InForce.off(nanos), Past.blank(none, before), Started.NOT, nanos);
    }
}
