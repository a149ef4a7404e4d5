package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** What each kind of step orders in one scan. */
class StepOrdersTest {
    private static final Rig CELL = TestRigs.exact(TestRigs.oneCell());
    private static final Rig PACK = TestRigs.exact(TestRigs.eightCells());
    private static final int SOURCE = 0;
    private static final int SINK = 1;
    private static final int CHARGER = 0;
    private static final long SECOND = Seen.SECOND;
    private static final Step.Charge CHARGE = new Step.Charge(SOURCE, 21, 3.60, 5.25);
    private static final Step.Balance BALANCE = new Step.Balance(SOURCE, 10, 3.60, 0.5, 60 * SECOND);

    private static Progress controlled(Step.Flowing step, double ceiling, Seen seen) {
        return new Steps(seen.rig, new Sight(seen.rig)).controlled(step, seen.progress(), ceiling, seen.scan());
    }

    private static Seen at(double volts, double amps, long controlAgo) {
        Seen seen = new Seen(CELL).cells(volts).set(Role.CURRENT, amps);
        seen.amps = amps;
        seen.control = Seen.NOW - controlAgo;
        return seen;
    }

    private static Seen held(double volts, double amps, long controlAgo) {
        Seen seen = at(volts, amps, controlAgo);
        seen.ceiling = Seen.NOW - 100 * SECOND;
        return seen;
    }

    @Test
    void below_the_ceiling_a_charge_orders_its_current_or_what_the_scan_allows() {
        assertThat(controlled(CHARGE, 50, at(3.3, 21, SECOND)).amps()).isEqualTo(21);
        assertThat(controlled(CHARGE, 10.5, at(3.3, 21, SECOND)).amps()).isEqualTo(10.5);
        assertThat(controlled(CHARGE, 50, at(3.3, 21, SECOND)).ceilingNanos()).isEqualTo(Long.MAX_VALUE);
    }

    /** One false reading in the middle of a charge is no ceiling: the mean of the second before must be near. */
    @Test
    void the_ceiling_is_met_at_its_figure_with_a_mean_within_fifty_millivolts() {
        assertThat(controlled(CHARGE, 50, at(3.60, 21, SECOND)).ceilingNanos()).isEqualTo(Seen.NOW);
        assertThat(controlled(CHARGE, 50, at(Math.nextDown(3.60), 21, SECOND)).ceilingNanos()).isEqualTo(Long.MAX_VALUE);
        Seen near = at(3.60, 21, SECOND);
        near.top = 3.60 - 0.05;
        assertThat(controlled(CHARGE, 50, near).ceilingNanos()).isEqualTo(Seen.NOW);
        Seen far = at(3.60, 21, SECOND);
        far.top = Math.nextDown(3.60 - 0.05);
        assertThat(controlled(CHARGE, 50, far).ceilingNanos()).isEqualTo(Long.MAX_VALUE);
    }

    /** A cell of 105 Ah: 0.06 / 105 ohm, gain 0.35. Ten millivolts over are 6.125 A. */
    @Test
    void at_the_ceiling_the_current_is_set_once_a_second_by_what_the_cell_is_over_it() {
        assertThat(controlled(CHARGE, 50, held(3.61, 15, SECOND)).amps()).isCloseTo(15 - 6.125, within(1e-9));
        assertThat(controlled(CHARGE, 50, held(3.59, 10, SECOND)).amps()).isCloseTo(10 + 6.125, within(1e-9));
        assertThat(controlled(CHARGE, 50, held(3.59, 20, SECOND)).amps()).as("no more than the step").isEqualTo(21);
        assertThat(controlled(CHARGE, 50, held(3.61, 2, SECOND)).amps()).as("no less than nothing").isZero();
        assertThat(controlled(CHARGE, 50, held(3.61, 15, SECOND)).ceilingNanos()).isEqualTo(Seen.NOW - 100 * SECOND);
        assertThat(controlled(CHARGE, 50, held(3.61, 15, SECOND - 1)).amps()).as("not yet").isEqualTo(15);
        assertThat(controlled(CHARGE, 12, held(3.61, 15, SECOND - 1)).amps()).as("what the scan allows").isEqualTo(12);
        assertThat(controlled(CHARGE, 50, held(3.61, 15, SECOND - 1)).controlNanos()).isEqualTo(Seen.NOW - SECOND + 1);
        assertThat(controlled(CHARGE, 50, at(3.61, 15, 0)).amps()).as("at the first meeting at once").isCloseTo(15 - 6.125, within(1e-9));
    }

    @Test
    void a_balance_counts_anew_while_more_than_its_end_current_flows() {
        assertThat(controlled(BALANCE, 50, held(3.60, 0.5, SECOND - 1)).ceilingNanos()).isEqualTo(Seen.NOW - 100 * SECOND);
        assertThat(controlled(BALANCE, 50, held(3.60, 0.51, SECOND - 1)).ceilingNanos()).isEqualTo(Seen.NOW);
        assertThat(controlled(BALANCE, 50, at(3.3, 10, SECOND)).ceilingNanos()).as("before the ceiling").isEqualTo(Long.MAX_VALUE);
        assertThat(controlled(BALANCE, 50, held(3.60, 0.51, SECOND - 1)).amps()).isEqualTo(0.51);
    }

