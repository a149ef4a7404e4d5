package rigwarden.emulated;

import com.pi4j.exception.Pi4JException;
import com.pi4j.io.i2c.I2C;
import com.pi4j.io.i2c.I2CBus;
import java.io.IOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.function.UnaryOperator;
import java.util.stream.IntStream;

/**
 * One I2C bus as the kernel's character device and Pi4J's linuxfs plugin 3.0.3 present it. The plugin remembers the
 * slave address before the select succeeds; the kernel keeps the address of the last select that did. Plain transfers
 * go to the kernel's address, combined ones carry their own.
 */
final class EmulatedI2cBus implements I2CBus {
    private static final int ADDRESSES = 128;
    private static final int NONE_YET = -1;

    final Traffic traffic;
    private final int bus;
    private final I2cTarget[] chips = new I2cTarget[ADDRESSES];
    private final boolean[] held = new boolean[ADDRESSES];
    private final Wire straight = new StraightWire(chips);
    private Wire wire = straight;
    private Optional<WireUpsets> upsets = Optional.empty();
    private int remembered = NONE_YET;
    private int selected = NONE_YET;

    EmulatedI2cBus(int bus, Traffic traffic) {
        this.bus = bus;
        this.traffic = traffic;
    }

    static Pi4JException absent(int bus) {
        return new Pi4JException("Devfs validation failed for I2C bus " + bus + ": path '/dev/i2c-" + bus
                + "' does not exist.");
    }

    void put(int address, I2cTarget chip) {
        if (chips[address] != null) {
            throw new IllegalStateException("I2C bus " + bus + " has a chip at address " + address + " already");
        }
        chips[address] = chip;
    }

    /** Lets another chip answer at an address: the same one with a fault. */
    void replace(int address, I2cTarget chip) {
        chips[address] = chip;
    }

    /** Lets something meddle with what this bus carries, over whatever meddles already. */
    void meddle(UnaryOperator<Wire> more) {
        wire = more.apply(wire);
    }

    /** Takes over what meddles with another bus, in the state in which it is. */
    void meddleLike(EmulatedI2cBus other, VirtualClock clock) {
        wire = other.wire.onto(straight, clock);
    }

    /** Where chips are. */
    List<Integer> addresses() {
        return IntStream.range(0, ADDRESSES).filter(a -> chips[a] != null).boxed().toList();
    }

    void upset(WireUpsets by) {
        upsets = Optional.of(by);
    }

    private WireUpsets.Upset upset() {
        return upsets.isPresent() ? upsets.get().next() : WireUpsets.Upset.NONE;
    }

    void hold(int address, boolean holds) {
        held[address] = holds;
    }

    /** A write transfer of the character device; returns the length or throws. */
    int write(int device, byte[] bytes, int offset, int length) {
        select(device, "action");
        WireUpsets.Upset upset = upset();
        byte[] sent = bytes;
        int from = offset;
        if (upset == WireUpsets.Upset.BIT_TURNED) {
            sent = Arrays.copyOfRange(bytes, offset, offset + length);
            from = 0;
            upsets.orElseThrow().turn(sent, 0, length);
        }
        boolean lost = selected == NONE_YET || upset == WireUpsets.Upset.NOT_ACKNOWLEDGED;
        if (lost || wire.written(selected, sent, from, length) < length) {
            throw failure("action", device, Errno.REMOTE_IO);
        }
        return length;
    }

    /** A read transfer of the character device; returns what the chip delivered or throws. */
    int read(int device, byte[] into, int offset, int length) {
        select(device, "action");
        WireUpsets.Upset upset = upset();
        boolean lost = selected == NONE_YET || upset == WireUpsets.Upset.NOT_ACKNOWLEDGED;
        int count = lost ? -1 : wire.read(selected, into, offset, length);
        if (count < 0) {
            throw failure("action", device, Errno.REMOTE_IO);
        }
        if (upset == WireUpsets.Upset.BIT_TURNED) {
            upsets.orElseThrow().turn(into, offset, count);
        }
        return count;
    }

    /**
     * Write, repeated start, read. A master cannot see that a chip has stopped driving: the rest is the idle bus, all
     * ones, and the count returned is always the length asked for.
     */
    int writeRead(int device, byte[] pointer, int pointerLength, byte[] into, int offset, int length) {
        select(device, "ioctl");
        WireUpsets.Upset upset = upset();
        boolean lost = upset == WireUpsets.Upset.NOT_ACKNOWLEDGED;
        if (lost || wire.written(device, pointer, 0, pointerLength) < pointerLength) {
            throw failure("ioctl", device, Errno.REMOTE_IO);
        }
        int count = wire.read(device, into, offset, length);
        if (count < 0) {
            throw failure("ioctl", device, Errno.REMOTE_IO);
        }
        for (int i = count; i < length; i++) {
            into[offset + i] = (byte) 0xFF;
        }
        if (upset == WireUpsets.Upset.BIT_TURNED) {
            upsets.orElseThrow().turn(into, offset, length);
        }
        return length;
    }

    @Override
    public <R> R execute(I2C i2c, Callable<R> action) {
        select(i2c.device(), "action");
        try {
            return action.call();
        } catch (Exception e) {
            throw new Pi4JException(text("action", i2c.device()), e);
        }
    }

    private void select(int device, String what) {
        if (remembered == device) {
            return;
        }
        remembered = device;
        if (held[device]) {
            throw failure(what, device, Errno.BUSY);
        }
        selected = device;
    }

    /** The plugin hands the error's number on where it made the call itself, and only its words for a plain transfer. */
    private Pi4JException failure(String what, int device, Errno errno) {
        IOException cause = what.equals("ioctl") || errno == Errno.BUSY ? new NumberedException(errno) : new IOException(errno.words());
        return new Pi4JException(text("action", device), new Pi4JException(text(what, device), cause));
    }

    private String text(String what, int device) {
        return "Failed to execute " + what + " for device " + device + " on bus " + bus;
    }
}
