package rigwarden.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.Rehearsal;
import rigwarden.pack.Fault;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.warden.Scan;

/** The view of the reference night, looked at by hand. */
class LiveTest {
    private static final Path RIGS = Path.of("..", "hardware", "rigs");

    private final List<Scan> stored = new ArrayList<>();
    private Live live;
    private Rehearsal rehearsal;

    @BeforeEach
    void aNight() throws Exception {
        Read.Sound<Rig> rig = (Read.Sound<Rig>) RigFile.read(RIGS.resolve("one-cell.toml"));
        Program program = ((Read.Sound<Program>) ProgramFile.read(RIGS.resolve("one-cell-night.toml"), rig)).value();
        live = new Live(rig.value(), program, (scan, inbox, orders, events) -> stored.add(scan));
        rehearsal = new Rehearsal(rig.value(), program, 1, List.of(), live);
    }

    private Snapshot after(int scans) throws Exception {
        for (int i = 0; i < scans; i++) {
            rehearsal.scan();
            if (i % 1000 == 0) {
                live.step();
            }
        }
        live.step();
        return live.now().orElseThrow();
    }

    @Test
    void it_says_what_the_run_does_and_hands_every_scan_on() throws Exception {
        assertThat(after(5).doing().phase()).isEqualTo(Phase.IDLE);
        assertThat(after(20).doing().phase()).isEqualTo(Phase.PROVING);
        Snapshot charging = after(3000);

        assertThat(charging.doing().phase()).isEqualTo(Phase.CURRENT);
        assertThat(charging.doing().step()).isEqualTo(1);
        assertThat(charging.doing().setAmps()).isEqualTo(21, within(0.01));
        assertThat(charging.left().words()).contains("40 %");
        assertThat(charging.strip()).hasSize(9);
        assertThat(charging.strip().getFirst().place()).isEqualTo(Stretch.Place.NOW);
        assertThat(stored).hasSize(3025);
    }

    @Test
    void what_it_expects_of_the_end_of_a_charge_is_true_within_a_quarter_of_an_hour() throws Exception {
        Snapshot late = after(90_000);
        double expectedHours = (late.elapsedNanos() + late.forecast().orElseThrow().leftNanos().orElseThrow()) / 3600e9;

        Snapshot over = late;
        while (over.doing().step() < 2) {
            over = after(600);
        }

        assertThat(over.strip().getFirst().endNanos() / 3600e9).isEqualTo(expectedHours, within(0.25));
    }

    @Test
    void a_trip_stands_there_with_its_first_cause_and_nothing_more_is_forecast() throws Exception {
        after(3000);
        rehearsal.inflict(new BoardFault.InWorld(new Fault.LoopOpens()));
        Snapshot tripped = after(50);

        assertThat(tripped.doing().phase()).isEqualTo(Phase.TRIPPED);
        assertThat(tripped.trip()).isPresent();
        assertThat(tripped.forecast()).isEmpty();
        assertThat(tripped.strip().get(3).place()).isEqualTo(Stretch.Place.DROPPED);
    }

    @Test
    void what_it_has_no_time_to_look_at_is_counted_and_still_stored() {
        for (int i = 0; i < 20_000; i++) {
            rehearsal.scan();
        }
        live.step();

        assertThat(stored).hasSize(20_000);
        assertThat(live.now().orElseThrow().unseen()).isBetween(3000L, 4000L);
    }

    @Test
    void the_nearest_limit_is_the_one_with_the_least_way_left() throws Exception {
        Snapshot nearlyFull = after(98_000);

        assertThat(nearlyFull.nearest().orElseThrow().words()).isEqualTo("cell high");
        assertThat(nearlyFull.nearest().orElseThrow().share()).isBetween(0.1, 0.6);
    }
}
