package rigwarden.kernel;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;

/** One opening of {@code /dev/spidevB.S}, as Linux' spidev answers it (uapi/linux/spi/spidev.h). */
final class SpiDevNode implements OpenNode {
    private static final int MAGIC = 'k';
    private static final int MESSAGE = 0;
    private static final int MODE = 1;
    private static final int LEAST_BIT_FIRST = 2;
    private static final int BITS = 3;
    private static final int HERTZ = 4;
    private static final int MODE_32 = 5;
    private static final int TRANSFER = 32;
    private static final int TO_DRIVER = 1;
    private static final int EINVAL = 22;
    private static final int ENOTTY = 25;
    private static final int EREMOTEIO = 121;

    private final SpiWires wires;

    SpiDevNode(SpiWires wires) {
        this.wires = wires;
    }

    @Override
    public int read(byte[] into) {
        return -EINVAL;
    }

    @Override
    public int write(byte[] bytes) {
        return -EINVAL;
    }

    /** A number holds its direction, the size of what the argument points to, a letter and an index. */
    @Override
    public Ioctl.Answer ioctl(Ioctl asked) {
        int index = asked.command() & 0xFF;
        int size = asked.command() >> 16 & 0x3FFF;
        if ((asked.command() >> 8 & 0xFF) != MAGIC || index > MODE_32) {
            return new Ioctl.Refused(ENOTTY);
        }
        if (index == MESSAGE) {
            return message(asked, size);
        }
        return asked.command() >>> 30 == TO_DRIVER ? set(asked, index, size) : get(asked, index, size);
    }

    private Ioctl.Answer set(Ioctl asked, int index, int size) {
        if (asked.given().limit() < size) {
            return new Ioctl.Wanted(List.of(new Ioctl.Span(asked.argument(), size)), List.of());
        }
        int value = size == 1 ? asked.given().get(0) & 0xFF : asked.given().getInt(0);
        switch (index) {
            case MODE, MODE_32 -> wires.mode(value);
            case HERTZ -> wires.hertz(value);
            case BITS -> {
                if (value != 0 && value != Byte.SIZE) {
                    return new Ioctl.Refused(EINVAL);
                }
            }
            case LEAST_BIT_FIRST -> {
                if (value != 0) {
                    return new Ioctl.Refused(EINVAL);
                }
            }
            default -> {
                return new Ioctl.Refused(ENOTTY);
            }
        }
        return new Ioctl.Done(0, new byte[0]);
    }

    private Ioctl.Answer get(Ioctl asked, int index, int size) {
        if (asked.room() < size) {
            return new Ioctl.Wanted(List.of(), List.of(new Ioctl.Span(asked.argument(), size)));
        }
        int value = switch (index) {
            case MODE, MODE_32 -> wires.mode();
            case HERTZ -> wires.hertz();
            case BITS -> Byte.SIZE;
            default -> 0;
        };
        ByteBuffer out = ByteBuffer.allocate(Integer.BYTES).order(asked.given().order()).putInt(value);
        byte[] bytes = new byte[size];
        out.get(0, bytes);
        return new Ioctl.Done(0, bytes);
    }

    private Ioctl.Answer message(Ioctl asked, int size) {
        ByteBuffer given = asked.given();
        List<Ioctl.Span> in = new ArrayList<>(List.of(new Ioctl.Span(asked.argument(), size)));
        if (given.limit() < size) {
            return new Ioctl.Wanted(in, List.of());
        }
        List<Ioctl.Span> out = new ArrayList<>();
        for (int at = 0; at < size; at += TRANSFER) {
            int length = given.getInt(at + 16);
            if (given.getLong(at) != 0) {
                in.add(new Ioctl.Span(given.getLong(at), length));
            }
            if (given.getLong(at + 8) != 0) {
                out.add(new Ioctl.Span(given.getLong(at + 8), length));
            }
        }
        if (given.limit() < total(in) || asked.room() < total(out)) {
            return new Ioctl.Wanted(in, out);
        }
        return wires.fails() ? new Ioctl.Refused(EREMOTEIO) : transferred(given, size);
    }

    private static long total(List<Ioctl.Span> spans) {
        return spans.stream().mapToLong(Ioctl.Span::length).sum();
    }

    private Ioctl.Answer transferred(ByteBuffer given, int size) {
        ByteArrayOutputStream got = new ByteArrayOutputStream();
        int count = 0;
        given.position(size);
        for (int at = 0; at < size; at += TRANSFER) {
            byte[] sent = new byte[given.getInt(at + 16)];
            if (given.getLong(at) != 0) {
                given.get(sent);
            }
            byte[] answer = wires.exchanged(sent);
            if (given.getLong(at + 8) != 0) {
                got.writeBytes(answer);
            }
            count += sent.length;
        }
        return new Ioctl.Done(count, got.toByteArray());
    }
}
