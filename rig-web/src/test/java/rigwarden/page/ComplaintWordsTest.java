package rigwarden.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.emulated.Rehearsal;
import rigwarden.live.Complaints;
import rigwarden.live.Desk;
import rigwarden.live.Live;
import rigwarden.live.Snapshot;
import rigwarden.live.Stepped;
import rigwarden.live.Watched;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** What instruments complain of, beside a run that is watched. */
class ComplaintWordsTest {
    private static final Path RIGS = Path.of("..", "hardware", "rigs");
    private static final long SECOND = 1_000_000_000L;

    private final Complaints complaints = new Complaints();
    private Optional<Watched> run = Optional.empty();
    private Optional<Snapshot> look = Optional.empty();

    @BeforeEach
    void aRunOfTenScans() throws Exception {
        Read.Sound<Rig> rig = (Read.Sound<Rig>) RigFile.read(RIGS.resolve("one-cell.toml"));
        Program program = ((Read.Sound<Program>) ProgramFile.read(RIGS.resolve("one-cell-night.toml"), rig)).value();
        Live live = new Live(rig.value(), program, (_, _, _, _) -> { });
        Rehearsal rehearsal = new Rehearsal(rig.value(), program, 1, List.of(), live);
        for (int i = 0; i < 10; i++) {
            rehearsal.scan();
        }
        look = Optional.of(Stepped.look(live));
        run = Optional.of(new Watched(1, rig.value(), program, live, new Desk(), false, 1, Path.of("1.db"), List::of, Optional.empty(), Optional.empty(), Optional.empty(), complaints));
    }

    private String says() {
        return Words.of(run.orElseThrow(), look.orElseThrow()).word("instruments");
    }

    private void heard(String words, long seconds) {
        complaints.take(words, look.orElseThrow().originNanos() + seconds * SECOND);
    }

    @Test
    void nothing_is_said_of_instruments_that_complain_of_nothing() {
        assertThat(says()).isEmpty();
    }

    @Test
    void the_newest_three_stand_there_with_their_time_the_newest_first() {
        heard("sink: exception 4", -20);
        heard("source: -222 Data out of range", 5);
        heard("source: -221 Settings conflict", 61);

        assertThat(says()).isEqualTo("source: -221 Settings conflict (at 0:01:01) · source: -222 Data out of range (at 0:00:05) · sink: exception 4 (before the start)");

        heard("sink: exception 2", 3600);
        assertThat(says()).startsWith("sink: exception 2 (at 1:00:00)").doesNotContain("exception 4");
    }

    @Test
    void the_same_words_again_only_renew_their_time() {
        heard("source: -222 Data out of range", 5);
        heard("sink: exception 4", 6);
        heard("source: -222 Data out of range", 70);

        assertThat(says()).isEqualTo("source: -222 Data out of range (at 0:01:10) · sink: exception 4 (at 0:00:06)");
    }
}
