package rigwarden.serial;

/**
 * What an instrument complained of.
 *
 * @param nanos when it was heard
 * @param words its own
 */
public record Said(long nanos, String words) {}
