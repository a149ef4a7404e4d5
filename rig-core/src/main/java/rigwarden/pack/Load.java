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

    /**
     * An inverter with a heater behind it: takes no orders and works while its relay, at its remote input, is closed.
     * It takes constant power at its own terminals; its capacitors are on the bus whether it works or not. Below its
     * low limit, or when the power cannot be drawn at all, it quits by itself; after three seconds (assumption) without
     * a break at the restart voltage it starts again. Its no-load power is left out (assumption).
     *
     * @param watts that the heater takes, above 0
     * @param efficiency heater over terminals, above 0 to 1
     * @param quitVolts at its own terminals; its first start needs as much
     * @param restartVolts at its own terminals, at least {@code quitVolts}
     * @param startSeconds in which the power rises in a straight line, not negative
     * @param farads of its input capacitors, not negative
     * @param rippleShare amplitude of the 100 Hz part of what it takes over the mean, 0 to 1, what its capacitors
     *         swallow taken off already
     * @param thermostatOnSeconds how long the heater's thermostat stays on, first after each start; 0 for none
     * @param thermostatOffSeconds how long it then stays off; 0 for none
     */
    record Inverter(double watts, double efficiency, double quitVolts, double restartVolts, double startSeconds,
            double farads, double rippleShare, double thermostatOnSeconds, double thermostatOffSeconds)
            implements Load {
        public Inverter {
            if (!(watts > 0 && efficiency > 0 && efficiency <= 1 && quitVolts >= 0 && restartVolts >= quitVolts
                    && startSeconds >= 0 && farads >= 0 && rippleShare >= 0 && rippleShare <= 1
                    && thermostatOnSeconds >= 0 && thermostatOffSeconds >= 0)) {
                throw new IllegalArgumentException("not an inverter: " + watts + " W, efficiency " + efficiency
                        + ", quits at " + quitVolts + " V, restarts at " + restartVolts + " V, starts in "
                        + startSeconds + " s, " + farads + " F, ripple " + rippleShare);
            }
        }

        /**
         * 1.5 kW at 0.9, quits at 21.0 V, starts in 5 s: the second reference rig's (design's model page). Restart at
         * 24 V, 20 mF, half of the current as ripple: assumptions.
         */
        public static Inverter usual() {
            return new Inverter(1500, 0.9, 21, 24, 5, 20e-3, 0.5, 0, 0);
        }
    }
}
