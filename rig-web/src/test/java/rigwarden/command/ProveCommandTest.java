package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.Outcome;
import rigwarden.logbook.StoredProof;

/** The proof as a command on emulated rigs, what it leaves in the ledger, and for how long a rig counts as proved. */
class ProveCommandTest {
    private static final Path RIGS = Path.of("../hardware/rigs");
    private static final String RIG = RIGS.resolve("one-cell.toml").toString();
    private static final String PACK = RIGS.resolve("eight-cells.toml").toString();
    private static final LocalDateTime NOW = LocalDateTime.of(2026, 1, 10, 20, 0);

    @TempDir
    private Path dir;

    private static Inputs inputs() {
        return Inputs.read(Path.of(RIG), RIGS.resolve("one-cell-night.toml"));
    }

    @Test
    void a_sound_rig_is_led_through_signed_and_kept_with_its_run_which_replays() {
        Spoken spoken = Spoken.of("prove", RIG, "--rehearse", "--name", "the builder", "--logbook", dir.toString());

        assertThat(spoken.out()).contains("> Warm the probe on the positive stud of cell 1", "good   stop sink contactor", "Nothing wrong. A person would need 1:");
        assertThat(spoken.exit()).isEqualTo(Exits.DONE);
        try (Logbook book = Logbook.open(dir, "now")) {
            List<StoredProof> proofs = book.proofs();
            assertThat(proofs).allSatisfy(p -> assertThat(p.who()).isEqualTo("the builder")).allMatch(StoredProof::passed).allMatch(StoredProof::rehearsed)
                    .allSatisfy(p -> assertThat(p.of()).isEqualTo(inputs().proved(List.of())));
            assertThat(proofs.getLast()).satisfies(p -> assertThat(p.kind()).isEqualTo(StoredProof.WHOLE))
                    .satisfies(p -> assertThat(p.run()).isEqualTo(OptionalInt.of(1)));
            assertThat(proofs).extracting(StoredProof::kind).contains("loop emergency_stop", "heartbeat line low", "heartbeat line high", "probe room_c", "stop source relay", "joint cell 1");
            assertThat(book.runs().getFirst().outcome()).isEqualTo(Outcome.FINISHED);
        }
        assertThat(Replays.all(dir)).isEqualTo(1);
    }

    @Test
    void what_is_wired_wrongly_is_named_and_nothing_is_energised() {
        Spoken spoken = Spoken.of("prove", PACK, "--rehearse", "--with", "taps 3 and 4 are swapped", "--logbook", dir.toString());

        assertThat(spoken.out()).contains("WRONG  at rest taps: tap 3 and tap 4 are swapped", "Nothing is energised", "NOT PROVED");
        assertThat(spoken.exit()).isEqualTo(Exits.TRIPPED);
        try (Logbook book = Logbook.open(dir, "now")) {
            assertThat(book.runs()).isEmpty();
            assertThat(book.proofs().getLast().passed()).isFalse();
        }
    }

    @Test
    void a_shunt_whose_sense_leads_are_swapped_trips_the_proof_in_plain_words() {
        Spoken spoken = Spoken.of("prove", RIG, "--rehearse", "--with", "shunt sense is swapped", "--logbook", dir.toString());

        assertThat(spoken.out()).contains("The shunt's two sense leads are swapped", "rule 14", "not reached");
        assertThat(spoken.exit()).isEqualTo(Exits.TRIPPED);
    }

    @Test
    void a_real_rig_is_not_run_before_it_was_proved_and_a_rehearsal_of_the_proof_is_none() {
        Spoken.of("prove", RIG, "--rehearse", "--logbook", dir.toString());

        Spoken spoken = Spoken.of("run", RIG, RIGS.resolve("one-cell-night.toml").toString(), "--logbook", dir.toString());

        assertThat(spoken.exit()).isEqualTo(Exits.REFUSED);
        assertThat(spoken.err()).contains("is not proved: it was never proved", "rigwarden prove RIG");
    }

    private static StoredProof proof(String kind, LocalDateTime made, StoredProof.Of of) {
        return new StoredProof(inputs().rig().name(), OptionalInt.of(4), kind, true, made.toString(), "", of, "x", false);
    }

    private static List<StoredProof> all(LocalDateTime whole, LocalDateTime hardware, StoredProof.Of of) {
        return List.of(proof("loop emergency_stop", hardware, of), proof("loop thermal_cutout", hardware, of), proof("loop cell_window", hardware, of),
                proof("heartbeat line low", hardware, of), proof("heartbeat line high", hardware, of), proof(StoredProof.WHOLE, whole, of));
    }

    private static LedgerRun tripped(int number, String started) {
        return new LedgerRun(number, "", inputs().rig().name(), "", started, Outcome.TRIPPED, "rule 41", Optional.empty());
    }

    private static LastProof judged(List<StoredProof> proofs, List<LedgerRun> runs, int from) {
        return LastProof.judged(inputs().rig(), inputs().proved(List.of()), proofs, runs, NOW, from == 0 ? OptionalInt.empty() : OptionalInt.of(from));
    }

