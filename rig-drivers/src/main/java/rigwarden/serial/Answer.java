package rigwarden.serial;

/**
 * What an instrument said of itself.
 *
 * @param volts at its terminals, V
 * @param amps through it, A, positive in its own direction
 * @param on whether its output or input is on
 * @param takenNanos when it said so
 */
public record Answer(double volts, double amps, boolean on, long takenNanos) {}
