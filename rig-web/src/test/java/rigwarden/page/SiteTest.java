package rigwarden.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
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
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The page's server from the wire's side. */
class SiteTest {
    private static final int MOST_COMPRESSED = 60_000;
    private static Night night;
    private static HttpClient client;

    @TempDir
    static Path folder;

    @BeforeAll
    static void aNightIsUnderWay() throws Exception {
        night = Night.paced(folder, 20);
        client = HttpClient.newHttpClient();
        night.waitForScans(100);
    }

    @AfterAll
    static void over() {
        client.close();
        night.close();
    }

    private static HttpRequest.Builder to(String path) {
        return HttpRequest.newBuilder(URI.create(night.url() + path));
    }

    private static int status(HttpRequest.Builder request) throws Exception {
        return client.send(request.build(), HttpResponse.BodyHandlers.discarding()).statusCode();
    }

    private static HttpRequest.BodyPublisher body(String text) {
        return HttpRequest.BodyPublishers.ofString(text);
    }

    /** Sends a request as it stands and returns the first line of the answer. */
    private static String raw(String request) throws Exception {
        try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), night.site.port())) {
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            byte[] first = socket.getInputStream().readNBytes(12);
            return new String(first, StandardCharsets.US_ASCII);
        }
    }

    @Test
    void every_answer_forbids_what_is_inline_or_from_outside() throws Exception {
        for (String path : List.of("/", "/runs", "/runs/1", "/sign-in", "/stop", "/trace", "/page.css", "/nothing-there")) {
            HttpResponse<String> answer = client.send(to(path).build(), HttpResponse.BodyHandlers.ofString());

            assertThat(answer.headers().firstValue("Content-Security-Policy").orElse("")).as(path)
                    .contains("default-src 'none'").contains("script-src 'self';").doesNotContain("unsafe");
            assertThat(answer.body()).as(path).doesNotContain("style=").doesNotContain("<script>").doesNotContain("onclick");
        }
    }

    @Test
    void a_request_has_sixty_four_kilobytes_and_says_how_long_it_is() throws Exception {
        assertThat(status(to("/sign-in").header("Origin", night.url()).POST(body("x".repeat(65_537))))).isEqualTo(413);
        assertThat(raw("POST /sign-in HTTP/1.1\r\nHost: 127.0.0.1\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n"))
                .isEqualTo("HTTP/1.1 411");
    }

    @Test
    void what_another_site_asks_for_is_refused() throws Exception {
        assertThat(status(to("/ask").POST(body("what=CLEAR")))).isEqualTo(403);
        assertThat(status(to("/sign-in").header("Origin", "http://elsewhere.example").POST(body("")))).isEqualTo(403);
        assertThat(status(to("/stop").header("Sec-Fetch-Site", "cross-site").POST(body("")))).isEqualTo(403);
        assertThat(raw("GET / HTTP/1.1\r\nHost: elsewhere.example\r\n\r\n")).isEqualTo("HTTP/1.1 421");
    }

    @Test
    void nobody_who_is_not_signed_in_may_ask_for_anything_but_a_stop() throws Exception {
        assertThat(status(to("/ask").header("Origin", night.url()).header("Cookie", "rigwarden=made-up")
                .header("Content-Type", "application/x-www-form-urlencoded").POST(body("what=CLEAR")))).isEqualTo(403);
    }

    @Test
    void a_run_that_does_not_exist_and_a_number_that_is_none_are_answered_plainly() throws Exception {
        assertThat(status(to("/runs/77"))).isEqualTo(404);
        assertThat(status(to("/runs/..%2F..%2Fetc"))).isIn(400, 404);
        assertThat(status(to("/trace?from=x&to=NaN&buckets=-5"))).isEqualTo(200);
        assertThat(status(to("/runs/1.csv"))).isEqualTo(409);
    }

    @Test
    void the_seventeenth_viewer_gets_a_page_that_reloads_itself_and_a_place_when_one_is_free() throws Exception {
        List<Socket> viewers = new ArrayList<>();
        try {
            while (viewers.size() < Viewers.MOST) {
                Socket viewer = streaming();
                viewers.add(viewer);
                Thread.ofVirtual().start(() -> readOn(viewer));
            }
            waitForViewers(Viewers.MOST);
            HttpResponse<String> page = client.send(to("/").build(), HttpResponse.BodyHandlers.ofString());
            assertThat(page.body()).contains("http-equiv=\"refresh\" content=\"5\"").doesNotContain("now.js");
            assertThat(status(to("/live").header("Accept", "text/event-stream"))).isEqualTo(503);
        } finally {
            for (Socket viewer : viewers) {
                viewer.close();
            }
        }

        waitForViewers(0);
    }

    @Test
    void a_look_at_stop_that_nobody_pressed_frightens_nobody() throws Exception {
        HttpResponse<String> look = client.send(to("/stop").build(), HttpResponse.BodyHandlers.ofString());

        assertThat(look.body()).contains("Nobody has pressed STOP in this run").doesNotContain("fire brigade");
    }

    @Test
    void viewers_that_come_and_go_without_a_word_leave_the_page_as_it_was() throws Exception {
        for (int round = 0; round < 20; round++) {
            List<Socket> viewers = new ArrayList<>();
            for (int i = 0; i < Viewers.MOST / 2; i++) {
                Socket viewer = streaming();
                viewer.setSoLinger(true, i % 2);
                viewers.add(viewer);
            }
            for (Socket viewer : viewers) {
                viewer.close();
            }
            waitForViewers(0);
        }

        assertThat(status(to("/"))).isEqualTo(200);
        try (Socket viewer = streaming()) {
            assertThat(viewer.getInputStream().readNBytes(100)).hasSize(100);
        }
    }

    /** A stream's head is on its way a moment before its place is taken, and its place is free a moment after its end. */
    private static void waitForViewers(int wanted) throws InterruptedException {
        long until = System.nanoTime() + 20_000_000_000L;
        while (night.site.viewers() != wanted && System.nanoTime() < until) {
            Thread.sleep(20);
        }
        assertThat(night.site.viewers()).isEqualTo(wanted);
    }

    /** One that does not read is closed soon. */
    private static void readOn(Socket viewer) {
        try {
            viewer.getInputStream().transferTo(OutputStream.nullOutputStream());
        } catch (IOException _) {
            return;
        }
    }

    private static Socket streaming() throws Exception {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), night.site.port());
        socket.setSoTimeout(20_000);
        socket.getOutputStream().write("GET /live HTTP/1.1\r\nHost: 127.0.0.1\r\nAccept: text/event-stream\r\n\r\n"
                .getBytes(StandardCharsets.US_ASCII));
        assertThat(socket.getInputStream().read()).isEqualTo('H');
        return socket;
    }

    @Test
    void the_page_is_light_and_its_first_value_is_there_with_the_page_itself() throws Exception {
        int weight = 0;
        for (String path : List.of("/", "/page.css", "/now.js", "/charts.js", "/uplot.js", "/uplot.css", "/icon.svg")) {
            HttpResponse<byte[]> answer = client.send(to(path).header("Accept-Encoding", "gzip").build(),
                    HttpResponse.BodyHandlers.ofByteArray());
            weight += answer.body().length;
            boolean zipped = answer.headers().firstValue("Content-Encoding").orElse("").equals("gzip");
            assertThat(answer.body().length < 1500 || zipped).as(path + " is compressed").isTrue();
        }
        long began = System.nanoTime();
        HttpResponse<byte[]> page = client.send(to("/").build(), HttpResponse.BodyHandlers.ofByteArray());
        double pageMillis = (System.nanoTime() - began) * 1e-6;
        double streamMillis = firstEventMillis();

        System.out.printf("page weight compressed: %d bytes; first value with the page after %.1f ms, by the stream after %.1f ms%n",
                weight, pageMillis, streamMillis);
        assertThat(weight).isLessThan(MOST_COMPRESSED);
        assertThat(new String(page.body(), StandardCharsets.UTF_8)).containsPattern("id=\"v-cell_01_v\"[^>]*>3\\.\\d{3}");
        assertThat(streamMillis).isLessThan(1000);
    }

    private static double firstEventMillis() throws Exception {
        long began = System.nanoTime();
        try (Socket socket = streaming()) {
            InputStream in = socket.getInputStream();
            StringBuilder text = new StringBuilder();
            while (text.indexOf("\"v-cell_01_v\":\"3.") < 0) {
                text.append((char) in.read());
            }
            return (System.nanoTime() - began) * 1e-6;
        }
    }

    @Test
    void what_is_zipped_unzips_to_what_it_was() throws Exception {
        HttpResponse<byte[]> zipped = client.send(to("/page.css").header("Accept-Encoding", "gzip").build(),
                HttpResponse.BodyHandlers.ofByteArray());

        byte[] plain = new GZIPInputStream(new ByteArrayInputStream(zipped.body())).readAllBytes();

        assertThat(new String(plain, StandardCharsets.UTF_8)).isEqualTo(Assets.text("page.css"));
    }
}
