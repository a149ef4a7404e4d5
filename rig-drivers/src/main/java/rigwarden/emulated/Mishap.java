package rigwarden.emulated;

/**
 * A fault with its time.
 *
 * @param words as the person wrote it
 * @param fault what happens
 * @param step number of the step that the time counts from; 0 counts from the start of the run
 * @param afterNanos time from there
 */
public record Mishap(String words, BoardFault fault, int step, long afterNanos) {}
