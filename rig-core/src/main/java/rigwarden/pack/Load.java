package rigwarden.pack;

/** What kind of sink hangs on the bus. */
public sealed interface Load {
    /**
     * Draws the ordered current while its own terminals have at least this voltage; below, what is left.
     *
     * @param floorVolts not negative
     */
    record Electronic(double floorVolts) implements Load {}

    /**
     * A heater: draws what its resistance draws; an ordered current means nothing to it.
     *
     * @param ohms above 0
     */
    record Resistor(double ohms) implements Load {
        public Resistor {
            if (!(ohms > 0)) {
                throw new IllegalArgumentException("a heater needs a resistance above 0 Ω: " + ohms);
            }
        }
    }
}
