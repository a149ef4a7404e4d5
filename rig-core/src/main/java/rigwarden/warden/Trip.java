package rigwarden.warden;

import rigwarden.rig.Channel;

/**
 * One breach that was held too long.
 *
 * @param rule the rule
 * @param where the channel
 * @param value what it read, in the channel's unit
 * @param limit what it was compared with, in the channel's unit
 * @param sinceNanos first breach, monotonic
 * @param scan number of the scan that tripped
 */
public record Trip(Rule rule, Channel where, double value, double limit, long sinceNanos, long scan) {}
