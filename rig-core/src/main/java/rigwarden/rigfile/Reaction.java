package rigwarden.rigfile;

import java.util.Map;
import rigwarden.quantity.Quantity;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.warden.Rule;

/**
 * How soon a rule has opened the contactor, counted from the instant at which its limit is passed at the place itself.
 * For a rise (rules 26 and 27) that is the instant at which the rise over its own window passes the limit.
 *
 * @param rule the rule
 * @param seconds at the latest, s
 */
public record Reaction(Rule rule, double seconds) {
    /** Orders carried out, and room for a scan that takes longer than others, s: this project's choice. */
    private static final double ORDERS_S = 0.05;
    private static final double NANO = 1e-9;
    /** Time over which a check itself looks back, and in which a channel that fails one time in three is found out; s. */
    private static final Map<Integer, Double> LOOKS_BACK_S = Map.of(8, 1800.0, 10, 60.0, 20, 60.0, 26, 30.0, 27, 120.0, 29, 1800.0,
            36, 9.0, 37, 1200.0, 58, 10.0);

    static Reaction of(Rig rig, Rule rule) {
        double scan = rig.scanNanos() * NANO;
        double seconds = rule.holdNanos() * NANO + scan + rig.guards().contactLagSeconds() + ORDERS_S;
        double sampling = 0;
        double bead = 0;
        for (Channel channel : rig.channels()) {
            if (rule.reads().contains(channel.role())) {
                sampling = Math.max(sampling, channel.periodNanos() * NANO);
                bead = Math.max(bead, channel.lagSeconds());
            }
        }
        boolean warmth = rule.reads().stream().allMatch(role -> role.quantity() == Quantity.TEMPERATURE);
        return new Reaction(rule, seconds + sampling + (warmth ? bead : 0)
                + (takesAScanMore(rule) ? scan : 0)
                + (waitsForPeriods(rule) ? Channel.STALE_PERIODS * sampling : 0)
                + LOOKS_BACK_S.getOrDefault(rule.number(), 0.0));
    }

    /** The middle of three readings; a path whose bus stays where it was. */
    private static boolean takesAScanMore(Rule rule) {
        return rule.number() <= 3 || rule.number() == 16;
    }

    private static boolean waitsForPeriods(Rule rule) {
        return rule.number() == 31 || rule.number() == 32 || rule.number() == 34;
    }
}
