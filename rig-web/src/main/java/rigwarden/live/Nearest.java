package rigwarden.live;

import rigwarden.rig.Channel;

/**
 * The limit of the warden that is nearest to being met.
 *
 * @param where the channel that is compared with it
 * @param reads what it reads, in the channel's unit
 * @param uncertainty which the warden adds to that before it compares, same unit; 0 where the rule takes none
 * @param limit where it trips, same unit
 * @param share of the way from the usual value to the limit that is still left, at most 1; negative beyond the limit
 * @param words what the limit is for
 */
public record Nearest(Channel where, double reads, double uncertainty, double limit, double share, String words) {}
