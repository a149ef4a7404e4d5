package rigwarden.rig;

/**
 * A thermocouple, the chip that converts it, and the place where it sits.
 *
 * @param name column name
 * @param place BODY, STUD, BAR, SHUNT_BODY, CONTACTOR_BODY, ROOM, or LOOSE where a person carries it from spot to spot
 * @param cell cell number; of a bar the lower of its two; 0 where the place belongs to none
 * @param positive for a stud, whether it is the positive one
 * @param chip what converts it
 * @param insulatedVolts what the bead's insulation bears, V; 0 for a bare one
 * @param uncertaintyKelvin expanded uncertainty of the whole chain, K
 * @param lagSeconds time constant of the bead on its place, s
 * @param periodNanos time between readings
 */
public record Probe(
        String name,
        Role place,
        int cell,
        boolean positive,
        ProbeChip chip,
        double insulatedVolts,
        double uncertaintyKelvin,
        double lagSeconds,
        long periodNanos) {
    /** On an MCP9601. */
    public Probe(String name, Role place, int cell, boolean positive, int bus, int address, double uncertaintyKelvin,
            double lagSeconds, long periodNanos) {
        this(name, place, cell, positive, new ProbeChip.Mcp9601(bus, address), 0, uncertaintyKelvin, lagSeconds, periodNanos);
    }

    /** I2C bus of its MCP9601. */
    public int bus() {
        return mcp9601().bus();
    }

    /** I2C address of its MCP9601. */
    public int address() {
        return mcp9601().address();
    }

    private ProbeChip.Mcp9601 mcp9601() {
        return switch (chip) {
            case ProbeChip.Mcp9601 own -> own;
            case ProbeChip.Max31856 _, ProbeChip.Max31855 _ -> throw new IllegalStateException(chip.chip() + " is no I2C chip");
        };
    }
}
