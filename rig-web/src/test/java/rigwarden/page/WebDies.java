package rigwarden.page;

import java.io.OutputStream;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A night at the clock's own pace in a process with the launcher's memory, while its web tier is ill used, one way after the
 * other: what {@link WebDiesBenchmark} runs. Prints a line a way: its name, scans, worst lateness in ms, whether current still flows.
 */
public final class WebDies {
    private static final int CLIENTS = 16;
    private static final int STORED_SCANS = 200_000;
    private static final int CHUNK = 1 << 20;
    private static volatile long hoarded;

    private WebDies() {}

    /** Logbook folder, and seconds for each way. */
    public static void main(String[] args) throws Exception {
        Locale.setDefault(Locale.ROOT);
        long seconds = Long.parseLong(args[1]);
        Night.stored(Path.of(args[0]), "one-cell", STORED_SCANS);
        Night night = new Night(Path.of(args[0]), "one-cell", 20_000, 1, scan -> scan);
        night.waitForScans(20_200);
        measured(night, "quiet", seconds, () -> { });
        measured(night, "sixteen ask for charts without end", seconds,
                () -> asking(night, "/trace?buckets=1000", seconds));
        measured(night, "sixteen look closer without end", seconds,
                () -> asking(night, "/trace?from=0&to=1000&buckets=1000", seconds));
        measured(night, "sixteen export a stored run without end", seconds, () -> asking(night, "/runs/1.csv", seconds));
        measured(night, "every handler waits for a request that trickles", seconds, () -> trickling(night, seconds));
        measured(night, "the memory is used up", seconds, () -> hoarding(seconds));
        measured(night, "the server is killed", seconds, night.site::close);
        System.out.println("end");
        Runtime.getRuntime().halt(0);
    }

    private static void measured(Night night, String what, long seconds, Way way) throws Exception {
        Thread.sleep(1000);
        night.forgetLateness();
        long before = night.scans();
        long until = System.nanoTime() + seconds * 1_000_000_000L;
        way.ill();
        while (System.nanoTime() < until) {
            Thread.sleep(100);
        }
        System.out.printf("%s | %d | %.1f | %s%n", what, night.scans() - before, night.worstSeconds() * 1000,
                Math.abs(night.modelAmps()) > 1 ? "flows" : "off");
    }

    /** One way to be ill. */
    private interface Way {
        void ill() throws Exception;
    }

    private static void asking(Night night, String path, long seconds) throws Exception {
        long until = System.nanoTime() + seconds * 1_000_000_000L;
        List<Thread> clients = new ArrayList<>();
        for (int i = 0; i < CLIENTS; i++) {
            clients.add(Thread.ofPlatform().daemon().start(() -> {
                try (HttpClient client = HttpClient.newHttpClient()) {
                    while (System.nanoTime() < until) {
                        client.send(HttpRequest.newBuilder(URI.create(night.url() + path)).build(),
                                HttpResponse.BodyHandlers.discarding());
                    }
                } catch (java.io.IOException | InterruptedException _) {
                    Thread.currentThread().interrupt();
                }
            }));
        }
        for (Thread client : clients) {
            client.join();
        }
    }

    private static void trickling(Night night, long seconds) throws Exception {
        List<Socket> sockets = new ArrayList<>();
        for (int i = 0; i < 3 * CLIENTS; i++) {
            Socket socket = new Socket(InetAddress.getLoopbackAddress(), night.site.port());
            socket.getOutputStream().write(("POST /sign-in HTTP/1.1\r\nHost: 127.0.0.1:" + night.site.port() + "\r\nOrigin: "
                    + night.url() + "\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 60000\r\n\r\n")
                    .getBytes(StandardCharsets.US_ASCII));
            sockets.add(socket);
        }
        for (long second = 0; second < seconds; second++) {
            for (Socket socket : sockets) {
                trickle(socket);
            }
            Thread.sleep(1000);
        }
        for (Socket socket : sockets) {
            socket.close();
        }
    }

    private static void trickle(Socket socket) {
        try {
            OutputStream out = socket.getOutputStream();
            out.write('x');
            out.flush();
        } catch (java.io.IOException _) {
            Thread.onSpinWait();
        }
    }

    /** Takes memory until there is no more, lets go of it, and begins again. */
    private static void hoarding(long seconds) throws InterruptedException {
        long until = System.nanoTime() + seconds * 1_000_000_000L;
        Thread hoarder = Thread.ofPlatform().daemon().start(() -> {
            while (System.nanoTime() < until) {
                hoard();
            }
        });
        hoarder.join();
    }

    private static void hoard() {
        long taken = 0;
        try {
            List<byte[]> chunks = new ArrayList<>();
            while (true) {
                chunks.add(new byte[CHUNK]);
                taken += chunks.getLast().length;
            }
        } catch (OutOfMemoryError _) {
            hoarded = Math.max(hoarded, taken);
        }
    }
}
