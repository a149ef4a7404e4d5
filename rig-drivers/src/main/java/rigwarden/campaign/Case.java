package rigwarden.campaign;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * One case of a campaign. Scans are those of the night that it forks from.
 *
 * @param number from 1
 * @param name that somebody gave it; empty for one that was drawn
 * @param night that it forks from
 * @param strikes its faults in order of time, at least one; all but the last are latent when the last comes
 * @param endScan after which the case is over at the latest
 */
public record Case(int number, String name, Night night, List<Strike> strikes, long endScan) {
    public Case {
        strikes = List.copyOf(strikes);
    }

    /** The fault that comes last. */
    public Injection active() {
        return strikes.getLast().what();
    }

    /** The same with its first faults only: of a case whose later ones never came. */
    Case first(int struck) {
        return new Case(number, name, night, strikes.subList(0, Math.max(1, struck)), endScan);
    }

    /** Whether it is the only one. */
    public boolean single() {
        return strikes.size() == 1;
    }

    /** Scan from which the case forks. */
    long firstScan() {
        return strikes.getFirst().scan();
    }

    /** The case in one line. */
    public String words() {
        double scanSeconds = night.scene().rig().scanNanos() * 1e-9;
        String all = strikes.stream()
                .map(s -> String.format(Locale.ROOT, "%s, at %.1f s (%s)", s.what().words(), s.scan() * scanSeconds, night.placeAt(s.scan())))
                .collect(Collectors.joining("; then "));
        return String.format(Locale.ROOT, "%s, specimen %d: %s%s", night.scene().name(), night.specimen(),
                name.isEmpty() ? "" : "\"" + name + "\": ", all);
    }
}
