package rigwarden.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredEvent;

/** Somebody says where the loose probe lies while a rig runs. */
class SpottingTest {
    private static Night night;
    private static HttpClient client;

    @TempDir
    static Path folder;

    @BeforeAll
    static void a_night_with_a_loose_probe_begins() throws Exception {
        night = Night.carried(folder, "one-cell", 3, 0, 20);
        client = HttpClient.newHttpClient();
        night.waitForScans(20);
    }

    @AfterAll
    static void what_was_said_is_in_the_run_file() {
        client.close();
        night.close();
        try (RunReader reader = RunReader.open(folder.resolve("runs").resolve("0001.db"))) {
            assertThat(reader.events()).filteredOn(event -> event.kind().equals("spot")).extracting(StoredEvent::words)
                    .containsOnly("cell 1, + stud", "shunt").isNotEmpty();
        }
    }

    private static HttpResponse<String> get(String path) throws Exception {
        return client.send(HttpRequest.newBuilder(URI.create(night.url() + path)).build(), HttpResponse.BodyHandlers.ofString());
    }

    private static HttpResponse<String> post(String path, String form, String origin) throws Exception {
        return client.send(HttpRequest.newBuilder(URI.create(night.url() + path)).header("Origin", origin)
                .header("Content-Type", "application/x-www-form-urlencoded").POST(HttpRequest.BodyPublishers.ofString(form)).build(),
                HttpResponse.BodyHandlers.ofString());
    }

    @Test
    void what_is_said_is_kept_and_shown_with_what_the_probe_reads() throws Exception {
        HttpResponse<String> kept = post("/spot.txt", "spot=Cell+1+%2B", night.url());
        assertThat(kept.statusCode()).isEqualTo(200);
        assertThat(kept.headers().firstValue("Rigwarden-Run")).hasValue("1");
        assertThat(kept.body()).contains("Kept: it lies on cell 1, + stud.", "on cell 1, + stud, ", "settling", "°C");

        HttpResponse<String> told = get("/spot.txt");
        assertThat(told.body()).contains("The loose probe: on ", "Spots: cell 1, − stud · cell 1, body · cell 1, + stud · ", " · away.");

        HttpResponse<String> form = post("/spot", "spot=shunt", night.url());
        assertThat(form.statusCode()).isEqualTo(303);
        assertThat(get("/").body()).contains("Loose probe: ", "<option>cell 1, + stud</option>", "data-spot=\"shunt\"", "id=\"s-shunt0\"");
    }

    @Test
    void a_spot_that_is_not_there_is_refused_with_those_that_are() throws Exception {
        HttpResponse<String> none = post("/spot.txt", "spot=bar+1-2", night.url());

        assertThat(none.statusCode()).isEqualTo(422);
        assertThat(none.body()).contains("There is no spot \"bar 1-2\". There are: cell 1, − stud");
        assertThat(post("/spot.txt", "", night.url()).statusCode()).isEqualTo(422);
    }

    @Test
    void another_sites_page_may_not_say_it() throws Exception {
        assertThat(post("/spot.txt", "spot=shunt", "http://elsewhere.example").statusCode()).isEqualTo(403);
    }
}
