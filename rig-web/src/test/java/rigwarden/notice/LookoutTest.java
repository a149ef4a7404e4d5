package rigwarden.notice;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.Rehearsal;
import rigwarden.live.Desk;
import rigwarden.live.Live;
import rigwarden.live.Stepped;
import rigwarden.live.Watched;
import rigwarden.pack.Fault;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** What is worth telling of a night on the reference rig. Real time is told by hand: half an hour between check-ins. */
class LookoutTest {
    private static final Path RIGS = Path.of("..", "hardware", "rigs");
    private static final long CHECK_IN = TimeUnit.MINUTES.toNanos(30);
    private static final long REPEAT = TimeUnit.HOURS.toNanos(4);

    @TempDir
    private Path folder;

    private final List<Notice> told = new ArrayList<>();
    private Rig rig;
    private Live live;
    private Rehearsal rehearsal;
    private Lookout lookout;
    private long nanos;

    @BeforeEach
    void aNight() throws Exception {
        Read.Sound<Rig> read = (Read.Sound<Rig>) RigFile.read(RIGS.resolve("one-cell.toml"));
        rig = read.value();
        begin(((Read.Sound<Program>) ProgramFile.read(RIGS.resolve("one-cell-night.toml"), read)).value());
    }

    private void begin(Program program) throws Exception {
        live = new Live(rig, program, (_, _, _, _) -> { });
        rehearsal = new Rehearsal(rig, program, 1, List.of(), live);
        Watched watched = new Watched(7, rig, program, live, new Desk(), false, 1, Path.of("7.db"));
        lookout = new Lookout(watched, InstantSource.fixed(Some.NOON), CHECK_IN, REPEAT);
        told.clear();
    }

    private void after(int scans) {
        for (int i = 0; i < scans; i++) {
            rehearsal.scan();
            if (i % 1000 == 0) {
                Stepped.look(live);
            }
        }
        look(0);
    }

    private void look(double ageSeconds) {
        told.addAll(lookout.look(Stepped.look(live), ageSeconds, nanos));
    }

    private List<What> kinds() {
        return told.stream().map(Notice::what).toList();
    }

    @Test
    void a_trip_is_told_once_with_rule_place_figures_and_how_the_cells_are_left() {
        after(3000);
        rehearsal.inflict(new BoardFault.InWorld(new Fault.LoopOpens()));
        after(50);
        after(50);

        assertThat(kinds()).containsExactly(What.CHECK_IN, What.TRIPPED);
        assertThat(told.getLast().title()).startsWith("TRIPPED, ").contains("hut night", "hut bench");
        assertThat(told.getLast().words()).contains("Rule ", "It clears:", "Everything is ordered off.", "The cells are left");
        assertThat(told.getLast().run()).isEqualTo(7);
    }

    @Test
    void cells_that_will_be_too_warm_by_the_end_of_the_step_are_told_of_long_before_they_are() throws Exception {
        Read.Sound<Rig> eight = (Read.Sound<Rig>) RigFile.read(RIGS.resolve("eight-cells.toml"));
        rig = eight.value();
        Path heat = Files.writeString(folder.resolve("heat.toml"), """
                name = "an hour of heat"
                unattended = false
                leave_empty = true
                [[step]]
                kind = "heat_run"
                with = "inverter"
                cut_off_v = 2.50
                at_most_min = 60
                """);
        begin(((Read.Sound<Program>) ProgramFile.read(heat, eight)).value());
        after(3000);
        for (int cell = 0; cell < 8; cell++) {
            rehearsal.inflict(new BoardFault.InWorld(new Fault.HeatRate(cell, 1)));
        }
        long warned = 0;
        while (!rehearsal.over()) {
            after(600);
            warned = warned == 0 && kinds().contains(What.WARNED) ? rehearsal.rig().clock().nanos() : warned;
        }
        long over = rehearsal.rig().clock().nanos();

        assertThat(kinds()).as("%s", told).containsSubsequence(What.WARNED, What.TRIPPED);
        Notice first = told.stream().filter(n -> n.what() == What.WARNED).findFirst().orElseThrow();
        assertThat(first.title()).startsWith("a limit lies ahead");
        assertThat(first.words()).contains("By the end of the step: ", "from now");
        assertThat((over - warned) / 60e9).as("minutes before the trip").isGreaterThan(5);
        assertThat(told.stream().filter(n -> n.title().startsWith("a limit lies ahead"))).hasSize(1);
    }

