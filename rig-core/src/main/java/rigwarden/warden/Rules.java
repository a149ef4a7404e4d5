package rigwarden.warden;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** Every rule of the warden, in one list. */
public final class Rules {
    private static final double SECOND = 1e9;

    private Rules() {}

    /** The rules that judge each scan of this rig, by number. */
    public static List<Rule> of(Rig rig) {
        List<Rule> rules = new ArrayList<>();
        rules.addAll(CellRules.of(rig.guards().trips()));
        rules.addAll(PackRules.of(rig));
        rules.addAll(CurrentRules.of(rig));
        rules.addAll(PathRules.of(rig));
        rules.addAll(ChargeRules.of(rig));
        rules.addAll(WarmthRules.of(rig.guards().trips()));
        rules.addAll(ProbeRules.of(rig));
        rules.addAll(ChannelRules.of(rig));
        rules.addAll(ContactorRules.of(rig));
        rules.addAll(RecordRules.of(rig));
        rules.sort(Comparator.comparingInt(Rule::number));
        return List.copyOf(rules);
    }

    /** Those that look at wishes instead of scans. */
    public static List<Rule> ofWishes() {
        return GrantRules.ALL;
    }

    static Rule trips(int number, String name, String sentence, Set<Role> reads, String limit, double holdSeconds,
            Check check) {
        return new Rule(number, name, sentence, reads, limit, Math.round(holdSeconds * SECOND), Severity.TRIPS,
                Clearing.QUIET, check);
    }

    static Rule warmth(int number, String name, String sentence, Set<Role> reads, String limit, double holdSeconds,
            Clearing clears, Check check) {
        return new Rule(number, name, sentence, reads, limit, Math.round(holdSeconds * SECOND), Severity.TRIPS,
                clears, check);
    }

    static Rule weld(int number, String name, String sentence, Set<Role> reads, String limit, double holdSeconds,
            Check check) {
        return new Rule(number, name, sentence, reads, limit, Math.round(holdSeconds * SECOND),
                Severity.TRIPS_UNTIL_PROVED, Clearing.PROOF, check);
    }

    static Rule warns(int number, String name, String sentence, Set<Role> reads, String limit, double holdSeconds,
            Check check) {
        return new Rule(number, name, sentence, reads, limit, Math.round(holdSeconds * SECOND), Severity.WARNS,
                Clearing.BY_ITSELF, check);
    }
}
