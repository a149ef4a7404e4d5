package rigwarden.live;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.calibration.MeterStatement;
import rigwarden.emulated.Rehearsal;
import rigwarden.joint.JointOhms;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** A walk beside a run: which readings count, and which never can. */
class WalkTest {
    private static final Path RIGS = Path.of("..", "hardware", "rigs");
    private static final MeterStatement METER = new MeterStatement("hand meter", 0.01, 3, 1e-4, 0, 0.4, LocalDate.of(2026, 1, 1), 365);
    private static final Read.Sound<Rig> RIG = (Read.Sound<Rig>) RigFile.read(RIGS.resolve("one-cell.toml"));
    private static final Program NIGHT =
            ((Read.Sound<Program>) ProgramFile.read(RIGS.resolve("one-cell-night.toml"), RIG)).value();

    private final List<JointOhms> kept = new ArrayList<>();
    private final Walk walk = new Walk(RIG.value(), METER, kept::add);

    private static Optional<Snapshot> after(int scans) throws BusFailure {
        Live live = new Live(RIG.value(), NIGHT, (_, _, _, _) -> { });
        Rehearsal rehearsal = new Rehearsal(RIG.value(), NIGHT, 1, List.of(), live);
        for (int i = 0; i < scans; i++) {
            rehearsal.scan();
        }
        live.step();
        return live.now();
    }

    private static String refused(Walk.Answer answer) {
        return switch (answer) {
            case Walk.Answer.Taken taken -> "taken: " + taken.words();
            case Walk.Answer.Refused refused -> refused.words();
        };
    }

    @Test
    void without_current_or_a_fresh_look_nothing_counts() throws BusFailure {
        assertThat(refused(walk.take(1, "4.7", Optional.empty(), 0))).startsWith("No current is known now");
        assertThat(refused(walk.take(1, "4.7", after(10), 0.1)))
                .contains("A flow, and that is too little: allowed is 10.5 A or more").contains("Wait for the step with current");
        assertThat(refused(walk.take(1, "4.7", after(1500), 3.5))).startsWith("No current is known now");
        assertThat(kept).isEmpty();
    }

    @Test
    void a_drop_becomes_a_resistance_by_the_current_of_its_scan_and_is_handed_on() throws BusFailure {
        Optional<Snapshot> now = after(1500);
        double amps = walk.amps(now).orElseThrow();

        assertThat(amps).isGreaterThan(15);
        assertThat(walk.take(1, "−1.3", now, 0.1)).isInstanceOf(Walk.Answer.Taken.class);
        assertThat(kept).singleElement().satisfies(joint -> {
            assertThat(joint.ohms()).isEqualTo(1.3e-3 / amps, within(1e-12));
            assertThat(joint.expandedOhms()).isGreaterThan(2 * 3e-4 / Math.sqrt(3) / amps);
        });
        assertThat(walk.next(now).orElseThrow().place()).isEqualTo(2);
    }

    @Test
    void a_joint_of_the_device_that_rests_is_refused() throws BusFailure {
        Optional<Snapshot> charging = after(1500);
        int sink = walk.joints().stream().filter(joint -> joint.name().endsWith("at sink, plus")).findFirst().orElseThrow().place();

        assertThat(refused(walk.take(sink, "1.3", charging, 0.1))).contains("not through this joint");
    }

    @Test
    void a_figure_that_only_a_wrong_unit_or_a_fire_can_give_is_refused_with_both() throws BusFailure {
        assertThat(refused(walk.take(1, "300", after(1500), 0.1))).contains("Look at the meter's unit; if it is true, press STOP.");
        assertThat(refused(walk.take(0, "1", after(10), 0.1))).startsWith("There is no joint 0");
        assertThat(refused(walk.take(1, "NaN", after(10), 0.1))).contains("is no reading");
    }
}
