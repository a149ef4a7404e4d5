package rigwarden.emulated;

import java.util.function.UnaryOperator;
import rigwarden.pack.Chance;
import rigwarden.serial.SerialLine;

/**
 * A serial port with an instrument at its other end, answering as jSerialComm 2.11.4 does in semi-blocking mode: a read
 * without data is 0 after the slice, a port whose adapter was pulled reads −1 at once, writes 0, and stays lost until
 * it is closed and opened again with the adapter in place. No real time passes; a slice that ends empty is reported, so
 * that the virtual clock can be moved.
 */
public final class EmulatedLine implements SerialLine {
    private final FarEnd instrument;
    private final Runnable emptySlice;
    private final Chance garble;
    private final Port straight;
    private Port port;
    private LineFault fault = LineFault.HEALTHY;
    private boolean open;
    private boolean lost;

    /** Writes since the line was made. */
    public long writes;

    /** Reads since the line was made. */
    public long reads;

    /** A line whose empty slices take no time at all. */
    public EmulatedLine(FarEnd instrument) {
        this(instrument, () -> {});
    }

    /**
     * A line that tells when a slice has passed.
     *
     * @param emptySlice called for each read that ends without a byte: 100 ms of the virtual clock
     */
    public EmulatedLine(FarEnd instrument, Runnable emptySlice) {
        this(instrument, emptySlice, Chance.of(1, "line", "garbled"));
    }

    private EmulatedLine(FarEnd instrument, Runnable emptySlice, Chance garble) {
        this.instrument = instrument;
        this.emptySlice = emptySlice;
        this.garble = garble;
        straight = new StraightPort(instrument);
        port = straight;
    }

    /** The same line in the same state to another instrument, usually the copy of this one's. */
    public EmulatedLine copy(FarEnd newInstrument, Runnable newEmptySlice) {
        return copy(newInstrument, newEmptySlice, new VirtualClock(0));
    }

    EmulatedLine copy(FarEnd newInstrument, Runnable newEmptySlice, VirtualClock clock) {
        EmulatedLine copy = new EmulatedLine(newInstrument, newEmptySlice, garble.copy());
        copy.port = port.onto(copy.straight, clock);
        copy.fault = fault;
        copy.open = open;
        copy.lost = lost;
        copy.writes = writes;
        copy.reads = reads;
        return copy;
    }

    /** Lets something meddle with what this line carries, over whatever meddles already. */
    void meddle(UnaryOperator<Port> more) {
        port = more.apply(port);
    }

    /** Sets or lifts the fault. The instrument goes on with what it was last told. */
    public void set(LineFault newFault) {
        fault = newFault;
        instrument.deaf(newFault == LineFault.DEAF_BUT_ALIVE);
        if (newFault == LineFault.UNPLUGGED) {
            lost = open;
        }
    }

    @Override
    public boolean open() {
        if (fault == LineFault.UNPLUGGED || open) {
            return false;
        }
        open = true;
        lost = false;
        return true;
    }

    @Override
    public int write(byte[] bytes, int length) {
        writes++;
        if (!open) {
            return -1;
        }
        if (lost) {
            return 0;
        }
        if (fault != LineFault.SILENT) {
            int before = instrument.pending();
            port.send(bytes, length);
            if (fault == LineFault.HALF_ANSWER) {
                instrument.cut(before + (instrument.pending() - before) / 2);
            }
        }
        return length;
    }

    @Override
    public int read(byte[] into) {
        reads++;
        if (!open || lost) {
            return -1;
        }
        if (fault == LineFault.SILENT || port.pending() == 0) {
            emptySlice.run();
            return 0;
        }
        int count = port.take(into);
        if (fault == LineFault.GARBLED) {
            garble(into, count);
        }
        return count;
    }

    @Override
    public void close() {
        open = false;
        lost = false;
    }

    private void garble(byte[] bytes, int count) {
        bytes[0] ^= 0x55;
        for (int i = 1; i < count; i++) {
            if (garble.nextInt(3) == 0) {
                bytes[i] = (byte) garble.nextInt();
            }
        }
    }
}
