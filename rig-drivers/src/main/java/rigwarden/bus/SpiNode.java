package rigwarden.bus;

import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.io.spi.Spi;
import com.pi4j.io.spi.SpiMode;
import java.util.Arrays;
import java.util.Optional;
import rigwarden.warden.Failure;

/**
 * One SPI device node, {@code /dev/spidevB.S}: a bus, one of its selects, one clock and one mode. One chip hangs on the
 * node's own select, or several on select lines of their own, and then nothing on the node's. Not for more than one
 * thread.
 *
 * <p>The library reports a failed transfer by −1 and leaves the buffer as it was, so that the buffer is filled with a
 * pattern first, each time the complement of the last, and one that still has it is a failure. It also only ever adds
 * mode bits: a node that had mode 1 since the machine's start cannot be brought back to mode 0.
 */
public final class SpiNode implements AutoCloseable {
    static final int LONGEST = 24;
    /** Two bits that are never set in a frame of a MAX31855 are set in it. */
    private static final byte[] PATTERN = {(byte) 0xA5, 0x5A, (byte) 0xC3, 0x3C};

    private final Spi wire;
    private final String name;
    private final byte[] got = new byte[LONGEST];
    private final byte[] pattern = new byte[LONGEST];
    /** A select that could not be let go: whatever else spoke would be heard by two chips. */
    private Optional<DigitalOutput> held = Optional.empty();

    private SpiNode(Spi wire, String name) {
        this.wire = wire;
        this.name = name;
        for (int i = 0; i < LONGEST; i++) {
            pattern[i] = PATTERN[i % PATTERN.length];
        }
    }

    /**
     * Opens a node; nothing is sent.
     *
     * @param context the Pi4J context, which this class neither makes nor shuts down
     * @param bus number of the SPI bus
     * @param select number of the select, 0…2
     * @param mode of clock and phase, 0…3
     * @param hertz clock
     * @throws BusFailure when the node cannot be opened, or the select is taken: the library knows a select once,
     *     whatever the bus
     */
    public static SpiNode at(Context context, int bus, int select, int mode, int hertz) throws BusFailure {
        String name = "SPI bus " + bus + ", select " + select;
        try {
            Spi wire = context.create(Spi.newConfigBuilder(context)
                    .id("spi-" + bus + "-" + select)
                    .bus(bus)
                    .channel(select)
                    .mode(SpiMode.getByNumber(mode))
                    .baud(hertz)
                    .build());
            return new SpiNode(wire, name);
        } catch (RuntimeException e) {
            throw new BusFailure(Failure.NO_ANSWER, name + ": not opened: " + e.getMessage());
        }
    }

    /** The chip on the node's own select. */
    public SpiChip chip() {
        return new SpiChip(this, Optional.empty(), name);
    }

    /**
     * A chip on a select line of its own, which is claimed high: not selected.
     *
     * @param line of the controller
     * @throws BusFailure when the line cannot be claimed
     */
    public SpiChip chip(Context context, int line) throws BusFailure {
        String place = name + ", line " + line;
        try {
            DigitalOutput select = context.create(DigitalOutput.newConfigBuilder(context)
                    .id("select-" + line)
                    .address(line)
                    .initial(DigitalState.HIGH)
                    .shutdown(DigitalState.HIGH)
                    .build());
            return new SpiChip(this, Optional.of(select), place);
        } catch (RuntimeException e) {
            throw new BusFailure(Failure.NO_ANSWER, place + ": not claimed: " + e.getMessage());
        }
    }

    /** One whole transaction: select, transfer, and let go whatever happened. Returns what came back, until the next one. */
    byte[] exchange(Optional<DigitalOutput> select, byte[] sent, int length, String chip) throws BusFailure {
        release(chip);
        for (int i = 0; i < LONGEST; i++) {
            pattern[i] = (byte) ~pattern[i];
        }
        System.arraycopy(pattern, 0, got, 0, LONGEST);
        int count;
        held = select;
        try {
            select.ifPresent(line -> line.state(DigitalState.LOW));
            count = wire.transfer(sent, 0, got, 0, length);
        } catch (RuntimeException e) {
            throw failure(chip, "no transfer: " + e.getMessage());
        } finally {
            letGo();
        }
        release(chip);
        if (count != length) {
            throw failure(chip, count + " of " + length + " bytes transferred");
        }
        if (Arrays.equals(got, 0, length, pattern, 0, length)) {
            throw failure(chip, "the transfer left its buffer as it was");
        }
        return got;
    }

    private void letGo() {
        try {
            held.ifPresent(line -> line.state(DigitalState.HIGH));
            held = Optional.empty();
        } catch (RuntimeException e) {
            // still held: the next call of release tries again and says so
            return;
        }
    }

    private void release(String chip) throws BusFailure {
        if (held.isPresent()) {
            letGo();
        }
        if (held.isPresent()) {
            throw failure(chip, "a select line of this node cannot be let go");
        }
    }

    private static BusFailure failure(String chip, String what) {
        return new BusFailure(Failure.NO_ANSWER, chip + ": " + what);
    }

    @Override
    public void close() {
        wire.close();
    }
}
