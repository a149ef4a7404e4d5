package rigwarden.warden;

import rigwarden.rig.Channel;

/**
 * A breach of a rule that only warns.
 *
 * @param rule the rule
 * @param where the channel
 * @param value what it read
 * @param limit what it was compared with
 */
public record Warning(Rule rule, Channel where, double value, double limit) {}
