package rigwarden.rig;

/**
 * A thermocouple on an MCP9601 and the place where it sits.
 *
 * @param name column name
 * @param place BODY, STUD, BAR, SHUNT_BODY, CONTACTOR_BODY or ROOM
 * @param cell cell number; of a bar the lower of its two; 0 where the place belongs to none
 * @param positive for a stud, whether it is the positive one
 * @param bus I2C bus
 * @param address I2C address
 * @param uncertaintyKelvin expanded uncertainty of the whole chain, K
 * @param lagSeconds time constant of the bead on its place, s
 * @param periodNanos time between readings
 */
public record Probe(
        String name,
        Role place,
        int cell,
        boolean positive,
        int bus,
        int address,
        double uncertaintyKelvin,
        double lagSeconds,
        long periodNanos) {}
