package rigwarden.prove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Guards;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** Each contact of the loop by name, and the links that must not move the shunt. */
class LoopsAndGroundsTest {
    private static final Rig RIG = TestRigs.oneCell();

    private final Bedside bedside = new Bedside(RIG);

    private void loop(double on) {
        bedside.twist = scans -> scans.set(Role.LOOP, on);
    }

    @Test
    void a_contact_opens_the_loop_which_stays_open_until_a_person_resets_it() {
        Loops stage = new Loops(RIG);
        for (String contact : RIG.guards().loopContacts()) {
            loop(1);
            bedside.take(stage, 2);
            assertThat(bedside.last.prompt()).isInstanceOf(Prompt.Press.class);
            assertThat(bedside.last.prompt().words()).contains(contact.replace('_', ' '));
            loop(0);
            bedside.take(stage, 2);
            assertThat(bedside.last.prompt()).isInstanceOf(Prompt.Release.class);
            bedside.take(stage, Answer.DONE);
            assertThat(bedside.last.prompt()).isInstanceOf(Prompt.Watch.class);
            bedside.take(stage, 0.6);
            assertThat(bedside.last.prompt()).isInstanceOf(Prompt.Reset.class);
            loop(1);
            bedside.take(stage, Answer.NONE);
        }

        assertThat(bedside.last.over()).isTrue();
        assertThat(bedside.wrong()).isEmpty();
        assertThat(bedside.outcomes).extracting(Outcome::kind).containsExactly("loop emergency_stop", "loop thermal_cutout");
    }

    @Test
    void a_cell_window_is_opened_by_a_bench_voltage_and_every_other_contact_by_hand() {
        Guards guards = RIG.guards();
        Rig windowed = TestRigs.guarded(RIG, new Guards(guards.heartbeatShortest(), guards.heartbeatLongest(), List.of("emergency_stop", "cell_window"),
                true, 3.75, 2.30, guards.contactLagSeconds()));
        Loops stage = new Loops(windowed);
        loop(1);
        bedside.take(stage, 2);
        String stop = bedside.last.prompt().words();
        bedside.take(stage, Answer.SKIP);
        bedside.take(stage, 0.2);

        assertThat(stop).isEqualTo("Open the emergency stop (press it, or warm it, or pull its plug).");
        assertThat(bedside.last.prompt().words())
                .isEqualTo("Open the cell window (by a bench voltage at its input instead of the cell's: above 3.75 V, and another time below 2.30 V).");
    }

    @Test
    void a_bridged_contact_is_named_after_a_minute_and_one_that_is_left_out_spoils_nothing() {
        Loops stage = new Loops(RIG);
        bedside.take(stage, 60);
        assertThat(bedside.outcomes).isEmpty();
        bedside.take(stage, 0.2);
        assertThat(bedside.wrong()).singleElement().asString().contains("loop emergency_stop: the loop stayed closed");

        bedside.take(stage, Answer.SKIP);
        assertThat(bedside.last.over()).isTrue();
        assertThat(bedside.outcomes.getLast().result()).isEqualTo(Outcome.Result.SKIPPED);
        assertThat(bedside.outcomes.getLast().spoils()).isFalse();
    }

    @Test
    void a_loop_that_closes_with_its_contact_does_not_latch() {
        Loops stage = new Loops(RIG);
        loop(0);
        bedside.take(stage, 0.2);
        loop(1);
        bedside.take(stage, Answer.DONE);
        bedside.take(stage, 0.1);

        assertThat(bedside.wrong()).singleElement().asString().contains("does not latch");
    }

    @Test
    void a_coil_supply_that_lives_with_the_loop_open_passes_it_by() {
        Loops stage = new Loops(RIG);
        loop(0);
        bedside.take(stage, 0.2);
        bedside.twist = scans -> scans.set(Role.LOOP, 0).set(Role.COIL_FEED, 1);
        bedside.take(stage, 0.1);

        assertThat(bedside.wrong()).singleElement().asString().contains("alive with the loop open");
    }

    @Test
    void a_loop_that_nobody_releases_or_that_cannot_be_reset_is_said() {
        Loops stage = new Loops(RIG);
        loop(0);
        bedside.take(stage, 60.3);
        assertThat(bedside.wrong()).singleElement().asString().contains("nobody said");

        bedside.take(stage, Answer.NONE);
        bedside.take(stage, Answer.DONE);
        bedside.take(stage, 62);
        assertThat(bedside.wrong().getLast()).contains("cannot be reset");
    }

    /** A thousandth of the 100 A that shunt and fuse let this rig have. */
    @Test
    void plugging_the_links_may_move_the_shunt_by_a_thousandth_of_the_path_s_current() {
        double amps = Math.max(RIG.chargeCeilingAmps(), RIG.dischargeCeilingAmps());

        assertThat(moved(0.00099 * amps)).isEmpty();
        assertThat(moved(-0.00101 * amps)).singleElement().asString().startsWith("grounds: the shunt's reading moved by -");
        assertThat(moved(0.00101 * amps)).hasSize(1);
    }

    private static List<String> moved(double amps) {
        Bedside bedside = new Bedside(RIG);
        Grounds stage = new Grounds(RIG);
        bedside.take(stage, 2.2);
        assertThat(bedside.last.prompt()).isInstanceOf(Prompt.Plug.class);
        bedside.twist = scans -> scans.set(Role.CURRENT, amps);
        bedside.take(stage, Answer.DONE);
        bedside.take(stage, 1.9);
        assertThat(bedside.last.over()).isFalse();
        bedside.take(stage, 0.2);
        assertThat(bedside.last.over()).isTrue();
        return bedside.wrong();
    }

    @Test
    void grounds_that_are_left_out_are_not_proved() {
        Grounds stage = new Grounds(RIG);
        bedside.take(stage, 2.2);
        bedside.take(stage, Answer.SKIP);

        assertThat(bedside.last.over()).isTrue();
        assertThat(bedside.outcomes.getFirst().spoils()).isTrue();
    }
}
