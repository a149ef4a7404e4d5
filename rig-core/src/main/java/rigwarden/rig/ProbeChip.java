package rigwarden.rig;

/** The chip behind a thermocouple. All convert type T unless they say otherwise. */
public sealed interface ProbeChip {
    /** Its name in the trade. */
    String chip();

    /** One code of its reading, °C. */
    double celsiusPerCode();

    /** Shortest time between two readings, s: its longest conversion, with room. */
    double fastestSeconds();

    /**
     * An MCP9601.
     *
     * @param bus I2C bus
     * @param address I2C address
     */
    record Mcp9601(int bus, int address) implements ProbeChip {
        @Override
        public String chip() {
            return "MCP9601";
        }

        @Override
        public double celsiusPerCode() {
            return Channels.MCP9601_CELSIUS;
        }

        @Override
        public double fastestSeconds() {
            return 0;
        }
    }

    /**
     * A MAX31856, one conversion per order with a look for an open probe: at most 185 ms at 50 Hz or 155 ms at 60 Hz and
     * 44 ms for the look (electrical characteristics and open-circuit table; from memory), and 20 ms of room.
     *
     * @param at where it hangs
     * @param mainsHertz mains that its filter rejects, 50 or 60
     */
    record Max31856(SpiPlace at, int mainsHertz) implements ProbeChip {
        @Override
        public String chip() {
            return "MAX31856";
        }

        @Override
        public double celsiusPerCode() {
            return 1.0 / 128;
        }

        @Override
        public double fastestSeconds() {
            return mainsHertz == 50 ? 0.250 : 0.220;
        }
    }

    /**
     * A MAX31855, which converts by itself in at most 100 ms, and begins anew when it is asked (19-5793).
     *
     * @param at where it hangs
     * @param letter of its couple, {@code K} or {@code T}
     */
    record Max31855(SpiPlace at, char letter) implements ProbeChip {
        @Override
        public String chip() {
            return "MAX31855";
        }

        @Override
        public double celsiusPerCode() {
            return 0.0625;
        }

        @Override
        public double fastestSeconds() {
            return 0.110;
        }
    }
}
