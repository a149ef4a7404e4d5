package rigwarden.kernel;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import rigwarden.emulated.I2cTarget;

/**
 * One opening of {@code /dev/i2c-N}, as Linux' i2c-dev answers it (uapi/linux/i2c-dev.h, i2c.h; Documentation/i2c/dev-interface):
 * the address of the last select that succeeded belongs to the opening, combined transfers carry their own, and what is
 * not acknowledged is EREMOTEIO.
 */
final class I2cNode implements OpenNode {
    private static final int SLAVE = 0x703;
    private static final int FUNCTIONS = 0x705;
    private static final int COMBINED = 0x707;
    private static final int PLAIN_I2C = 1;
    private static final int LAST_ADDRESS = 0x7F;
    private static final int HEAD = 16;
    private static final int MESSAGE = 16;
    private static final int MOST_MESSAGES = 42;
    private static final int EBUSY = 16;
    private static final int EINVAL = 22;
    private static final int ENOTTY = 25;
    private static final int EREMOTEIO = 121;

    /** One part of a combined transfer. */
    private record Part(int address, boolean read, int length, long memory) {}

    private final I2cWires wires;
    private int selected;

    I2cNode(I2cWires wires) {
        this.wires = wires;
    }

    @Override
    public int read(byte[] into) {
        return wires.chip(selected).map(chip -> chip.read(into, 0, into.length)).filter(count -> count >= 0)
                .map(count -> filled(into, count)).orElse(-EREMOTEIO);
    }

    @Override
    public int write(byte[] bytes) {
        return wires.chip(selected).map(chip -> chip.written(bytes, 0, bytes.length)).filter(count -> count == bytes.length)
                .orElse(-EREMOTEIO);
    }

    @Override
    public Ioctl.Answer ioctl(Ioctl asked) {
        return switch (asked.command()) {
            case SLAVE -> select(asked.argument());
            case FUNCTIONS -> functions(asked);
            case COMBINED -> combined(asked);
            default -> new Ioctl.Refused(ENOTTY);
        };
    }

    private Ioctl.Answer select(long address) {
        if (address < 0 || address > LAST_ADDRESS) {
            return new Ioctl.Refused(EINVAL);
        }
        if (wires.held((int) address)) {
            return new Ioctl.Refused(EBUSY);
        }
        selected = (int) address;
        return new Ioctl.Done(0, new byte[0]);
    }

    private static Ioctl.Answer functions(Ioctl asked) {
        if (asked.room() == 0) {
            return new Ioctl.Wanted(List.of(), List.of(new Ioctl.Span(asked.argument(), Long.BYTES)));
        }
        return new Ioctl.Done(0, ByteBuffer.allocate(Long.BYTES).order(asked.given().order()).putLong(PLAIN_I2C).array());
    }

    private Ioctl.Answer combined(Ioctl asked) {
        List<Ioctl.Span> in = new ArrayList<>(List.of(new Ioctl.Span(asked.argument(), HEAD)));
        ByteBuffer given = asked.given();
        if (given.limit() < HEAD) {
            return new Ioctl.Wanted(in, List.of());
        }
        int count = given.getInt(8);
        if (count < 1 || count > MOST_MESSAGES) {
            return new Ioctl.Refused(EINVAL);
        }
        in.add(new Ioctl.Span(given.getLong(0), (long) count * MESSAGE));
        if (given.limit() < HEAD + count * MESSAGE) {
            return new Ioctl.Wanted(in, List.of());
        }
        List<Part> parts = parts(given, count);
        parts.stream().filter(part -> !part.read()).forEach(part -> in.add(new Ioctl.Span(part.memory(), part.length())));
        List<Ioctl.Span> out = parts.stream().filter(Part::read).map(part -> new Ioctl.Span(part.memory(), part.length())).toList();
        long whole = in.stream().mapToLong(Ioctl.Span::length).sum();
        if (given.limit() < whole || asked.room() < out.stream().mapToLong(Ioctl.Span::length).sum()) {
            return new Ioctl.Wanted(in, out);
        }
        return transferred(parts, given.position(HEAD + count * MESSAGE), asked.room());
    }

    private static List<Part> parts(ByteBuffer given, int count) {
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            int at = HEAD + i * MESSAGE;
            parts.add(new Part(given.getShort(at), (given.getShort(at + 2) & 1) != 0, given.getShort(at + 4) & 0xFFFF,
                    given.getLong(at + 8)));
        }
        return parts;
    }

    private Ioctl.Answer transferred(List<Part> parts, ByteBuffer sent, int room) {
        wires.countCombined();
        ByteBuffer got = ByteBuffer.allocate(room);
        for (Part part : parts) {
            byte[] bytes = new byte[part.length()];
            if (!part.read()) {
                sent.get(bytes);
            }
            if (wires.chip(part.address()).filter(chip -> carried(chip, part, bytes)).isEmpty()) {
                return new Ioctl.Refused(EREMOTEIO);
            }
            if (part.read()) {
                got.put(bytes);
            }
        }
        return new Ioctl.Done(parts.size(), got.array());
    }

    private static boolean carried(I2cTarget chip, Part part, byte[] bytes) {
        if (!part.read()) {
            return chip.written(bytes, 0, bytes.length) == bytes.length;
        }
        int count = chip.read(bytes, 0, bytes.length);
        filled(bytes, Math.max(0, count));
        return count >= 0;
    }

    /** A master cannot see that a chip has stopped driving: the rest is the idle bus, all ones. */
    private static int filled(byte[] bytes, int count) {
        Arrays.fill(bytes, count, bytes.length, (byte) 0xFF);
        return bytes.length;
    }
}
