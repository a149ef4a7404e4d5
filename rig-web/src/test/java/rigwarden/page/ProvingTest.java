package rigwarden.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.logbook.Logbook;

/** The page while a proof is made: it shows what is asked at the rig, and takes an answer to that and to nothing else. */
class ProvingTest {
    private static final String WARM = "Warm the probe \"cell_01_c\" between two fingers.";

    @TempDir
    Path folder;

    private final List<Boolean> heard = new ArrayList<>();
    private Optional<AtRig.Asked> asked = Optional.of(new AtRig.Asked(WARM, Optional.of(heard::add)));
    private final HttpClient client = HttpClient.newHttpClient();
    private Logbook book;
    private Site site;

    @BeforeEach
    void serve() throws IOException {
        book = Logbook.open(folder, "now");
        site = new Site(new Site.Place(InetAddress.getLoopbackAddress(), 0, Set.of()), Optional::empty, new Shelf(book), folder, AtRig.of(() -> asked));
    }

    @AfterEach
    void end() {
        client.close();
        site.close();
        book.close();
    }

    private String url() {
        return "http://127.0.0.1:" + site.port();
    }

    private String page() throws IOException, InterruptedException {
        return client.send(HttpRequest.newBuilder(URI.create(url() + "/")).build(), HttpResponse.BodyHandlers.ofString()).body();
    }

    private HttpResponse<String> answer(String to, String said) throws IOException, InterruptedException {
        String form = "to=" + URLEncoder.encode(to, StandardCharsets.UTF_8) + "&said=" + said;
        return client.send(HttpRequest.newBuilder(URI.create(url() + "/proof")).header("Origin", url())
                .header("Content-Type", "application/x-www-form-urlencoded").POST(HttpRequest.BodyPublishers.ofString(form)).build(),
                HttpResponse.BodyHandlers.ofString());
    }

    @Test
    void what_is_asked_stands_on_the_page_and_either_button_is_heard_once() throws IOException, InterruptedException {
        assertThat(page()).contains("Warm the probe &quot;cell_01_c&quot; between two fingers.", "It is done, or so", "Leave it out, or not so");

        assertThat(answer(WARM, "yes").statusCode()).isEqualTo(303);
        assertThat(answer(WARM, "no").statusCode()).isEqualTo(303);
        assertThat(heard).containsExactly(true, false);
    }

    @Test
    void an_answer_to_what_was_asked_before_is_not_heard() throws IOException, InterruptedException {
        asked = Optional.of(new AtRig.Asked("Open the door contact.", Optional.of(heard::add)));

        HttpResponse<String> late = answer(WARM, "yes");

        assertThat(late.statusCode()).isEqualTo(409);
        assertThat(late.body()).contains("no longer asked");
        assertThat(heard).isEmpty();
    }

    @Test
    void what_only_the_terminal_may_answer_has_no_button_and_no_answer_is_taken() throws IOException, InterruptedException {
        asked = Optional.of(new AtRig.Asked("Stand clear.", Optional.empty()));

        assertThat(page()).contains("Stand clear.").doesNotContain("<button name=\"said\"");
        assertThat(answer("Stand clear.", "yes").statusCode()).isEqualTo(409);
        assertThat(answer(WARM, "sideways").statusCode()).isEqualTo(409);
    }

    @Test
    void an_answer_that_is_none_is_refused_and_without_a_proof_nothing_is_asked() throws IOException, InterruptedException {
        assertThat(answer(WARM, "sideways").statusCode()).isEqualTo(422);
        asked = Optional.empty();

        assertThat(page()).contains("Nothing runs").doesNotContain("A proof is made");
        assertThat(heard).isEmpty();
    }
}
