package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.program.Ended;
import rigwarden.run.Progress.Carried;
import rigwarden.run.Progress.Window;
import rigwarden.warden.Warning;

/** Sums, means and marks of a step so far. */
class AccountTest {
    private static final long SECOND = Seen.SECOND;
    private static final long MINUTE = 60 * SECOND;

    @Test
    void charge_and_energy_go_in_and_out_by_their_signs() {
        Account both = Account.EMPTY.plus(2 * SECOND, 10, 33, 3.3).plus(4 * SECOND, -5, -16, 3.2).plus(SECOND, 1, 3, 3);

        assertThat(both).isEqualTo(new Account(7 * SECOND, 21_000_000_000L, 20_000_000_000L, 69_000_000L, 64_000_000L, 22_400_000L));
    }

    @Test
    void an_hour_of_an_ampere_is_an_ampere_hour_less_what_came_out() {
        Account hour = Account.EMPTY.plus(3600 * SECOND, 10, 33, 3.3).plus(1800 * SECOND, -10, -30, 3.0);

        assertThat(hour.ampHours()).isCloseTo(5, within(1e-12));
        assertThat(hour.wattHours()).isCloseTo(33 - 15, within(1e-12));
    }

    @Test
    void parts_add_up_in_each_sum_by_itself_and_one_taken_off_leaves_the_other() {
        Account one = new Account(1, 20, 300, 4_000, 50_000, 600_000);
        Account other = new Account(7, 80, 900, 1_000, 20_000, 300_000);

        assertThat(one.plus(other)).isEqualTo(new Account(8, 100, 1_200, 5_000, 70_000, 900_000));
        assertThat(one.plus(other).minus(one)).isEqualTo(other);
    }

    @Test
    void a_mean_is_of_a_whole_second_and_there_is_none_before() {
        Window first = Window.from(0).with(SECOND - 1, 3);
        assertThat(first.mean()).isNaN();
        assertThat(first.with(SECOND, 5).mean()).isEqualTo(4);
        Window next = first.with(SECOND, 5).with(SECOND + SECOND / 2, 8);
        assertThat(next.mean()).as("until the next is over").isEqualTo(4);
        assertThat(next.with(2 * SECOND, 10).mean()).isEqualTo(9);
        assertThat(next.with(2 * SECOND, 10).sinceNanos()).isEqualTo(2 * SECOND);
    }

    private static Progress fresh() {
        return Progress.begin(0, 100, new Progress.Point(100, 0, 0, 0), Carried.fresh(new double[1]));
    }

    @Test
    void a_step_has_flowed_from_its_first_ampere_in_this_path_on() {
        Progress before = fresh();
        Progress after = before.accounted(Account.EMPTY, before.point(), 200, before.window(), before.top());

        assertThat(before.flowed()).isFalse();
        assertThat(after.flowed()).isTrue();
        assertThat(after.resumed(300).flowed()).as("in the path before").isFalse();
    }

    @Test
    void time_that_a_step_waited_is_not_its_own() {
        assertThat(fresh().waited(50).sinceNanos()).isEqualTo(150);
    }

    @Test
    void a_pause_counts_as_idle_when_less_was_moved_than_is_worth_it() {
        Progress moved = charged(1.5).paused(0.5);
        assertThat(moved.idle()).isZero();
        assertThat(charged(0.5).paused(0.5).idle()).as("just worth it").isZero();
        assertThat(charged(0.49).paused(0.5).idle()).isEqualTo(1);
        assertThat(charged(0.49).paused(0.5).paused(0.5).idle()).as("twice").isEqualTo(2);
        assertThat(moved.paused(0.5).idle()).as("nothing since the last pause").isEqualTo(1);
    }

    private static Progress charged(double ampHours) {
        Account account = Account.EMPTY.plus(3600 * SECOND, ampHours, 0, 0);
        Progress before = fresh();
        return before.accounted(account, before.point(), 200, before.window(), before.top());
    }

    /** Eleven marks, a minute apart, of one cell. */
    private static Still marked(double from, double to) {
        Still still = Still.EMPTY;
        for (int i = 0; i <= 10; i++) {
            still = still.with(i * MINUTE, new double[] {3.2, i == 5 ? to : from});
        }
        return still;
    }

    @Test
    void a_cell_is_still_below_a_millivolt_on_the_flat_and_below_ten_beside_it() {
        assertThat(marked(3.3, 3.3009).still()).isTrue();
        assertThat(marked(3.3, 3.3011).still()).isFalse();
        assertThat(marked(3.5, 3.509).still()).isTrue();
        assertThat(marked(3.5, 3.511).still()).isFalse();
        assertThat(marked(3.0, 3.002).still()).as("from 3.0 V on it is flat").isFalse();
        assertThat(marked(2.999, 3.005).still()).as("below it is steep").isTrue();
        assertThat(marked(3.40, 3.398).still()).as("up to 3.40 V it is flat").isFalse();
        assertThat(marked(3.401, 3.395).still()).as("above it is steep").isTrue();
        assertThat(marked(0.010, 0).still()).as("ten millivolts to the bit").isFalse();
    }

    @Test
    void ten_minutes_must_be_there_and_older_ones_are_forgotten() {
        Still still = Still.EMPTY.with(0, new double[] {3.5});
        for (int i = 1; i <= 9; i++) {
            still = still.with(i * MINUTE, new double[] {3.3});
        }
        assertThat(still.still()).as("nine minutes").isFalse();
        assertThat(still.with(10 * MINUTE, new double[] {3.3}).still()).as("it fell first").isFalse();
        assertThat(still.with(10 * MINUTE, new double[] {3.3}).with(11 * MINUTE, new double[] {3.3}).still()).isTrue();
        assertThat(still.due(10 * MINUTE)).isTrue();
        assertThat(still.due(10 * MINUTE - 1)).isFalse();
        assertThat(Still.EMPTY.due(0)).isTrue();
    }

    @Test
    void every_event_but_a_notice_must_be_on_the_card_at_once() {
        assertThat(new Event.Started().weighty()).isTrue();
        assertThat(new Event.Finished(Ended.TIME).weighty()).isTrue();
        assertThat(List.of(new Event.Warned(new Warning(null, null, 0, 0))).getFirst().weighty()).isFalse();
    }
}
