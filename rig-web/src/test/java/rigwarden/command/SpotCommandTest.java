package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredEvent;

/** A loose probe, from a terminal and in a rehearsal whose mishaps carry it about. */
class SpotCommandTest {
    @TempDir
    private Path folder;

    private Path rig() throws IOException {
        String text = Files.readString(Path.of("..", "hardware", "rigs", "one-cell.toml")).replace("[panel]", """
                [[probe]]
                name = "loose_c"
                place = "loose"
                bus = 3
                address = 0x67
                uncertainty_k = 1.8
                lag_s = 8
                period_ms = 200

                [panel]""");
        return Files.writeString(folder.resolve("rig.toml"), text);
    }

    @Test
    void what_a_rehearsal_carried_where_stands_in_its_run_file_and_in_its_findings() throws IOException {
        Path programme = Files.writeString(folder.resolve("once.toml"), Rehearsing.HALF_RATE_ONCE);
        String book = folder.resolve("book").toString();

        Spoken night = Spoken.of("rehearse", rig().toString(), programme.toString(), "--logbook", book, "--with",
                "loose probe lies on cell 1 + at step 1 + 0:20", "--with", "loose probe lies on shunt at step 1 + 0:25", "--with",
                "loose probe lies on contactor at step 1 + 0:30", "--with", "loose probe drops at step 1 + 0:33");
        Spoken text = Spoken.of("findings", "1", "--logbook", book);

        assertThat(night.exit()).as(night.out() + night.err()).isEqualTo(Exits.DONE);
        try (RunReader reader = RunReader.open(folder.resolve("book").resolve("runs").resolve("0001.db"))) {
            List<StoredEvent> spots = reader.events().stream().filter(event -> event.kind().equals("spot")).toList();
            assertThat(spots).extracting(StoredEvent::words).containsExactly("cell 1, + stud", "shunt", "contactor");
            assertThat((spots.get(1).nanos() - spots.get(0).nanos()) / 1e9).isBetween(299.0, 301.0);
        }
        assertThat(text.out().replaceAll("(?s).*(by heat.{120}).*", "$1")).containsPattern("by heat: shunt \\+[1-4][.]\\d ± [01][.]\\d K, ")
                .contains(" contactor ", " cell 1, + stud ");
    }

    @Test
    void a_spot_is_said_to_the_page_in_the_words_that_were_typed_and_its_refusal_is_the_commands() throws IOException {
        List<String> forms = new ArrayList<>();
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/spot.txt", exchange -> {
            String form = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
            forms.add(exchange.getRequestMethod() + " " + form);
            byte[] words = (form.contains("9") ? "There is no such spot.\n" : "Kept.\n").getBytes(StandardCharsets.UTF_8);
            exchange.getResponseHeaders().add("Rigwarden-Run", "7");
            exchange.sendResponseHeaders(form.contains("9") ? 422 : 200, words.length);
            exchange.getResponseBody().write(words);
            exchange.close();
        });
        server.start();
        String port = String.valueOf(server.getAddress().getPort());

        Spoken kept = Spoken.of("spot", "cell", "3", "+", "--port", port);
        Spoken refused = Spoken.of("spot", "cell 9 +", "--port", port);
        Spoken asked = Spoken.of("spot", "--port", port);
        server.stop(0);
        Spoken nobody = Spoken.of("spot", "shunt", "--port", port);

        assertThat(forms).containsExactly("GET ", "POST spot=cell+3+%2B", "GET ", "POST spot=cell+9+%2B", "GET ");
        assertThat(kept.out()).isEqualTo("Kept.\n");
        assertThat(kept.exit()).isEqualTo(Exits.DONE);
        assertThat(refused.exit()).isEqualTo(Exits.REFUSED);
        assertThat(refused.err()).contains("There is no such spot.");
        assertThat(asked.exit()).isEqualTo(Exits.DONE);
        assertThat(nobody.exit()).isEqualTo(Exits.REFUSED);
        assertThat(nobody.err()).contains("No page of Rigwarden answers on port " + port);
    }
}
