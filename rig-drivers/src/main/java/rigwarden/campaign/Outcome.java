package rigwarden.campaign;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import rigwarden.warden.Rule;

/**
 * What came of a case.
 *
 * @param what the case
 * @param struck how many of its faults came: none comes once the run has been over for half a minute
 * @param harms what was unsafe
 * @param noticed how the fault was noticed, if at all
 * @param rule of the first trip; else of the first notice that a healthy night does not give; empty without either
 * @param seconds from the fault to that trip or notice
 * @param hardware what acted without the computer, and before the warden
 * @param crossed whether the truth crossed a limit of the envelope after the fault
 * @param safeSeconds from that crossing to the last current; empty where nothing crossed, or where current still flows at the end
 * @param highestVolts of any true cell
 * @param lowestVolts of any true cell
 * @param hottestCelsius of any true node
 * @param thrown what the loop threw; empty when it threw nothing
 */
public record Outcome(Case what, int struck, List<Harm> harms, Noticed noticed, Optional<Rule> rule, OptionalDouble seconds, Set<Guard> hardware,
        boolean crossed, OptionalDouble safeSeconds, double highestVolts, double lowestVolts, double hottestCelsius,
        Optional<String> thrown) {
    /** How a fault was noticed. */
    public enum Noticed {
        /** The warden tripped. */
        TRIPPED,
        /** A rule gave notice. */
        NOTICE,
        /** The run went another way than the healthy one: it ended, paused or did not begin. */
        HELD,
        /** Not at all. */
        UNSEEN
    }

    /** What guards a rig without the computer. */
    public enum Guard {
        WINDOW("hardware window"),
        HEARTBEAT("heartbeat stage"),
        PROTECTION("battery's protection"),
        OWN_LIMIT("device's own limit"),
        FUSE("fuse");

        private final String words;

        Guard(String words) {
            this.words = words;
        }

        public String words() {
            return words;
        }
    }

    /** Whether it had a second fault that never came, since the first had ended the run. */
    public boolean cutShort() {
        return struck < what.strikes().size();
    }

    /** The last fault that came. */
    public Injection cause() {
        return what.strikes().get(Math.max(0, struck - 1)).what();
    }

    /** Whether something unsafe happened that an order could have prevented: while anything was on, or within two seconds after, or current flowed after Off. */
    public boolean unsafe() {
        return harms.stream().anyMatch(h -> !h.atOnce() && (!h.off() || h.what() == Harm.What.NOT_OFF));
    }

    /** Whether it was over before the first scan after the fault: only a fuse is as fast. */
    public boolean unsafeAtOnce() {
        return !unsafe() && harms.stream().anyMatch(Harm::atOnce);
    }

    /** Whether something unsafe happened only while everything was off: nothing that a rig can order takes that away. */
    public boolean unsafeThoughOff() {
        return !harms.isEmpty() && !unsafe() && !unsafeAtOnce();
    }

    /** Whether something unsafe happened that no order after the fault seems to prevent. */
    public boolean beyondOrders() {
        return unsafeAtOnce() || unsafeThoughOff();
    }

    /** What was unsafe and when, in words; "safe" where nothing was. */
    String harm() {
        return harms.isEmpty() ? "safe" : harms.stream()
                .map(h -> String.format(Locale.ROOT, "%s%s (%.3f) at %.1f s%s", h.what().words(), h.part().isEmpty() ? "" : " " + h.part(),
                        h.value(), h.nanos() * 1e-9, h.atOnce() ? ", gone within its scan" : h.off() ? ", all off" : ""))
                .collect(Collectors.joining("; "));
    }

    /** Everything in two lines, for whoever runs the case again. */
    public String words() {
        String harm = harm();
        String by = rule.map(r -> ", rule " + r + seconds.stream().mapToObj(s -> String.format(Locale.ROOT, " after %.1f s", s)).collect(Collectors.joining()))
                .orElse("");
        String first = hardware.isEmpty() ? "" : ", first " + hardware.stream().map(Guard::words).sorted().collect(Collectors.joining(" and "));
        String alone = cutShort() ? "; its last fault never came" : "";
        return String.format(Locale.ROOT, "case %d: %s%s%n    %s; %s%s%s; cells %.3f…%.3f V, hottest %.1f °C%s", what.number(), what.words(), alone, harm,
                noticed.name().toLowerCase(Locale.ROOT), by, first, lowestVolts, highestVolts, hottestCelsius,
                thrown.map(t -> "; threw " + t).orElse(""));
    }
}