    @Test
    void a_second_trip_after_a_clear_is_told_too() {
        after(3000);
        rehearsal.inflict(new BoardFault.CardStalls(11));
        after(200);
        rehearsal.clear();
        after(200);
        rehearsal.inflict(new BoardFault.InWorld(new Fault.LoopOpens()));
        after(200);

        assertThat(kinds()).containsExactly(What.CHECK_IN, What.TRIPPED, What.WARNED, What.TRIPPED);
    }

    @Test
    void a_stop_is_told_as_done_by_a_person() {
        after(3000);
        rehearsal.stop();
        after(100);
        after(100);

        assertThat(kinds()).containsExactly(What.CHECK_IN, What.DONE);
        assertThat(told.getLast().title()).startsWith("stopped by a person");
    }

    @Test
    void check_ins_come_every_half_hour_say_what_the_run_does_and_when_the_next_is_due() {
        after(3000);
        nanos += CHECK_IN - 1;
        look(0);
        nanos += 1;
        look(0);

        assertThat(kinds()).containsExactly(What.CHECK_IN, What.CHECK_IN);
        assertThat(told.getLast().words()).contains("Step 1 of 9, charge", "The current is on, 21.0 A ordered.",
                "The step ends by full");
        assertThat(told.getLast().nextMinutes()).isEqualTo(30);
    }

    @Test
    void a_loop_that_stands_still_is_told_once_and_no_check_in_covers_it() {
        after(3000);
        told.clear();
        nanos += 2 * CHECK_IN;
        look(11);
        nanos += 2 * CHECK_IN;
        look(4000);

        assertThat(kinds()).containsExactly(What.INTERRUPTED);
        assertThat(told.getFirst().title()).startsWith("no scan for 11 s");
    }

    @Test
    void a_view_that_ends_before_its_run_is_told_as_interrupted() {
        after(3000);
        live.close();
        told.clear();

        told.addAll(lookout.look(live.now().orElseThrow(), 0, nanos));

        assertThat(kinds()).containsExactly(What.INTERRUPTED);
        assertThat(told.getFirst().words()).contains("it was not over", "Step 1 of 9");
    }

    @Test
    void a_run_that_nobody_started_ends_without_alarm() {
        after(5);
        live.close();

        told.addAll(lookout.look(live.now().orElseThrow(), 0, nanos));

        assertThat(kinds()).containsExactly(What.CHECK_IN);
    }

    @Test
    void cells_left_nearly_empty_are_told_of_again_every_four_hours() throws Exception {
        begin(new Program("discharge only", false, List.of(new Step.Discharge(1, 52.5, 2.5))));
        while (!rehearsal.over()) {
            after(1000);
        }
        after(10);
        nanos += REPEAT - 1;
        look(0);
        nanos += 1;
        look(0);

        assertThat(kinds().stream().filter(k -> k != What.CHECK_IN)).containsExactly(What.DONE, What.NEARLY_EMPTY,
                What.NEARLY_EMPTY);
        assertThat(told.getLast().title()).startsWith("nearly empty, recharge within 24 h");
    }

    @Test
    void the_last_words_say_that_no_check_in_follows() {
        after(3000);

        Notice last = lookout.last(Stepped.look(live)).orElseThrow();

        assertThat(last.what()).isEqualTo(What.CHECK_IN);
        assertThat(last.nextMinutes()).isZero();
        assertThat(last.words()).contains("no more check-ins come");
    }
}
