package rigwarden.rig;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The buses of a rig, and the lines that hang on one instead of the header.
 *
 * @param i2cHertz clock of each I2C bus, by bus number
 * @param spiHertz clock of each SPI bus, by bus number
 * @param expanders chips that give more lines
 */
public record Wires(Map<Integer, Integer> i2cHertz, Map<Integer, Integer> spiHertz, List<Expander> expanders) {
    public Wires {
        i2cHertz = Map.copyOf(i2cHertz);
        spiHertz = Map.copyOf(spiHertz);
        expanders = List.copyOf(expanders);
    }

    /** The expander on which a line is; empty for the header's own. */
    public Optional<Expander> expander(int line) {
        return expanders.stream().filter(e -> e.has(line)).findFirst();
    }
}
