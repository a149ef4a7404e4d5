package rigwarden.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rigwarden.live.Desk;
import rigwarden.live.Live;
import rigwarden.live.Watched;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.run.Account;
import rigwarden.run.PickUp;
import rigwarden.warden.Request;
import rigwarden.warden.Swing;

/** What the page's buttons ask the control thread for. */
class AskingTest {
    private static final Path RIGS = Path.of("..", "hardware", "rigs");

    private static Watched run(Optional<PickUp> from) {
        Read.Sound<Rig> rig = (Read.Sound<Rig>) RigFile.read(RIGS.resolve("one-cell.toml"));
        Program program = ((Read.Sound<Program>) ProgramFile.read(RIGS.resolve("one-cell-night.toml"), rig)).value();
        Live live = new Live(rig.value(), program, (_, _, _, _) -> { });
        return new Watched(2, rig.value(), program, live, new Desk(), false, 1, Path.of("2.db"), List::of, Optional.empty(), from);
    }

    @Test
    void a_start_of_a_new_run_asks_for_a_start_and_of_one_that_goes_on_for_going_on() {
        PickUp place = new PickUp(1, 3, 0, Account.EMPTY, -1, 0, List.of(), 0, 0, List.of(), Swing.NONE);

        assertThat(Asking.wanted("START", run(Optional.empty()))).contains(Request.START);
        assertThat(Asking.wanted("START", run(Optional.of(place)))).contains(Request.CONTINUE);
        assertThat(Asking.wanted("CLEAR", run(Optional.of(place)))).contains(Request.CLEAR);
        assertThat(Asking.wanted("anything", run(Optional.empty()))).isEmpty();
    }
}
