package rigwarden.rig;

import java.util.OptionalInt;

/**
 * Where an SPI chip hangs.
 *
 * @param bus number of the SPI bus
 * @param select number of the select, 0…2; with a line it only names the device node, and nothing hangs on it
 * @param line header's line that selects the chip instead
 */
public record SpiPlace(int bus, int select, OptionalInt line) {
    /** Device node behind it. */
    public String node() {
        return "spidev" + bus + "." + select;
    }

    /** Its bus, as messages name it. */
    public String wire() {
        return "SPI bus " + bus;
    }
}
