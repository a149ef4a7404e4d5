package rigwarden.campaign;

import java.util.Locale;
import java.util.Optional;

/**
 * One case of a campaign. Scans are those of the night that it forks from.
 *
 * @param number from 1
 * @param night that it forks from
 * @param latent a fault that was there before the other; empty for a single
 * @param latentScan after which it is there; as {@code activeScan} without one
 * @param active the fault
 * @param activeScan after which it is there
 * @param endScan after which the case is over at the latest
 */
public record Case(int number, Night night, Optional<Injection> latent, long latentScan, Injection active, long activeScan,
        long endScan) {
    /** The case in one line. */
    public String words() {
        double scanSeconds = night.bench().rig().scanNanos() * 1e-9;
        String before = latent
                .map(l -> String.format(Locale.ROOT, "%s %.1f s before, then ", l.words(), (activeScan - latentScan) * scanSeconds))
                .orElse("");
        return String.format(Locale.ROOT, "%s, specimen %d: %s%s, at %.1f s (%s)", night.bench().name(), night.specimen(), before,
                active.words(), activeScan * scanSeconds, night.placeAt(activeScan));
    }
}
