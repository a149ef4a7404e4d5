package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.emulated.EmulatedRig;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.Outcome;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredEvent;
import rigwarden.logbook.StoredProof;
import rigwarden.prove.Stops;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** The guided check of a real rig, on an emulated bench and clock with somebody beside it who types. */
class RigProofTest {
    private static final Path RIG = Path.of("..", "hardware", "rigs", "one-cell.toml");

    private final ByteArrayOutputStream said = new ByteArrayOutputStream();
    private final AtomicBoolean end = new AtomicBoolean();
    private Inputs inputs;
    private EmulatedRig emulated;
    private ProofBench bench;
    private Optional<RigProof> proof = Optional.empty();

    @TempDir
    private Path dir;

    @BeforeEach
    void a_sound_rig() throws Exception {
        Read.Sound<Rig> rig = Inputs.sound(RigFile.read(RIG));
        inputs = new Inputs(rig.value(), Files.readString(RIG), Stops.programme(rig.value()), Stops.TEXT, rig.warnings());
        emulated = new EmulatedRig(rig.value(), 1);
        bench = new ProofBench(rig.value(), emulated);
    }

    private int proved() throws IOException {
        PrintStream out = new PrintStream(said, true, StandardCharsets.UTF_8);
        try (Logbook book = Logbook.open(dir, "2026-01-10T20:00"); Showing showing = Showing.of(book, dir, Optional.empty())) {
            ProofRecord record = new ProofRecord(inputs, "2026-01-10T20:00", "the builder", false, List.of("A7"));
            proof = Optional.of(new RigProof(record, book, showing, emulated.clock(), out));
            return proof.get().call(bench, bench.answers(), end::get);
        }
    }

    private String said() {
        return said.toString(StandardCharsets.UTF_8);
    }

    private List<StoredProof> rows() {
        try (Logbook book = Logbook.open(dir, "now")) {
            return book.proofs();
        }
    }

    private List<LedgerRun> runs() {
        try (Logbook book = Logbook.open(dir, "now")) {
            return book.runs();
        }
    }

    /** What is typed in a scan while the person is told to stand clear, counted from 1. */
    private void typed(long clearScan, String line) {
        typed(clearScan, line, () -> { });
    }

    private void typed(long clearScan, String line, Runnable also) {
        bench.atScan(() -> {
            if (bench.clearScans() == clearScan) {
                bench.answers().heard(line);
            }
            also.run();
        });
    }

    @Test
    void a_sound_rig_is_proved_when_enter_is_pressed_and_each_outcome_is_a_row_that_is_no_rehearsal() throws Exception {
        typed(20, "");

        int exit = proved();

        assertThat(exit).as(said()).isEqualTo(Exits.DONE);
        assertThat(said()).containsSubsequence("> Warm the probe", "> " + RigProof.STAND_CLEAR, "good   heartbeat", "good   stop sink contactor", "PROVED, signed off by the builder.");
        assertThat(rows()).extracting(StoredProof::of).containsOnly(inputs.proved(List.of("A7")));
        assertThat(rows()).allMatch(StoredProof::passed).noneMatch(StoredProof::rehearsed).allSatisfy(r -> assertThat(r.run()).isEqualTo(OptionalInt.of(1)));
        assertThat(rows()).extracting(StoredProof::kind).contains("loop emergency_stop", "heartbeat line low", "heartbeat line high", "probe room_c", "stop source relay", "joint cell 1").endsWith(StoredProof.WHOLE);
        assertThat(runs()).singleElement().extracting(LedgerRun::outcome).isEqualTo(Outcome.FINISHED);
        assertThat(Replays.all(dir)).isEqualTo(1);
    }

    @Test
    void a_word_that_is_no_answer_never_energises_the_rig_and_it_is_asked_again() throws Exception {
        typed(20, "wait", () -> end.set(bench.clearScans() > 100));

        int exit = proved();

        assertThat(exit).isEqualTo(Exits.STOPPED);
        assertThat(said()).containsSubsequence("> " + RigProof.STAND_CLEAR, "> No answer: Enter", "> " + RigProof.STAND_CLEAR, "NOT PROVED");
        assertThat(runs()).isEmpty();
        assertThat(emulated.world().coulombs()).isZero();
    }

    @Test
    void an_enter_from_before_stand_clear_was_shown_or_could_be_read_does_not_energise() throws Exception {
        bench.atScan(() -> {
            if (bench.clearScans() >= 1 && bench.clearScans() <= 4) {
                bench.answers().heard("");
            }
            end.set(bench.clearScans() > 100);
        });

        proved();

        assertThat(said()).containsSubsequence("> " + RigProof.STAND_CLEAR, "does not count", "> " + RigProof.STAND_CLEAR);
        assertThat(runs()).isEmpty();
    }

