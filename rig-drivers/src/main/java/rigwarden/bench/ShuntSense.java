package rigwarden.bench;

import java.util.Optional;
import rigwarden.chip.ina228.Ina228State;

/** The shunt's chip and its channels. */
interface ShuntSense {
    void read(long scan);

    /** Last in a scan, because it may wait for the chip. */
    void readClock();

    /** What its driver remembers; nothing where the chip's driver needs none. */
    Optional<Ina228State> state();
}
