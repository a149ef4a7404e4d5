package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command on a short programme: half an hour of rest. */
class CampaignCommandTest {
    private static final Path RIG = Path.of("..", "hardware", "rigs", "one-cell.toml");
    private static final String REST = """
            name = "half an hour"
            unattended = false
            leave_empty = true

            [[step]]
            kind = "rest"
            at_least_min = 30
            at_most_min = 30
            """;

    @TempDir
    private Path folder;

    private String programme() throws IOException {
        return Files.writeString(folder.resolve("rest.toml"), REST).toString();
    }

    @Test
    void twelve_cases_print_a_table_with_its_bound_and_one_of_them_runs_again_alone() throws IOException {
        Spoken all = Spoken.of("campaign", RIG.toString(), programme(), "--faults", "12", "--seed", "4");
        Spoken one = Spoken.of("campaign", RIG.toString(), programme(), "--only", "5", "--seed", "4");

        assertThat(all.exit()).isEqualTo(Exits.DONE);
        assertThat(all.out()).contains("Cases: 12", "an order could have prevented it: 0 of 12", "below 22.1 %", "By rule");
        assertThat(one.exit()).isEqualTo(Exits.DONE);
        assertThat(one.out()).contains("case 5: one-cell, specimen 1: ").doesNotContain("case 6");
    }

    @Test
    void what_cannot_be_run_is_refused_with_one_message() throws IOException {
        assertThat(Spoken.of("campaign", RIG.toString()).err()).contains("a programme for").contains("is missing");
        assertThat(Spoken.of("campaign", "--faults", "0").err()).contains("--faults 0: it is 1…");
        assertThat(Spoken.of("campaign", "--cases", "x.toml").err()).contains("cases are written for one rig");
        Path bad = Files.writeString(folder.resolve("bad.toml"), """
                [[case]]
                name = "no such fault"
                minutes = 5
                [[case.fault]]
                fault = "contactor wields"
                after_s = 5
                """);
        Spoken said = Spoken.of("campaign", RIG.toString(), programme(), "--cases", bad.toString());
        assertThat(said.exit()).isEqualTo(Exits.REFUSED);
        assertThat(said.err().lines()).hasSize(1).first().asString().startsWith("bad.toml:5: case.no such fault.fault.1.fault = contactor wields");
    }

    @Test
    void every_fault_of_a_rig_is_listed_with_its_places() throws IOException {
        assertThat(Spoken.of("campaign", RIG.toString(), programme(), "--list").out())
                .contains("\"joint loosens\"", "mohm", "\"cell 1 positive\"", "\"bus corruption\"", "\"bytes mangled\"");
    }
}
