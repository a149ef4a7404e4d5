package rigwarden.warden;

import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/**
 * What the shunt monitor of an obedient rig has summed up, so that its sum agrees with the current of the scans.
 *
 * @param nanos last scan with a current; of no meaning before the first
 * @param amps current then, A
 * @param ampSeconds sum, A·s
 */
public record ChipSum(long nanos, double amps, double ampSeconds) {
    public static final ChipSum NOTHING = new ChipSum(Long.MIN_VALUE, 0, 0);

    /** The sum with a scan. */
    public ChipSum with(Rig rig, Scans scans) {
        Channel current = rig.channel(Role.CURRENT);
        if (!(scans.reading(current) instanceof Reading.Valid valid)) {
            return this;
        }
        double seconds = nanos == Long.MIN_VALUE ? 0 : (scans.nanos() - nanos) * 1e-9;
        return new ChipSum(scans.nanos(), valid.value(), ampSeconds + seconds * (amps + valid.value()) / 2);
    }
}
