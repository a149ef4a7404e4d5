package rigwarden.pack;

/** A true value whose first crossing the oracle notes. */
public sealed interface Threshold {
    /**
     * The highest cell at or above a voltage.
     *
     * @param volts at its studs
     */
    record CellAbove(double volts) implements Threshold {}

    /**
     * The lowest cell at or below a voltage.
     *
     * @param volts at its studs
     */
    record CellBelow(double volts) implements Threshold {}

    /**
     * The hottest node at or above a temperature.
     *
     * @param celsius true, not what a bead says
     */
    record NodeAbove(double celsius) implements Threshold {}

    /**
     * Current of either sign at or beyond a magnitude.
     *
     * @param amps not negative
     */
    record AmpsBeyond(double amps) implements Threshold {}

    /** How far the values are beyond this threshold: below 0 not yet. */
    default double beyond(double highestVolts, double lowestVolts, double hottestCelsius, double amps) {
        return switch (this) {
            case CellAbove(double volts) -> highestVolts - volts;
            case CellBelow(double volts) -> volts - lowestVolts;
            case NodeAbove(double celsius) -> hottestCelsius - celsius;
            case AmpsBeyond(double limit) -> Math.abs(amps) - limit;
        };
    }
}
