package rigwarden.paper;

/**
 * One connection of a rig.
 *
 * @param label what is written on both its ends: P power, S sense, T probe, C stop chain, L line of the controller, B bus or serial
 * @param from where it begins
 * @param to where it ends
 * @param conductor what it is made of, with its fuse
 * @param note what to mind; empty where there is nothing
 */
public record Connection(String label, String from, String to, String conductor, String note) {}
