package rigwarden.kernel;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.StandardProtocolFamily;
import java.net.UnixDomainSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.SocketChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;

/**
 * QEMU's arm64 machine {@code virt} with the board's two disks, on any processor. What the board says comes out at once, with the time since it
 * was switched on; what it asks for is done at the machine's monitor. It is switched off by force when it takes too long.
 */
final class GuestBoard {
    /** A line of the board that begins so asks for a command of the monitor. */
    static final String ASK = "ask: ";
    private static final long LONGEST_SECONDS = 420;

    private final Path image;
    private final Path program;
    private final Path trace;
    private final List<String> said = new ArrayList<>();

    /**
     * A board that is off.
     *
     * @param image folder of kernel, initrd.gz and root.img
     * @param program the disk with what it runs
     * @param trace where the machine writes every change of a line, as its controller drives it
     */
    GuestBoard(Path image, Path program, Path trace) {
        this.image = image;
        this.program = program;
        this.trace = trace;
    }

    /** Runs it until it switches itself off, or for seven minutes; what it said. */
    List<String> run() throws IOException, InterruptedException {
        Path monitor = Files.createTempDirectory("board").resolve("m");
        long began = System.nanoTime();
        Process machine = new ProcessBuilder(command(monitor)).redirectErrorStream(true).start();
        machine.getOutputStream().close();
        Thread end = Thread.ofVirtual().start(() -> endLate(machine));
        try (BufferedReader reader = machine.inputReader(StandardCharsets.UTF_8)) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                said.add(line);
                System.out.printf("%6.1f s  %s%n", (System.nanoTime() - began) * 1e-9, line);
                if (line.startsWith(ASK)) {
                    tell(monitor, line.substring(ASK.length()));
                }
            }
        } finally {
            machine.destroyForcibly().waitFor();
            end.interrupt();
            Files.deleteIfExists(monitor);
            Files.delete(monitor.getParent());
        }
        return said;
    }

    private static void endLate(Process machine) {
        try {
            if (!machine.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS)) {
                machine.destroyForcibly();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private List<String> command(Path monitor) {
        return Stream.of("qemu-system-aarch64 -M virt -cpu cortex-a72 -smp 2 -m 1024 -accel tcg,thread=multi -nic none -display none -no-reboot"
                        + " -serial stdio -append console=ttyAMA0~quiet~panic=-1"
                        + " -device virtio-blk-device,drive=root -device virtio-blk-device,drive=program"
                        + " -trace pl061_set_output -trace pl061_input_change",
                "-monitor unix:" + monitor + ",server=on,wait=off", "-D " + trace, "-kernel " + image.resolve("kernel"),
                "-initrd " + image.resolve("initrd.gz"),
                "-drive file=" + image.resolve("root.img") + ",format=raw,if=none,id=root,snapshot=on",
                "-drive file=" + program + ",format=raw,if=none,id=program,readonly=on")
                .flatMap(words -> Stream.of(words.split(" "))).map(word -> word.replace('~', ' ')).toList();
    }

    /** The monitor greets first; its prompt after the command says that it was taken. */
    private static void tell(Path monitor, String command) throws IOException {
        try (SocketChannel channel = SocketChannel.open(StandardProtocolFamily.UNIX)) {
            channel.connect(UnixDomainSocketAddress.of(monitor));
            prompt(channel);
            channel.write(ByteBuffer.wrap((command + "\n").getBytes(StandardCharsets.US_ASCII)));
            prompt(channel);
        }
    }

    private static void prompt(SocketChannel channel) throws IOException {
        ByteBuffer buffer = ByteBuffer.allocate(4096);
        StringBuilder heard = new StringBuilder();
        while (!heard.toString().endsWith("(qemu) ") && channel.read(buffer) >= 0) {
            buffer.flip();
            heard.append(StandardCharsets.US_ASCII.decode(buffer));
            buffer.clear();
        }
    }
}
