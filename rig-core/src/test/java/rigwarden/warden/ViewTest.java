package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** What one pass over a scan tells the rules that would else look at every channel. */
class ViewTest {
    private static final Rig CELL = TestRigs.exact(TestRigs.oneCell());
    private static final Channel BODY = CELL.channel(Role.BODY);

    @Test
    void of_a_good_scan_no_rule_that_looks_at_every_channel_has_to() {
        View good = new Moment(CELL).view();

        assertThat(good.anyFailed()).isFalse();
        assertThat(good.anyStale()).isFalse();
        assertThat(good.anyImplausible()).isFalse();
    }

    @Test
    void one_channel_that_failed_is_old_or_absurd_is_told_as_just_that() {
        View failed = new Moment(CELL).failed(BODY, 0).view();
        View old = new Moment(CELL).old(BODY, BODY.staleNanos() + 1).view();
        View absurd = new Moment(CELL).set(BODY, Math.nextUp(BODY.highest())).view();

        assertThat(failed.anyFailed()).isTrue();
        assertThat(failed.anyStale() || failed.anyImplausible()).isFalse();
        assertThat(old.anyStale()).isTrue();
        assertThat(old.anyFailed() || old.anyImplausible()).isFalse();
        assertThat(absurd.anyImplausible()).isTrue();
        assertThat(absurd.anyFailed() || absurd.anyStale()).isFalse();
    }

    @Test
    void a_reading_that_is_just_young_enough_or_just_possible_is_good() {
        assertThat(new Moment(CELL).old(BODY, BODY.staleNanos()).view().anyStale()).isFalse();
        assertThat(new Moment(CELL).set(BODY, BODY.highest()).view().anyImplausible()).isFalse();
    }

    @Test
    void of_a_scan_that_there_was_not_every_channel_reads_what_is_given_instead() {
        assertThat(CELL.channels()).allSatisfy(channel -> assertThat(View.past(new Scan(0, 0, List.of()), channel, 5)).isEqualTo(5));
    }

    @Test
    void a_switch_is_on_above_a_half_and_unseen_neither_on_nor_off() {
        Channel loop = CELL.channel(Role.LOOP);
        View half = new Moment(CELL).set(loop, 0.5).view();
        View above = new Moment(CELL).set(loop, Math.nextUp(0.5)).view();
        View unseen = new Moment(CELL).failed(loop, 0).view();

        assertThat(half.on(loop)).isFalse();
        assertThat(half.off(loop)).isTrue();
        assertThat(above.on(loop)).isTrue();
        assertThat(above.off(loop)).isFalse();
        assertThat(unseen.on(loop) || unseen.off(loop)).isFalse();
    }
}
