package rigwarden.kernel;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.Map;
import java.util.function.Supplier;

/**
 * A character device of this kernel whose calls are answered here, by a thread of its own. The kernel's module cuse hands
 * each call on as one message on {@code /dev/cuse} (Linux, uapi/linux/fuse.h, protocol 7): a plain file channel is all
 * that is needed, no library and no program in C. An ioctl's memory is fetched by asking for it: the answer to the first
 * message is a list of places, the kernel copies them and asks again.
 */
final class CuseDevice {
    private static final int INIT = 4096;
    private static final int OPEN = 14;
    private static final int READ = 15;
    private static final int WRITE = 16;
    private static final int RELEASE = 18;
    private static final int INTERRUPT = 36;
    private static final int IOCTL = 39;
    private static final int IN_HEADER = 40;
    private static final int OUT_HEADER = 16;
    private static final int UNRESTRICTED_IOCTL = 1;
    private static final int RETRY = 1 << 2;
    private static final int MOST = 1 << 16;
    private static final int ENOSYS = 38;
    private static final int SPARE = 40;

    private final FileChannel channel;
    private final ByteBuffer question = ByteBuffer.allocateDirect(2 * MOST).order(ByteOrder.nativeOrder());
    private final ByteBuffer reply = ByteBuffer.allocateDirect(2 * MOST).order(ByteOrder.nativeOrder());
    private final Supplier<OpenNode> opened;
    private final Map<Long, OpenNode> nodes = new HashMap<>();
    private long lastHandle;

    private CuseDevice(FileChannel channel, Supplier<OpenNode> opened) {
        this.channel = channel;
        this.opened = opened;
    }

    /**
     * Makes a device; its node is there some moments later.
     *
     * @param name of the node below {@code /dev}
     * @param opened what answers, made anew for each opening
     */
    static void serve(String name, Supplier<OpenNode> opened) throws IOException {
        FileChannel channel = FileChannel.open(Path.of("/dev/cuse"), StandardOpenOption.READ, StandardOpenOption.WRITE);
        CuseDevice device = new CuseDevice(channel, opened);
        device.introduce(name);
        Thread thread = new Thread(device::answerAll, "cuse " + name);
        thread.setDaemon(true);
        thread.start();
    }

    /**
     * Ends every device. A process cannot end by itself while it holds one of its own nodes open: closing the node waits
     * for an answer from a thread that is gone.
     */
    static void endAll() throws IOException {
        try (DirectoryStream<Path> devices = Files.newDirectoryStream(Path.of("/sys/class/cuse"))) {
            for (Path device : devices) {
                Files.writeString(device.resolve("abort"), "1");
            }
        }
    }

    private void introduce(String name) throws IOException {
        next();
        int major = question.getInt(IN_HEADER);
        int minor = question.getInt(IN_HEADER + 4);
        if (question.getInt(4) != INIT) {
            throw new IOException("cuse began with message " + question.getInt(4));
        }
        begin();
        reply.putInt(major).putInt(minor).putInt(0).putInt(UNRESTRICTED_IOCTL).putInt(MOST).putInt(MOST).putInt(0).putInt(0);
        reply.put(new byte[SPARE]);
        reply.put(("DEVNAME=" + name + "\0").getBytes(StandardCharsets.US_ASCII));
        send(0);
    }

    /** Until the device is ended; whoever uses it then is told so by the kernel. */
    private void answerAll() {
        try {
            while (true) {
                next();
                answer();
            }
        } catch (IOException ended) {
            System.out.println(Thread.currentThread().getName() + " ended: " + ended.getMessage());
        }
    }

    private void next() throws IOException {
        question.clear();
        channel.read(question);
        question.flip();
    }

    private void answer() throws IOException {
        begin();
        switch (question.getInt(4)) {
            case OPEN -> {
                nodes.put(++lastHandle, opened.get());
                reply.putLong(lastHandle).putInt(0).putInt(0);
                send(0);
            }
            case READ -> {
                byte[] into = new byte[question.getInt(IN_HEADER + 16)];
                int count = node().read(into);
                reply.put(into, 0, Math.max(0, count));
                send(Math.min(0, count));
            }
            case WRITE -> {
                byte[] bytes = new byte[question.getInt(IN_HEADER + 16)];
                question.get(IN_HEADER + 40, bytes);
                int count = node().write(bytes);
                if (count >= 0) {
                    reply.putInt(count).putInt(0);
                }
                send(Math.min(0, count));
            }
            case IOCTL -> ioctl();
            case RELEASE -> {
                nodes.remove(question.getLong(IN_HEADER));
                send(0);
            }
            case INTERRUPT -> { }
            default -> send(-ENOSYS);
        }
    }

    private void ioctl() throws IOException {
        byte[] given = new byte[question.getInt(IN_HEADER + 24)];
        question.get(IN_HEADER + 32, given);
        Ioctl asked = new Ioctl(question.getInt(IN_HEADER + 12), question.getLong(IN_HEADER + 16),
                ByteBuffer.wrap(given).order(ByteOrder.nativeOrder()), question.getInt(IN_HEADER + 28));
        switch (node().ioctl(asked)) {
            case Ioctl.Wanted wanted -> {
                reply.putInt(0).putInt(RETRY).putInt(wanted.in().size()).putInt(wanted.out().size());
                wanted.in().forEach(span -> reply.putLong(span.address()).putLong(span.length()));
                wanted.out().forEach(span -> reply.putLong(span.address()).putLong(span.length()));
                send(0);
            }
            case Ioctl.Done done -> {
                reply.putInt(done.result()).putInt(0).putInt(0).putInt(0).put(done.out());
                send(0);
            }
            case Ioctl.Refused refused -> send(-refused.errno());
        }
    }

    private OpenNode node() {
        return nodes.get(question.getLong(IN_HEADER));
    }

    private void begin() {
        reply.clear();
        reply.position(OUT_HEADER);
    }

    private void send(int error) throws IOException {
        if (error < 0) {
            reply.position(OUT_HEADER);
        }
        reply.putInt(0, reply.position()).putInt(4, error).putLong(8, question.getLong(8));
        reply.flip();
        channel.write(reply);
    }
}
