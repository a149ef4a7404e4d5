package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.io.StringReader;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The talk of {@code rigwarden walk} with a page, here one that says yes to everything. */
class WalkTalkTest {
    private HttpServer server;
    private final List<String> forms = new ArrayList<>();

    @TempDir
    private Path folder;

    @BeforeEach
    void a_page_with_three_joints() throws IOException {
        server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/joints.txt", exchange -> {
            String form = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
            if (exchange.getRequestMethod().equals("POST")) {
                forms.add(exchange.getRequestHeaders().getFirst("Origin").replaceFirst(".*:", "") + " " + form);
            }
            int next = forms.size() >= 3 ? 0 : forms.size() + 1;
            byte[] words = ("joint " + next + ".\n").getBytes(StandardCharsets.UTF_8);
            exchange.getResponseHeaders().add("Rigwarden-Run", "7");
            exchange.getResponseHeaders().add("Rigwarden-Joint", String.valueOf(next));
            exchange.sendResponseHeaders(200, words.length);
            exchange.getResponseBody().write(words);
            exchange.close();
        });
        server.start();
    }

    @AfterEach
    void over() {
        server.stop(0);
    }

    private int port() {
        return server.getAddress().getPort();
    }

    private String led(String typed) throws IOException {
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        try (WalkedPage page = new WalkedPage(URI.create("http://127.0.0.1:" + port()))) {
            assertThat(page.there()).isTrue();
            new WalkTalk(page, new BufferedReader(new StringReader(typed)), new PrintStream(said, true, StandardCharsets.UTF_8)).lead();
        }
        return said.toString(StandardCharsets.UTF_8);
    }

    @Test
    void each_line_is_a_reading_an_empty_one_passes_and_the_last_joint_ends_it() throws IOException {
        String said = led("4.7\n\n5 mV & more\n");

        assertThat(forms).containsExactly(port() + " joint=1&mv=4.7", port() + " joint=2&pass=yes", port() + " joint=3&mv=5+mV+%26+more");
        assertThat(said).containsSubsequence("joint 1.", "joint 2.", "joint 3.", "joint 0.");
    }

    @Test
    void a_person_may_have_had_enough() throws IOException {
        assertThat(led("4.7\nend\n")).contains("What was kept is in the ledger.");
        assertThat(forms).hasSize(1);
    }

    @Test
    void another_run_than_the_one_that_goes_on_is_refused_and_without_a_page_the_ledger_is_asked() {
        Spoken other = Spoken.of("walk", "3", "--port", String.valueOf(port()));
        assertThat(other.exit()).isEqualTo(Exits.REFUSED);
        assertThat(other.err()).contains("shows run 7, not run 3");

        int port = port();
        server.stop(0);
        Spoken none = Spoken.of("walk", "3", "--port", String.valueOf(port), "--logbook", folder.toString());
        assertThat(none.exit()).isEqualTo(Exits.REFUSED);
        assertThat(none.err()).contains("There is no run 3 in");
    }
}