    @Test
    void a_park_holds_its_ceiling_and_a_discharge_only_orders() {
        assertThat(controlled(new Step.Park(SOURCE, 21, 0.4, 3.55), 50, at(3.55, 21, 0)).ceilingNanos()).isEqualTo(Seen.NOW);
        Progress discharge = controlled(new Step.Discharge(SINK, 10.5, 2.5), 50, at(3.3, 0, 5));
        assertThat(discharge.amps()).isEqualTo(10.5);
        assertThat(discharge.controlNanos()).isEqualTo(Seen.NOW - 5);
        assertThat(controlled(new Step.Discharge(SINK, 10.5, 2.5), 5, at(3.3, 0, 5)).amps()).isEqualTo(5);
    }

    @Test
    void a_heat_run_an_approach_a_recovery_and_a_proof_order_their_current_and_nothing_else() {
        for (Step.Flowing step : List.of(new Step.HeatRun(SINK, 10.5, 2.5, SECOND), new Step.ProveProtection(SINK, 10.5, 2.6),
                new Step.Recover(SOURCE, 10.5, 3.0), new Step.ProveStop(SINK, 10.5, Step.Element.RELAY))) {
            Progress ordered = controlled(step, 50, at(3.61, 0, 5));
            assertThat(ordered.amps()).as(step.kind()).isEqualTo(10.5);
            assertThat(ordered.controlNanos()).isEqualTo(Seen.NOW - 5);
            assertThat(ordered.ceilingNanos()).isEqualTo(Long.MAX_VALUE);
            assertThat(controlled(step, 4, at(3.61, 0, 5)).amps()).as("what the scan allows").isEqualTo(4);
        }
    }

    @Test
    void a_pulse_orders_its_base_for_its_time_and_then_its_pulse_within_what_the_scan_allows() {
        Step.Pulse pulse = new Step.Pulse(SINK, 5, 20 * SECOND, 50, 10 * SECOND);
        assertThat(controlled(pulse, 60, at(3.3, 0, 20 * SECOND - 1)).amps()).isEqualTo(5);
        assertThat(controlled(pulse, 60, at(3.3, 0, 20 * SECOND)).amps()).isEqualTo(50);
        assertThat(controlled(pulse, 3, at(3.3, 0, SECOND)).amps()).isEqualTo(3);
        assertThat(controlled(pulse, 40, at(3.3, 0, 20 * SECOND)).amps()).isEqualTo(40);
    }

    /** What a switched source gives is timed from when it became small. */
    @Test
    void a_plain_charger_s_taper_is_timed_while_it_gives_between_one_ampere_and_its_taper() {
        Step.Charge plain = new Step.Charge(CHARGER, 21, 3.60, 3);
        assertThat(small(plain, 3)).isTrue();
        assertThat(small(plain, Math.nextUp(3.0))).isFalse();
        assertThat(small(plain, 1)).isTrue();
        assertThat(small(plain, Math.nextDown(1.0))).as("none at all").isFalse();
        assertThat(small(new Step.Park(CHARGER, 21, 0.4, 3.6), 2)).as("a park has no taper").isFalse();
    }

    private static boolean small(Step.Flowing step, double amps) {
        Seen seen = new Seen(PACK).cells(3.5).set(Role.CURRENT, amps);
        seen.control = Seen.NOW - 7;
        Progress progress = controlled(step, 50, seen);
        assertThat(progress.amps()).isEqualTo(21);
        assertThat(progress.controlNanos()).isIn(Seen.NOW, Seen.NOW - 7);
        return progress.controlNanos() == Seen.NOW - 7;
    }

    @Test
    void a_switched_device_needs_its_whole_current_and_another_any() {
        Steps pack = new Steps(PACK, new Sight(PACK));
        Step.Charge plain = new Step.Charge(CHARGER, 21, 3.60, 3);
        assertThat(pack.fits(plain, 21)).isTrue();
        assertThat(pack.fits(plain, 20.9)).isFalse();
        double rounded = 21 * (1 + 1e-9);
        assertThat(pack.fits(new Step.Charge(CHARGER, rounded, 3.60, 3), 21)).as("as far as a sum may round").isTrue();
        assertThat(pack.fits(new Step.Charge(CHARGER, Math.nextUp(rounded), 3.60, 3), 21)).isFalse();
        assertThat(pack.fits(new Step.Discharge(SINK, 10, 2.5), 0.1)).isTrue();
        assertThat(pack.fits(new Step.Discharge(SINK, 10, 2.5), 0)).isFalse();
    }

    @Test
    void an_instrument_s_own_limit_is_that_of_all_cells_in_series() {
        Steps pack = new Steps(PACK, new Sight(PACK));
        assertThat(pack.instrumentVolts(new Step.Discharge(SINK, 10, 2.5))).isCloseTo(19.2, within(1e-9));
        assertThat(pack.instrumentVolts(new Step.Charge(CHARGER, 21, 3.60, 3))).isZero();
        assertThat(new Steps(CELL, new Sight(CELL)).instrumentVolts(CHARGE)).isCloseTo(3.65, within(1e-9));
    }
}