    @Test
    void a_no_or_a_stop_at_stand_clear_ends_it_at_once_even_where_an_enter_follows() throws Exception {
        bench.atScan(() -> {
            if (bench.clearScans() == 20) {
                bench.answers().heard("no");
                bench.answers().heard("");
            }
        });

        int exit = proved();

        assertThat(exit).isEqualTo(Exits.STOPPED);
        assertThat(bench.clearScans()).isEqualTo(20);
        assertThat(runs()).isEmpty();
        assertThat(rows().getLast()).satisfies(r -> assertThat(r.kind()).isEqualTo(StoredProof.WHOLE)).matches(r -> !r.passed());
    }

    @Test
    void a_stop_that_is_typed_at_rest_ends_it_and_what_was_found_is_kept() throws Exception {
        bench.atScan(() -> {
            if (bench.scans() == 200) {
                bench.answers().heard("stop");
            }
        });

        int exit = proved();

        assertThat(exit).isEqualTo(Exits.STOPPED);
        assertThat(bench.scans()).isEqualTo(200);
        assertThat(rows()).extracting(StoredProof::kind).contains("at rest taps").endsWith(StoredProof.WHOLE);
        assertThat(rows().getLast().passed()).isFalse();
    }

    @Test
    void a_stop_in_the_middle_opens_everything_and_nothing_that_was_not_reached_counts_as_proved() throws Exception {
        typed(20, "", () -> {
            if (bench.clearScans() > 20 && Math.abs(emulated.world().amps()) > 1) {
                bench.answers().heard("stop");
            }
        });

        int exit = proved();

        assertThat(exit).isEqualTo(Exits.STOPPED);
        assertThat(emulated.world().amps()).isZero();
        assertThat(said()).contains("stopped by a person", "nothing proved: a person stopped it", "not reached", "NOT PROVED");
        assertThat(runs()).singleElement().extracting(LedgerRun::outcome).isEqualTo(Outcome.STOPPED);
        assertThat(rows()).filteredOn(r -> r.kind().startsWith("stop ")).isNotEmpty().noneMatch(StoredProof::passed);
        assertThat(rows().getLast()).matches(r -> !r.passed()).satisfies(r -> assertThat(r.run()).isEqualTo(OptionalInt.of(1)));
        assertThat(Replays.all(dir)).isEqualTo(1);
    }

    @Test
    void a_start_with_the_arm_key_off_is_given_up_after_five_seconds_and_says_so() throws Exception {
        typed(20, "", () -> {
            if (bench.clearScans() == 20) {
                emulated.world().arm(false);
            }
        });

        int exit = proved();

        assertThat(exit).isEqualTo(Exits.TRIPPED);
        assertThat(said()).containsSubsequence("WRONG  at rest arm key: the arm key is off", "NOT PROVED");
        assertThat(bench.clearScans()).isBetween(20 + 30 + 50L, 20 + 30 + 50 + 60L);
        assertThat(emulated.world().coulombs()).isZero();
        assertThat(runs()).singleElement().satisfies(r -> assertThat(r.outcome()).isEqualTo(Outcome.STOPPED)).satisfies(r -> assertThat(r.words()).contains("arm key is off"));
        assertThat(rows()).filteredOn(r -> r.kind().equals("at rest arm key")).last().matches(r -> !r.passed());
        assertThat(rows().getLast().passed()).isFalse();
    }

    @Test
    void what_an_instrument_complains_of_is_said_once_at_rest_and_under_current_and_the_run_file_keeps_the_latter() throws Exception {
        typed(20, "", () -> {
            boolean current = bench.clearScans() > 20 && Math.abs(emulated.world().amps()) > 1;
            if (bench.scans() == 30 || bench.scans() == 40) {
                proof.orElseThrow().complained("source: -222 Data out of range", emulated.clock().nanos());
            } else if (current && !end.get()) {
                proof.orElseThrow().complained("sink: exception 3\u001b[2J", emulated.clock().nanos());
                end.set(true);
            }
        });

        proved();

        assertThat(said()).containsOnlyOnce("> Complaint of source: -222 Data out of range").containsOnlyOnce("> Complaint of sink: exception 3 [2J").doesNotContain("\u001b");
        assertThat(said()).containsSubsequence("Touch nothing for five seconds", "Complaint of source", "Touch nothing for five seconds", "Complaint of sink");
        try (RunReader run = RunReader.open(dir.resolve("runs").resolve("0001.db"))) {
            assertThat(run.events()).filteredOn(e -> e.kind().equals("instrument")).singleElement().extracting(StoredEvent::words).asString().startsWith("sink: exception 3");
        }
    }
}