    @Test
    void a_proof_holds_seven_days_and_its_loops_and_heartbeat_ninety() {
        StoredProof.Of of = inputs().proved(List.of());

        assertThat(judged(all(NOW.minusDays(7), NOW.minusDays(90), of), List.of(), 0).missing()).isEmpty();
        assertThat(judged(all(NOW.minusDays(7).minusMinutes(1), NOW.minusDays(90), of), List.of(), 0).missing())
                .singleElement().asString().contains("more than 7 days old");
        assertThat(judged(all(NOW.minusDays(1), NOW.minusDays(90).minusMinutes(1), of), List.of(), 0).missing())
                .hasSize(5).allSatisfy(m -> assertThat(m).contains("more than 90 days ago"));
        assertThat(judged(all(NOW.minusDays(7), NOW, of), List.of(), 0).lines().getFirst()).contains("Proved on").contains("run 0004");
    }

    @Test
    void a_changed_rig_file_a_later_failure_or_a_trip_after_it_ends_a_proof_but_no_rehearsal_s_trip_does() {
        StoredProof.Of of = inputs().proved(List.of());
        List<StoredProof> sound = all(NOW.minusDays(1), NOW.minusDays(1), of);
        List<StoredProof> failed = new ArrayList<>(sound);
        failed.add(new StoredProof(inputs().rig().name(), OptionalInt.of(5), "heartbeat line high", false, NOW.toString(), "", of, "x", false));

        assertThat(judged(all(NOW, NOW, new StoredProof.Of("other", "", "")), List.of(), 0).missing()).singleElement().asString().contains("rig file has changed");
        assertThat(judged(all(NOW, NOW, new StoredProof.Of(of.rigHash(), "other", "")), List.of(), 0).missing()).singleElement().asString().contains("calibrated since the proof of 2026-01-10T20:00");
        assertThat(judged(failed, List.of(), 0).missing()).containsExactly("heartbeat line high is not proved");
        assertThat(judged(sound, List.of(tripped(5, "2026-01-10T10:00")), 0).missing()).singleElement().asString().contains("run 0005 tripped after");
        assertThat(judged(sound, List.of(tripped(5, "2026-01-10T10:00")), 5).missing()).isEmpty();
        assertThat(judged(sound, List.of(tripped(4, "2026-01-10T10:00"), tripped(6, RecordedRehearsal.LABEL)), 0).missing()).isEmpty();
    }

    /** A real proof of now with one cell in the rig. */
    private void proved(Path rig, String cell) {
        LocalDateTime now = LocalDateTime.now(ZoneId.systemDefault()).withNano(0);
        Inputs of = Inputs.read(rig, RIGS.resolve("one-cell-night.toml"));
        try (Logbook book = Logbook.open(dir.resolve("book"), now.toString())) {
            book.enter(all(now, now, of.proved(cell.isEmpty() ? List.of() : List.of(cell))).stream()
                    .map(p -> new StoredProof(p.rig(), OptionalInt.empty(), p.kind(), p.passed(), p.made(), p.words(), p.of(), p.who(), p.rehearsed())).toList());
        }
    }

    private Spoken run(String rig, String typed, String... more) {
        InputStream in = System.in;
        try {
            System.setIn(new ByteArrayInputStream(typed.getBytes(StandardCharsets.UTF_8)));
            return Spoken.of(Stream.concat(Stream.of("run", rig, RIGS.resolve("one-cell-night.toml").toString(), "--logbook", dir.resolve("book").toString()), Stream.of(more))
                    .toArray(String[]::new));
        } finally {
            System.setIn(in);
        }
    }

    @Test
    void a_rig_is_run_only_with_the_cells_that_it_was_proved_with() {
        proved(Path.of(RIG), "A7");

        assertThat(run(RIG, "", "--cells", "A9").err()).contains("is not proved with A9: its last proof was made with A7");
        assertThat(run(RIG, "A9\n")).satisfies(s -> assertThat(s.out()).contains("What is written on the cell in the rig?"))
                .satisfies(s -> assertThat(s.err()).contains("is not proved with A9"));
        assertThat(run(RIG, "").err()).contains("name them with --cells");
        assertThat(run(RIG, "", "--cells", "A7,A8").err()).contains("allowed are 1 different labels");
        assertThatCode(() -> LastProof.of(dir.resolve("book"), inputs(), LocalDateTime.now(ZoneId.systemDefault())).insist(inputs().rig(), List.of("A7"))).doesNotThrowAnyException();
    }

    @Test
    void a_proof_that_does_not_say_its_cells_is_none_and_a_rig_file_that_names_them_needs_no_asking() throws IOException {
        Path named = Files.writeString(dir.resolve("named.toml"), Files.readString(Path.of(RIG)).replace("# labels", "labels"));
        proved(Path.of(RIG), "");
        assertThat(run(RIG, "A7\n").err()).contains("its last proof does not say which cells were in it");

        proved(named, "A8");
        assertThat(run(named.toString(), "")).satisfies(s -> assertThat(s.out()).doesNotContain("What is written"))
                .satisfies(s -> assertThat(s.err()).contains("is not proved with A7: its last proof was made with A8"));
        assertThat(run(named.toString(), "", "--cells", "A9").err()).contains("the rig file says A7");
    }
}
