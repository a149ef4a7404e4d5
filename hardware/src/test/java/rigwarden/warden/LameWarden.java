package rigwarden.warden;

import java.util.List;
import rigwarden.rig.Rig;

/** A warden that is blind in one rule, for the proof that leaves one out; its list is as long as the whole one's, so that it can take over. */
public final class LameWarden {
    private LameWarden() {}

    /** A warden for which the rule with this number never finds anything. */
    public static Warden without(Rig rig, int number) {
        List<Rule> rules = Rules.of(rig);
        if (rules.stream().noneMatch(r -> r.number() == number)) {
            throw new IllegalArgumentException("there is no rule " + number);
        }
        return new Warden(rig, rules.stream().map(r -> r.number() == number ? blind(r) : r).toList());
    }

    private static Rule blind(Rule rule) {
        return new Rule(rule.number(), rule.name(), rule.sentence(), rule.reads(), rule.limit(), rule.holdNanos(), rule.severity(),
                rule.clears(), _ -> Breach.NONE);
    }
}
