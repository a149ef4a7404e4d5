package rigwarden.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.InputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Sixteen viewers, one of whom never reads, watch a night at the clock's own pace; the loop's worst lateness beside that of a
 * bare loop in a process of its own at the same time. Ten minutes, or {@code -Drigwarden.minutes}; not in the default run.
 */
class ViewersBenchmark {
    private static final long MINUTES = Long.getLong("rigwarden.minutes", 10);
    private static final double MORE_SECONDS = 0.005;
    private static final int SETTLED_SCANS = 100;

    @TempDir
    Path folder;

    @Test
    void the_loop_does_not_notice_who_is_watching() throws Exception {
        try (Night night = Night.paced(folder, 1)) {
            night.waitForScans(SETTLED_SCANS);
            night.forgetLateness();
            Process bare = new ProcessBuilder(Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                            "-XX:+UseSerialGC", "-Xmx64m", "-cp", System.getProperty("java.class.path"),
                            BareLoop.class.getName(), "100000000", Long.toString(60 * MINUTES))
                    .redirectErrorStream(true)
                    .start();
            AtomicLong read = new AtomicLong();
            List<Socket> viewers = watch(night, read);
            bare.waitFor(60 * MINUTES + 60, TimeUnit.SECONDS);
            double bareSeconds = Double.parseDouble(new String(bare.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                    .strip().lines().toList().getLast());
            int left = night.site.viewers();
            for (Socket viewer : viewers) {
                viewer.close();
            }

            System.out.printf("%d min, %d scans: worst lateness %.2f ms (%s), bare loop %.2f ms; %d viewers at the end,"
                            + " %.1f MB read%n", MINUTES, night.scans(), night.worstSeconds() * 1000, night.latenessWords(),
                    bareSeconds * 1000, left, read.get() * 1e-6);
            assertThat(left).as("who never reads is closed, the others stay").isEqualTo(Viewers.MOST - 1);
            assertThat(night.worstSeconds()).isLessThanOrEqualTo(bareSeconds + MORE_SECONDS);
        }
    }

    private static List<Socket> watch(Night night, AtomicLong read) throws Exception {
        List<Socket> viewers = new ArrayList<>();
        for (int i = 0; i < Viewers.MOST; i++) {
            Socket socket = new Socket();
            socket.setReceiveBufferSize(4096);
            socket.connect(new java.net.InetSocketAddress(InetAddress.getLoopbackAddress(), night.site.port()));
            socket.getOutputStream().write("GET /live HTTP/1.1\r\nHost: 127.0.0.1\r\nAccept: text/event-stream\r\n\r\n"
                    .getBytes(StandardCharsets.US_ASCII));
            viewers.add(socket);
            if (i > 0) {
                Thread.ofVirtual().start(() -> drain(socket, read));
            }
        }
        return viewers;
    }

    private static void drain(Socket socket, AtomicLong read) {
        byte[] buffer = new byte[8192];
        try (InputStream in = socket.getInputStream()) {
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                read.addAndGet(n);
            }
        } catch (java.io.IOException _) {
            read.addAndGet(0);
        }
    }
}
