package rigwarden.pack;

/** What kind of source hangs on the bus. */
public sealed interface Supply {
    /** Delivers the ordered current until the cells' outer studs have the ordered voltage, by remote sense. */
    record Programmable() implements Supply {}

    /**
     * A plain charger: takes no orders and works whenever its mains are there, its relay being in the mains. Its
     * current rises in a straight line, is then constant up to its own voltage at its own terminals, and falls from
     * there. Once it has been above the finish current and then below it for two seconds (assumption), it ends by
     * itself until its mains went away and came back, or it floats. With K1 open it puts its voltage on the bus.
     *
     * @param amps constant current, above 0
     * @param softSeconds from mains on to the full current, not negative
     * @param volts its voltage, above 0
     * @param finishAmps where it finishes, from 0 to below {@code amps}
     * @param floats whether it then holds a lower voltage for ever
     * @param floatVolts that voltage; without meaning if it does not float
     */
    record Charger(double amps, double softSeconds, double volts, double finishAmps, boolean floats,
            double floatVolts) implements Supply {
        public Charger {
            if (!(amps > 0 && softSeconds >= 0 && volts > 0 && finishAmps >= 0 && finishAmps < amps
                    && (!floats || floatVolts > 0))) {
                throw new IllegalArgumentException("a charger needs current and voltage above 0, a finish below its"
                        + " current, and a float voltage if it floats");
            }
        }

        /** 20 A after 30 s, 28.8 V, finishes at 2 A: the second reference rig's (design's model page). */
        public static Charger usual() {
            return new Charger(20, 30, 28.8, 2, false, 0);
        }
    }
}
