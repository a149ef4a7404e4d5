package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rigwarden.program.Ended;
import rigwarden.run.Answer.Condition;
import rigwarden.run.Progress.Carried;
import rigwarden.warden.Swing;

/** Where a run was broken off, of every state that it can be in. */
class PickUpTest {
    private static final long SECOND = Seen.SECOND;
    private static final Progress PROGRESS = Progress.begin(2, 100 * SECOND, new Progress.Point(100 * SECOND, 0, 0, 0),
            new Carried(0, Set.of(), 104.5, new double[] {0.5}, Account.EMPTY));

    private static Optional<PickUp> of(RunState state) {
        return PickUp.of(7, state, 160 * SECOND, 21, List.of(new Bracket(3.2, 3.4)), Swing.NONE);
    }

    private static PickUp place() {
        return of(new RunState.Opening(PROGRESS, Optional.empty(), false, 150 * SECOND)).orElseThrow();
    }

    @Test
    void a_run_that_is_in_no_step_is_picked_up_nowhere() {
        assertThat(of(RunState.IDLE)).isEmpty();
        assertThat(of(new RunState.Proving(3))).isEmpty();
        assertThat(of(new RunState.Interrupted(3, 1))).as("tripped: the place is that of the scan before").isEmpty();
        assertThat(of(new RunState.Finished(Ended.CUT_OFF, 0))).isEmpty();
        assertThat(of(new RunState.Opening(PROGRESS, Optional.of(Ended.CUT_OFF), false, 150 * SECOND))).as("its step is over").isEmpty();
    }

    @Test
    void in_the_middle_of_a_pause_all_that_the_step_had_is_known() {
        PickUp place = place();

        assertThat(place.run()).isEqualTo(7);
        assertThat(place.step()).as("from one").isEqualTo(3);
        assertThat(place.spentNanos()).isEqualTo(60 * SECOND);
        assertThat(place.topNanos()).as("never at its ceiling").isEqualTo(-1);
        assertThat(place.measuredAmpHours()).isEqualTo(104.5);
        assertThat(place.zeroKelvin()).containsExactly(0.5);
        assertThat(place.brokenAmps()).isEqualTo(21);
        assertThat(place.carried().measuredAmpHours()).isEqualTo(104.5);
    }

    @Test
    void time_that_a_step_waited_for_its_temperature_is_not_its_own() {
        assertThat(of(new RunState.Waiting(PROGRESS, 130 * SECOND, 0, false)).orElseThrow().spentNanos()).isEqualTo(30 * SECOND);
    }

    @Test
    void a_ceiling_that_was_met_in_the_very_last_scan_was_met() {
        RunState met = new RunState.Stepping(PROGRESS.ordering(21, 160 * SECOND, 160 * SECOND));
        Progress.Point point = new Progress.Point(500 * SECOND, 0, 0, 0);

        PickUp place = of(met).orElseThrow();

        assertThat(place.topNanos()).isZero();
        assertThat(Progress.pickedUp(place, 500 * SECOND, point).ceilingNanos()).isEqualTo(500 * SECOND);
        assertThat(Progress.pickedUp(place, 500 * SECOND, point).step()).as("from nothing").isEqualTo(2);
        assertThat(Progress.pickedUp(place, 500 * SECOND, point).sinceNanos()).isEqualTo(440 * SECOND);
        PickUp earlier = of(new RunState.Stepping(PROGRESS.ordering(21, 160 * SECOND, 150 * SECOND))).orElseThrow();
        assertThat(Progress.pickedUp(earlier, 500 * SECOND, point).ceilingNanos()).as("ten seconds before").isEqualTo(490 * SECOND);
        assertThat(Progress.pickedUp(place(), 500 * SECOND, point).ceilingNanos()).as("never").isEqualTo(Long.MAX_VALUE);
    }

    @Test
    void half_an_hour_is_not_too_long_and_a_clock_that_went_back_is() {
        PickUp broken = place().brokenAt(1000 * SECOND);

        assertThat(broken.late(1000 * SECOND)).isEmpty();
        assertThat(broken.late(2800 * SECOND)).isEmpty();
        assertThat(broken.late(2800 * SECOND + 1).orElseThrow().condition()).isEqualTo(Condition.OUTAGE);
        assertThat(broken.late(1000 * SECOND - 1)).isPresent();
        assertThat(broken.late(4000 * SECOND).orElseThrow().toString()).contains("50.0 min").contains("0 to 30 min");
    }

    @Test
    void a_cell_at_either_end_of_its_bracket_agrees() {
        assertThat(place().disagrees(new double[] {3.2})).isEmpty();
        assertThat(place().disagrees(new double[] {Math.nextDown(3.2)})).isPresent();
        assertThat(place().disagrees(new double[] {3.4})).isEmpty();
        assertThat(place().disagrees(new double[] {Math.nextUp(3.4)})).isPresent();
    }

    @Test
    void the_cell_that_shows_another_voltage_is_named_by_its_number() {
        assertThat(place().disagrees(new double[] {3.3})).isEmpty();
        assertThat(place().disagrees(new double[] {3.41}).orElseThrow().toString()).contains("cell 1 at 3.4100 V").contains("3.2000 to 3.4000 V").contains("run 7");
    }
}
