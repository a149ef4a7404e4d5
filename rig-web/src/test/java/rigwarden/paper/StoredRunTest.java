package rigwarden.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.emulated.Rehearsal;
import rigwarden.findings.Answer;
import rigwarden.findings.Kind;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.Outcome;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunSettings;
import rigwarden.page.Mornings;
import rigwarden.program.Program;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.warden.Failure;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** What the morning card, `runs` and `continue` tell of a run file is what its findings tell. */
class StoredRunTest {
    /** The contactor is proved and the path closed by then, and the current flows. */
    private static final long FLOWS = 900;
    private static final long EARLY = 200;

    @TempDir
    private Path folder;

    private Read.Sound<Rig> rig;

    @BeforeEach
    void theReferencePack() {
        rig = (Read.Sound<Rig>) RigFile.read(ShortDischarge.RIG);
    }

    /** A rehearsal whose sensor's count is changed on its way into the file. */
    private Path file(UnaryOperator<Scan> changed) throws Exception {
        Program program = ((Read.Sound<Program>) ProgramFile.read("short.toml", ShortDischarge.text(2), rig)).value();
        try (Logbook book = Logbook.open(folder, "test")) {
            Logbook.Begun begun = book.begin(new RunAbout(Files.readString(ShortDischarge.RIG), ShortDischarge.text(2), Map.of(), "test", 1, true, "rehearsal", 0),
                    rig.value().name(), program.name(), rig.value().channels(), 1_000_000, RunSettings.USUAL.withBallast(0), _ -> { });
            Rehearsal rehearsal = new Rehearsal(rig.value(), program, 1, List.of(), (scan, inbox, orders, events) -> {
                while (begun.writer().fill() > 0.5) {
                    Thread.onSpinWait();
                }
                begun.writer().offer(changed.apply(scan), inbox, orders, events);
            });
            while (!rehearsal.over()) {
                rehearsal.scan();
            }
            begun.writer().close();
            book.finish(begun.number(), Outcome.FINISHED, "");
            return book.file(begun.number());
        }
    }

    private Scan counted(Scan scan, UnaryOperator<Reading> changed) {
        Channel sum = rig.value().channel(Role.ACCUMULATED);
        List<Reading> readings = new ArrayList<>(scan.readings());
        readings.set(sum.index(), changed.apply(readings.get(sum.index())));
        return new Scan(scan.number(), scan.nanos(), List.copyOf(readings));
    }

    private static Card card(Path file) {
        LedgerRun run = new LedgerRun(1, "0001.db", "pack", "short", "test", Outcome.FINISHED, "", Optional.empty());
        return Mornings.card(run, file).orElseThrow();
    }

    @Test
    void a_count_that_jumped_by_five_ampere_hours_is_in_neither_of_them() throws Exception {
        Channel sum = rig.value().channel(Role.ACCUMULATED);
        long jump = Math.round(5 * 3600 / sum.scale());
        Path file = file(scan -> scan.number() < FLOWS ? scan : counted(scan, reading -> reading instanceof Reading.Valid valid
                ? Reading.of(sum, valid.code() - jump, valid.takenNanos())
                : reading));

        Answer.Value found = (Answer.Value) RunFindings.read(file).orElseThrow().findings().stream()
                .filter(f -> f.kind() == Kind.CHARGE).findFirst().orElseThrow().answer();
        StoredRun stored = StoredRun.whole(file).orElseThrow();

        assertThat(found.value()).isBetween(-4.0, -1.0);
        assertThat(stored.told().steps()).singleElement().satisfies(step -> {
            assertThat(step.chargeAmpHours().value()).isCloseTo(found.value(), within(1e-12));
            assertThat(step.chargeAmpHours().expanded()).isCloseTo(found.budget().expanded(), within(1e-12));
        });
        assertThat(stored.told().untold()).isEmpty();
    }

    @Test
    void where_the_findings_refuse_the_charge_the_card_has_no_number() throws Exception {
        Path file = file(scan -> scan.number() < EARLY ? scan : counted(scan, _ -> new Reading.Failed(Failure.NO_ANSWER, 0)));

        assertThat(RunFindings.read(file).orElseThrow().findings()).filteredOn(f -> f.kind() == Kind.CAPACITY).singleElement()
                .satisfies(f -> assertThat(f.answer()).isInstanceOf(Answer.Refused.class));
        assertThat(String.join(" ", card(file).lines())).contains("None of step 1: the sensor's accumulator could not be followed");
    }
}
