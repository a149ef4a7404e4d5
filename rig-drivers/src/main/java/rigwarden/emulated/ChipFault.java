package rigwarden.emulated;

import rigwarden.pack.Chance;

/** How a chip on a bus can be wrong. */
public sealed interface ChipFault {
    /** The faults that need no further word. */
    enum Plain implements ChipFault {
        /** Nothing is wrong. */
        HEALTHY,
        /** The address is not acknowledged; on SPI the chip lets go of the line to the host. */
        NO_ANSWER,
        /** The last byte of each read is not delivered. */
        SHORT_READ,
        /** Everything reads as ones; writes are acknowledged and lost. */
        ALL_ONES,
        /** Each register repeats what it read first after the fault came; writes are acknowledged and lost. */
        STUCK,
        /** The supply dips once: registers go to their reset values, after that the chip works. */
        BROWN_OUT
    }

    /**
     * Each byte read is random.
     *
     * @param chance where the bytes come from
     */
    record Garbage(Chance chance) implements ChipFault {}
}
