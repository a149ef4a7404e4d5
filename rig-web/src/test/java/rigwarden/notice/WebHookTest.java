package rigwarden.notice;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** A web hook and a server of this machine that fails, hangs and comes back. */
@Timeout(120)
class WebHookTest {
    private static final Duration SHORT = Duration.ofMillis(300);
    private static final Duration LONG = Duration.ofSeconds(60);

    private final CountDownLatch over = new CountDownLatch(1);
    private final ExecutorService threads = Executors.newVirtualThreadPerTaskExecutor();
    private final List<String> bodies = new CopyOnWriteArrayList<>();
    private final List<String> tokens = new CopyOnWriteArrayList<>();
    private volatile int status = 200;
    private volatile boolean hangs;
    private HttpServer server;

    @BeforeEach
    void aServer() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.setExecutor(threads);
        server.createContext("/", this::answer);
        server.start();
    }

    @AfterEach
    void shut() {
        over.countDown();
        server.stop(0);
        threads.shutdownNow();
    }

    private void answer(HttpExchange exchange) throws IOException {
        try (exchange) {
            bodies.add(new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8));
            tokens.add(String.valueOf(exchange.getRequestHeaders().getFirst("Authorization")));
            if (hangs) {
                over.await();
            }
            if (status == 302) {
                exchange.getResponseHeaders().add("Location", "/elsewhere");
            }
            exchange.sendResponseHeaders(status, -1);
        } catch (InterruptedException _) {
            Thread.currentThread().interrupt();
        }
    }

    private WebHook hook(WebHook.Form form, Secret secret, Duration patience) {
        URI url = URI.create("http://127.0.0.1:" + server.getAddress().getPort() + "/its-path-is-secret");
        return new WebHook("phone", url, form, secret, EnumSet.allOf(What.class), patience);
    }

    private WebHook hook() {
        return hook(WebHook.Form.JSON, new Secret.None(), LONG);
    }

    @Test
    void a_notice_arrives_as_small_json_that_says_when_the_next_check_in_is_due() throws Exception {
        try (WebHook hook = hook()) {
            assertThat(hook.send(Some.notice(What.TRIPPED, "joint 3 is \"warm\""))).isEqualTo(new Delivery.Delivered("answered 200"));
        }

        JsonNode json = new ObjectMapper().readTree(bodies.getFirst());
        assertThat(json.get("what").asText()).isEqualTo("tripped");
        assertThat(json.get("title").asText()).isEqualTo("joint 3 is \"warm\"");
        assertThat(json.get("run").asInt()).isEqualTo(12);
        assertThat(json.get("next_check_in_min").asInt()).isEqualTo(30);
        assertThat(json.get("at").asText()).isEqualTo("2026-01-02T12:00:00Z");
        assertThat(bodies.getFirst().length()).isLessThan(1000);
    }

    @Test
    void or_as_plain_text() {
        try (WebHook hook = hook(WebHook.Form.TEXT, new Secret.None(), LONG)) {
            hook.send(Some.notice(What.DONE, "done"));
        }

        assertThat(bodies).containsExactly("done\n\nWords of done.\n\n2026-01-02T12:00:00Z\n");
    }

    @Test
    void a_server_that_fails_and_comes_back_gets_the_notice_with_the_same_identity() throws Exception {
        Notice notice = Some.notice(What.TRIPPED, "trip");
        try (WebHook hook = hook()) {
            status = 503;
            assertThat(hook.send(notice)).isEqualTo(new Delivery.Failed("answered 503", false));
            status = 200;
            assertThat(hook.send(notice)).isInstanceOf(Delivery.Delivered.class);
        }

        assertThat(bodies).hasSize(2);
        assertThat(new ObjectMapper().readTree(bodies.getFirst()).get("id"))
                .isEqualTo(new ObjectMapper().readTree(bodies.getLast()).get("id"));
    }

    @Test
    void a_server_that_hangs_is_left_and_the_next_attempt_finds_it_back() {
        hangs = true;
        try (WebHook hook = hook(WebHook.Form.JSON, new Secret.None(), SHORT)) {
            assertThat(hook.send(Some.notice(What.TRIPPED, "trip"))).isInstanceOf(Delivery.Failed.class);
        }
        hangs = false;
        try (WebHook hook = hook()) {
            assertThat(hook.send(Some.notice(What.TRIPPED, "trip"))).isInstanceOf(Delivery.Delivered.class);
        }
    }

    @Test
    void a_server_that_is_not_there_is_a_failure_in_words() {
        server.stop(0);

        try (WebHook hook = hook()) {
            Delivery.Failed failed = (Delivery.Failed) hook.send(Some.notice(What.TRIPPED, "trip"));

            assertThat(failed.words()).isEqualTo("no connection: nobody listens there, or no network");
            assertThat(failed.refused()).isFalse();
        }
    }

    @Test
    void a_redirection_is_not_followed_with_the_token() {
        status = 302;

        try (WebHook hook = hook(WebHook.Form.JSON, new Secret.InEnvironment("T", _ -> "abc"), LONG)) {
            assertThat(hook.send(Some.notice(What.DONE, "done"))).isEqualTo(new Delivery.Failed("answered 302", true));
        }

        assertThat(tokens).containsExactly("Bearer abc");
    }

    @Test
    void a_token_that_cannot_be_read_is_said_and_nothing_is_sent() {
        try (WebHook hook = hook(WebHook.Form.JSON, new Secret.InEnvironment("HOOK_TOKEN", _ -> null), LONG)) {
            assertThat(hook.send(Some.notice(What.DONE, "done")))
                    .isEqualTo(new Delivery.Failed("the environment has no HOOK_TOKEN", false));
        }

        assertThat(bodies).isEmpty();
    }

    @Test
    void what_is_shown_of_a_hook_holds_no_path_which_is_often_its_secret() {
        try (WebHook hook = hook()) {
            assertThat(hook.where()).matches("web hook at http://127\\.0\\.0\\.1:\\d+");
        }
    }
}
