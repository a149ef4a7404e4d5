package rigwarden.rig;

/** The chip behind a voltage input, with the figures of its data sheet. */
public sealed interface Converter {
    /** Its name in the trade. */
    String chip();

    /** Its bus, as messages name it. One bus has one ground. */
    String wire();

    /** Volts at the pin for one code. */
    double voltsPerCode();

    /** Highest voltage at a pin that it can show, V, before its supply is asked. */
    double reachVolts();

    /** Limits of its gain, reference included, relative. */
    double gain();

    /** Limits of its offset, V at the pin. */
    double offsetVolts();

    /**
     * An ADS1115 at ± 4.096 V (SBAS444E).
     *
     * @param bus I2C bus
     * @param address I2C address
     */
    record Ads1115(int bus, int address) implements Converter {
        @Override
        public String chip() {
            return "ADS1115";
        }

        @Override
        public String wire() {
            return "I2C bus " + bus;
        }

        @Override
        public double voltsPerCode() {
            return Channels.ADS1115_VOLTS;
        }

        @Override
        public double reachVolts() {
            return Channels.ADS1115_REACH_VOLTS;
        }

        @Override
        public double gain() {
            return Channels.ADS1115_GAIN;
        }

        @Override
        public double offsetVolts() {
            return Channels.ADS1115_OFFSET_CODES * Channels.ADS1115_VOLTS;
        }
    }

    /**
     * An ADS1220 at gain 1 with its amplifier bypassed (SBAS501C; gain, offset and reference from memory).
     *
     * @param at where it hangs
     * @param readyLine header's line of its ready pin
     * @param external whether it measures against REFP0 and REFN0 instead of its own 2.048 V
     * @param referenceVolts the reference, V
     * @param referenceRelative its limits, relative
     */
    record Ads1220(SpiPlace at, int readyLine, boolean external, double referenceVolts, double referenceRelative)
            implements Converter {
        /** Its own reference, V. */
        public static final double INTERNAL_VOLTS = 2.048;
        /** Limits of that, relative. */
        public static final double INTERNAL_RELATIVE = 0.0015;
        private static final double HALF_CODES = 1 << 23;
        /** Limits of its own gain, reference apart, relative. */
        public static final double GAIN = 0.001;
        private static final double OFFSET_VOLTS = 30e-6;

        @Override
        public String chip() {
            return "ADS1220";
        }

        @Override
        public String wire() {
            return at.wire();
        }

        @Override
        public double voltsPerCode() {
            return referenceVolts / HALF_CODES;
        }

        @Override
        public double reachVolts() {
            return referenceVolts;
        }

        @Override
        public double gain() {
            return Math.hypot(GAIN, referenceRelative);
        }

        @Override
        public double offsetVolts() {
            return OFFSET_VOLTS;
        }
    }
}
