package rigwarden.rig;

import java.util.List;

/** A source or a sink of the rig, each with a relay of its own by which it can be stopped. */
public sealed interface Device {
    /** Name in the rig file; its columns begin with it. */
    String name();

    /** Whether it gives energy to the cells; a sink takes it. */
    boolean charges();

    /** GPIO line of its relay: the mains of a charger, the remote input of an inverter, a contact towards the bus. */
    int relay();

    /** Elements that stop it, each alone, as named in the rig file. */
    List<String> stops();

    /** Highest current that it gives or takes for hours, A, at the pack; a sink's at its lowest voltage. */
    double maxAmps();

    /** Lowest pack voltage at which it works with that current, V. */
    double minVolts();

    /** Highest voltage that it can put on the bus, V; 0 for a sink. */
    double highestVolts();

    /** Longest time from its relay's closing until current flows, s. */
    double startSeconds();

    /** Longest time for which it stops by itself without having ended (a thermostat), s. */
    double pauseSeconds();

    /** Whether it takes no set point: on and off is all that it knows. */
    default boolean switched() {
        return switch (this) {
            case Programmed _ -> false;
            case PlainCharger _, Inverter _ -> true;
        };
    }

    /**
     * A source or sink that takes orders over a serial line.
     *
     * @param limitReadBack whether its own limit is set and read back
     */
    record Programmed(
            String name, boolean charges, int relay, List<String> stops, Instrument instrument, boolean limitReadBack)
            implements Device {
        @Override
        public double maxAmps() {
            return instrument.maxAmps();
        }

        @Override
        public double minVolts() {
            return instrument.minVolts();
        }

        @Override
        public double highestVolts() {
            return charges ? instrument.maxVolts() : 0;
        }

        @Override
        public double startSeconds() {
            return 0;
        }

        @Override
        public double pauseSeconds() {
            return 0;
        }
    }

    /**
     * A charger that does as it likes: starts softly, gives its current up to its voltage, finishes or floats.
     *
     * @param amps nominal current, A
     * @param ampsRelative limits of that current, relative, rectangular
     * @param volts nominal output voltage, V
     * @param voltsRelative limits of that voltage, relative, rectangular
     * @param startSeconds soft start, s
     * @param finishAmps current at which it ends by itself or floats, A
     * @param floats whether it then holds a lower voltage instead of ending
     * @param floatVolts that voltage, V; 0 when it ends
     */
    record PlainCharger(
            String name,
            int relay,
            List<String> stops,
            double amps,
            double ampsRelative,
            double volts,
            double voltsRelative,
            double startSeconds,
            double finishAmps,
            boolean floats,
            double floatVolts)
            implements Device {
        @Override
        public boolean charges() {
            return true;
        }

        @Override
        public double maxAmps() {
            return amps * (1 + ampsRelative);
        }

        @Override
        public double minVolts() {
            return 0;
        }

        @Override
        public double highestVolts() {
            return volts * (1 + voltsRelative);
        }

        @Override
        public double pauseSeconds() {
            return 0;
        }
    }

    /**
     * An inverter with a heater behind it: takes constant power, quits at a voltage of its own.
     *
     * @param watts power of the heater, W
     * @param efficiency power out ÷ power in
     * @param leadOhms resistance of its leads, ohm
     * @param quitVolts voltage at which it quits, V
     * @param restartVolts voltage at which it starts again by itself, V
     * @param lowestVolts lowest pack voltage of a programme, V: series × cut-off
     * @param startSeconds from remote input to current, s
     * @param pauseSeconds longest pause of the heater's thermostat, s; 0 without one
     */
    record Inverter(
            String name,
            int relay,
            List<String> stops,
            double watts,
            double efficiency,
            double leadOhms,
            double quitVolts,
            double restartVolts,
            double lowestVolts,
            double startSeconds,
            double pauseSeconds)
            implements Device {
        @Override
        public boolean charges() {
            return false;
        }

        /** The current rises as the voltage falls: I = (V − √(V² − 4·R·P/η)) / 2R. */
        public double ampsAt(double volts) {
            double power = watts / efficiency;
            double root = volts * volts - 4 * leadOhms * power;
            return root < 0 ? volts / (2 * leadOhms) : 2 * power / (volts + Math.sqrt(root));
        }

        @Override
        public double maxAmps() {
            return ampsAt(Math.max(quitVolts, lowestVolts));
        }

        @Override
        public double minVolts() {
            return quitVolts;
        }

        @Override
        public double highestVolts() {
            return 0;
        }
    }
}
