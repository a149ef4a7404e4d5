package rigwarden.chip.mcp23017;

import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.warden.Failure;

/**
 * The device: five register reads a scan and one write of a register that does nothing, since a chip that hangs answers
 * as it did; and for a change of outputs one write and its reading back. After a
 * brown-out every pin is an input, so that coils fall by their pull-downs: what is found lost is made safe, all outputs low,
 * and nothing is raised again by the driver.
 */
public final class Mcp23017 {
    private final Chip chip;
    private final int outputs;
    private int latch;

    /**
     * Takes up a device. Nothing is sent.
     *
     * @param outputs bits of the pins that drive something
     * @param latch bits of those that were last written high; 0 for a device that is to be configured
     */
    public Mcp23017(Chip chip, int outputs, int latch) {
        this.chip = chip;
        this.outputs = outputs;
        this.latch = latch;
    }

    /**
     * Writes all outputs low and only then makes them outputs, and reads back. The chip has no identity: that ten
     * registers keep what is written is all that can be checked.
     *
     * @throws BusFailure when the chip is silent or does not keep its configuration
     */
    public void configure() throws BusFailure {
        latch = 0;
        chip.writeByte(Mcp23017Registers.IOCON_IN_OTHER_BANK, 0);
        chip.writeWord(Mcp23017Registers.IOCON, 0);
        chip.writeWord(Mcp23017Registers.OLAT, 0);
        chip.writeWord(Mcp23017Registers.IPOL, 0);
        chip.writeWord(Mcp23017Registers.GPINTEN, 0);
        chip.writeWord(Mcp23017Registers.GPPU, 0);
        chip.writeWord(Mcp23017Registers.IODIR, directions());
        keeps(chip.read(Mcp23017Registers.GPIO, 4));
    }

    /**
     * Reads all pins and whether everything is as written.
     *
     * @return bits of the pins that are high
     * @throws BusFailure CONFIGURATION_LOST after a brown-out, with all outputs made low; NONSENSE when an output pin is
     *     not where its latch is, or the chip takes no writes; NO_ANSWER
     */
    public int read() throws BusFailure {
        long pinsAndLatch;
        try {
            pinsAndLatch = kept();
        } catch (BusFailure once) {
            if (once.why() != Failure.CONFIGURATION_LOST) {
                throw once;
            }
            pinsAndLatch = keptAfterAll();
        }
        takesWrites();
        int pins = (int) (pinsAndLatch >> 16);
        if (((pins ^ latch) & outputs) != 0) {
            throw new BusFailure(Failure.NONSENSE, chip + ": outputs read " + Integer.toHexString(pins & outputs)
                    + "h, written " + Integer.toHexString(latch) + "h");
        }
        return pins;
    }

    /**
     * Writes all outputs and reads back the latch and the directions.
     *
     * @param high bits of the outputs that shall be high
     * @throws BusFailure when the chip did not take it
     */
    public void write(int high) throws BusFailure {
        chip.writeWord(Mcp23017Registers.OLAT, high & outputs);
        latch = high & outputs;
        compare("OLAT", chip.readWord(Mcp23017Registers.OLAT), latch);
        compare("IODIR", chip.readWord(Mcp23017Registers.IODIR), directions());
    }

    /** Bits of the outputs that were last written high. */
    public int latch() {
        return latch;
    }

    private long kept() throws BusFailure {
        long pinsAndLatch = chip.read(Mcp23017Registers.GPIO, 4);
        keeps(pinsAndLatch);
        return pinsAndLatch;
    }

    private void takesWrites() throws BusFailure {
        int other = ~chip.readWord(Mcp23017Registers.DEFVAL) & 0xFFFF;
        chip.writeWord(Mcp23017Registers.DEFVAL, other);
        if (chip.readWord(Mcp23017Registers.DEFVAL) != other) {
            throw new BusFailure(Failure.NONSENSE, chip + ": DEFVAL does not keep what is written");
        }
    }

    /** One bit that was turned on the wire must not let the coils fall: all is read once more. */
    private long keptAfterAll() throws BusFailure {
        try {
            return kept();
        } catch (BusFailure lost) {
            if (lost.why() == Failure.CONFIGURATION_LOST) {
                configure();
            }
            throw lost;
        }
    }

    private int directions() {
        return ~outputs & 0xFFFF;
    }

    private void keeps(long pinsAndLatch) throws BusFailure {
        long directions = chip.read(Mcp23017Registers.IODIR, 4);
        long control = chip.read(Mcp23017Registers.IOCON, 4);
        compare("IODIR", (int) (directions >> 16), directions());
        compare("IPOL", (int) (directions & 0xFFFF), 0);
        compare("IOCON", (int) (control >> 16), 0);
        compare("GPPU", (int) (control & 0xFFFF), 0);
        compare("OLAT", (int) (pinsAndLatch & 0xFFFF), latch);
    }

    private void compare(String register, int found, int written) throws BusFailure {
        if (found != written) {
            throw new BusFailure(Failure.CONFIGURATION_LOST, chip + ": " + register + " reads "
                    + Integer.toHexString(found) + "h, written " + Integer.toHexString(written) + "h");
        }
    }
}
