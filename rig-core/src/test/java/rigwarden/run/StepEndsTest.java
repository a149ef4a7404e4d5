package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import rigwarden.program.Ended;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** What ends each kind of step, to the last bit and the nanosecond. Figures are the safety page's. */
class StepEndsTest {
    private static final Rig CELL = TestRigs.exact(TestRigs.oneCell());
    private static final Rig PACK = TestRigs.exact(TestRigs.eightCells());
    private static final int SOURCE = 0;
    private static final int SINK = 1;
    private static final int CHARGER = 0;
    private static final int INVERTER = 2;
    private static final long SECOND = Seen.SECOND;
    private static final long HOUR = 3600 * SECOND;
    private static final Step.Charge CHARGE = new Step.Charge(SOURCE, 21, 3.60, 5.25);
    private static final Step.Charge PLAIN = new Step.Charge(CHARGER, 21, 3.60, 3);
    private static final Step.Discharge DISCHARGE = new Step.Discharge(SINK, 10.5, 2.50);
    private static final Step.HeatRun HEAT = new Step.HeatRun(INVERTER, 75, 2.50, 2 * HOUR);
    private static final double CUT_BAND = 2.50 + 0.02;

    private static Optional<Ended> ended(Step.Flowing step, Seen seen) {
        return new Steps(seen.rig, new Sight(seen.rig)).ended(step, seen.progress(), seen.scan());
    }

    private static void ends(Step.Flowing step, Seen seen, Ended by) {
        assertThat(ended(step, seen)).contains(by);
    }

    private static void goesOn(Step.Flowing step, Seen seen) {
        assertThat(ended(step, seen)).isEmpty();
    }

    private static Seen cell(double amps, UnaryOperator<Seen> as) {
        return as.apply(new Seen(CELL).cells(3.3).set(Role.CURRENT, amps));
    }

    private static Seen pack(double amps, double volts) {
        return new Seen(PACK).cells(volts).set(Role.CURRENT, amps);
    }

    /** So long ago began the step. */
    private static Seen running(Seen seen, double hours, long more) {
        seen.since = Seen.NOW - Math.round(hours * HOUR) - more;
        return seen;
    }

    private static Seen held(double amps, double volts, long forNanos) {
        Seen seen = new Seen(CELL).cells(volts).set(Role.CURRENT, amps);
        seen.amps = amps;
        seen.ceiling = Seen.NOW - forNanos;
        return seen;
    }

    @Test
    void a_charge_is_full_at_its_taper_with_a_cell_within_ten_millivolts_of_the_ceiling() {
        ends(CHARGE, held(5.25, 3.60 - 0.010, SECOND), Ended.TAPER);
        goesOn(CHARGE, held(Math.nextUp(5.25), 3.60, SECOND));
        goesOn(CHARGE, held(5.25, Math.nextDown(3.60 - 0.010), SECOND));
        Seen before = held(5, 3.60, SECOND);
        before.ceiling = Long.MAX_VALUE;
        goesOn(CHARGE, before);
    }

    @Test
    void a_charge_ends_after_three_hours_of_taper_or_a_quarter_more_than_the_rating_takes_and_those() {
        goesOn(CHARGE, held(10, 3.60, 3 * HOUR));
        ends(CHARGE, held(10, 3.60, 3 * HOUR + 1), Ended.CEILING);
        goesOn(CHARGE, running(cell(21, s -> s), 6.25 + 3, 0));
        ends(CHARGE, running(cell(21, s -> s), 6.25 + 3, 10_000), Ended.TIME);
    }

    @Test
    void a_discharge_ends_when_the_mean_of_a_second_is_at_the_cut_off_and_this_scan_is_about_there() {
        ends(DISCHARGE, mean(2.50, CUT_BAND), Ended.CUT_OFF);
        goesOn(DISCHARGE, mean(Math.nextUp(2.50), 2.45));
        goesOn(DISCHARGE, mean(2.45, Math.nextUp(CUT_BAND)));
        goesOn(DISCHARGE, running(cell(-10.5, s -> s), 12.5, 0));
        ends(DISCHARGE, running(cell(-10.5, s -> s), 12.5, 10_000), Ended.TIME);
    }

    private static Seen mean(double mean, double now) {
        Seen seen = new Seen(CELL).cells(now).set(Role.CURRENT, -10.5);
        seen.low = mean;
        return seen;
    }

    @Test
    void a_park_ends_at_its_share_of_what_was_measured_or_of_the_rating_or_at_the_ceiling() {
        Step.Park park = new Step.Park(SOURCE, 21, 0.5, 3.60);
        ends(park, parked(50, 100), Ended.CHARGE_REACHED);
        goesOn(park, parked(49.999, 100));
        ends(park, parked(52.5, 0), Ended.CHARGE_REACHED);
        goesOn(park, parked(52.499, 0));
        Seen met = parked(1, 0);
        met.ceiling = Seen.NOW;
        ends(park, met, Ended.CEILING);
        ends(park, cell(21, s -> s.cells(3.60)), Ended.CEILING);
        goesOn(park, cell(21, s -> s.cells(3.60).set(Role.CELL_VOLTS, Math.nextDown(3.60))));
        Seen mean = cell(21, s -> s.cells(3.60));
        mean.top = Math.nextDown(3.60);
        goesOn(park, mean);
        goesOn(park, running(parked(1, 0), 6.25, 0));
        ends(park, running(parked(1, 0), 6.25, 10_000), Ended.TIME);
    }

    private static Seen parked(double ampHours, double measured) {
        Seen seen = new Seen(CELL).cells(3.3).set(Role.CURRENT, 21);
        seen.ampHours = ampHours;
        seen.measured = measured;
        return seen;
    }

    @Test
    void a_heat_run_ends_at_its_cut_off_or_by_its_time() {
        ends(HEAT, pack(-75, 2.5), Ended.CUT_OFF);
        goesOn(HEAT, running(pack(-75, 3.3), 2, 0));
        ends(HEAT, running(pack(-75, 3.3), 2, 1), Ended.TIME);
    }

    @Test
    void a_pulse_ends_by_its_times_or_early_at_an_edge_of_the_cell() {
        Step.Pulse out = new Step.Pulse(SINK, 5, 20 * SECOND, 50, 10 * SECOND);
        Step.Pulse in = new Step.Pulse(SOURCE, 5, 20 * SECOND, 50, 10 * SECOND);
        goesOn(out, pulsed(3.3, 30 * SECOND - 1));
        ends(out, pulsed(3.3, 30 * SECOND), Ended.TIME);
        ends(out, pulsed(2.5, SECOND), Ended.CUT_OFF);
        goesOn(in, pulsed(2.5, SECOND));
        ends(in, pulsed(3.65 - 0.05, SECOND), Ended.CEILING);
        goesOn(in, pulsed(Math.nextDown(3.65 - 0.05), SECOND));
        goesOn(out, pulsed(3.65, SECOND));
    }

    private static Seen pulsed(double volts, long forNanos) {
        Seen seen = new Seen(CELL).cells(volts).set(Role.CURRENT, 5);
        seen.control = Seen.NOW - forNanos;
        return seen;
    }

    @Test
    void cells_in_parallel_are_balanced_after_their_hold_and_cells_in_series_at_the_first_ceiling() {
        Step.Balance balance = new Step.Balance(SOURCE, 10, 3.60, 0.5, 20 * 60 * SECOND);
        goesOn(balance, held(0.4, 3.60, 20 * 60 * SECOND - 1));
        ends(balance, held(0.4, 3.60, 20 * 60 * SECOND), Ended.TAPER);
        goesOn(balance, running(cell(10, s -> s), 13.125, 0));
        ends(balance, running(cell(10, s -> s), 13.125, 10_000), Ended.TIME);
        ends(balance, running(held(0.6, 3.60, SECOND), 262.5, 10_000), Ended.TIME);
        Seen series = pack(10, 3.60);
        series.ceiling = Seen.NOW;
        ends(new Step.Balance(CHARGER, 10, 3.60, 0.5, HOUR), series, Ended.CEILING);
    }

    @Test
    void an_approach_ends_at_its_limit_and_a_recovery_at_its_voltage() {
        Step.ProveProtection up = new Step.ProveProtection(SOURCE, 5, 3.62);
        Step.ProveProtection down = new Step.ProveProtection(SINK, 5, 2.60);
        Step.Recover recover = new Step.Recover(SOURCE, 5.25, 3.0);
        ends(up, cell(5, s -> s.cells(3.62)), Ended.CEILING);
        goesOn(up, cell(5, s -> s.cells(Math.nextDown(3.62))));
        ends(down, cell(-5, s -> s.cells(2.60)), Ended.CUT_OFF);
        goesOn(down, cell(-5, s -> s.cells(Math.nextUp(2.60))));
        ends(up, running(cell(5, s -> s), 26.25, 10_000), Ended.TIME);
        ends(recover, cell(5, s -> s.cells(3.0)), Ended.CHARGE_REACHED);
        goesOn(recover, cell(5, s -> s.cells(Math.nextDown(3.0))));
        ends(recover, running(cell(5, s -> s.cells(2.5)), 25, 10_000), Ended.TIME);
    }

    /** A soft start looks like a taper for five minutes; then a second of it, near the ceiling, is the end. */
    @Test
    void a_plain_charger_has_tapered_after_its_soft_start_for_a_second_near_the_ceiling() {
        long five = 300 * SECOND;
        ends(PLAIN, tapering(3, 3.60 - 0.05, five + 1, SECOND), Ended.TAPER);
        goesOn(PLAIN, tapering(3, 3.60 - 0.05, five, SECOND));
        goesOn(PLAIN, tapering(3, 3.60 - 0.05, five + 1, SECOND - 1));
        goesOn(PLAIN, tapering(Math.nextUp(3.0), 3.60 - 0.05, five + 1, SECOND));
        goesOn(PLAIN, tapering(3, Math.nextDown(3.60 - 0.05), five + 1, SECOND));
        ends(PLAIN, tapering(20, 3.60, five + 1, SECOND), Ended.CEILING);
        Seen never = tapering(3, 3.57, five + 1, SECOND);
        never.flowed = Long.MIN_VALUE;
        goesOn(PLAIN, never);
        ends(PLAIN, running(pack(21, 3.3), 6.25 + 3, 10_000), Ended.TIME);
    }

    private static Seen tapering(double amps, double volts, long sinceNanos, long smallNanos) {
        Seen seen = pack(amps, volts);
        seen.since = Seen.NOW - sinceNanos;
        seen.control = Seen.NOW - smallNanos;
        return seen;
    }

    /** A bus still tied to the pack was left by the device. */
    @Test
    void a_device_that_gives_up_for_a_quarter_of_a_second_has_ended_the_step() {
        ends(PLAIN, stopped(3.4, 250_000_001), Ended.CHARGER);
        goesOn(PLAIN, stopped(3.4, 250_000_000));
        ends(HEAT, stopped(2.84, 250_000_001), Ended.SINK);
        goesOn(HEAT, stopped(2.84, 250_000_000));
        goesOn(HEAT, stopped((21 + 24.5) / 2 / 8, HOUR / 3600 * 66));
        ends(HEAT, stopped(3.2, 66 * SECOND + 1), Ended.SINK);
        goesOn(HEAT, stopped(3.2, 66 * SECOND));
        goesOn(DISCHARGE, cell(0, s -> {
            s.flowed = Seen.NOW - HOUR;
            return s;
        }));
    }

    private static Seen stopped(double volts, long forNanos) {
        Seen seen = pack(0, volts);
        seen.flowed = Seen.NOW - forNanos;
        return seen;
    }

    @Test
    void a_stop_is_one_only_of_a_current_that_flowed_was_ordered_and_is_seen_to_be_gone() {
        Seen never = stopped(3.4, 0);
        never.flowed = Long.MIN_VALUE;
        goesOn(PLAIN, never);
        goesOn(PLAIN, stopped(3.4, SECOND).set(Role.CURRENT, 1));
        goesOn(PLAIN, stopped(3.4, SECOND).failed(Role.BUS_VOLTS));
        goesOn(PLAIN, stopped(3.4, SECOND).failed(Role.PACK_VOLTS));
        Seen zero = stopped(3.4, SECOND);
        zero.amps = 0;
        goesOn(PLAIN, zero);
    }

    /** Protection 3.65 and 2.45 V, 25 mV; a cell may have moved 50 mV since. */
    @Test
    void a_bus_that_left_the_pack_was_cut_off_by_the_protection_where_a_cell_was_at_its_edge() {
        Step.Discharge drain = new Step.Discharge(SINK, 10.5, 2.50);
        ends(PLAIN, untied(3.58), Ended.PROTECTION);
        goesOn(PLAIN, untied(3.57));
        ends(drain, untied(2.52), Ended.PROTECTION);
        goesOn(drain, untied(2.54));
        Seen mean = untied(3.5);
        mean.top = 3.6;
        ends(PLAIN, mean, Ended.PROTECTION);
        Seen rebound = untied(2.6);
        rebound.low = 2.5;
        ends(drain, rebound, Ended.PROTECTION);
        Seen wrong = untied(3.3);
        wrong.low = 2.4;
        goesOn(PLAIN, wrong);
        ends(new Step.ProveProtection(SINK, 5, 2.42), untied(2.52), Ended.PROTECTION);
        goesOn(new Step.ProveProtection(SINK, 5, 2.42), untied(3.0));
        goesOn(DISCHARGE, cell(0, s -> s.cells(3.0).set(Role.BUS_VOLTS, 1)));
    }

    private static Seen untied(double volts) {
        return pack(0, volts).set(Role.BUS_VOLTS, 10);
    }

    @Test
    void only_a_discharge_and_a_heat_run_measure_what_the_cells_hold() {
        assertThat(Steps.measures(DISCHARGE)).isTrue();
        assertThat(Steps.measures(HEAT)).isTrue();
        assertThat(Steps.measures(CHARGE)).isFalse();
        assertThat(Steps.measures(new Step.Park(SOURCE, 21, 0.5, 3.6))).isFalse();
        assertThat(Steps.measures(new Step.Pulse(SINK, 5, SECOND, 50, SECOND))).isFalse();
        assertThat(Steps.measures(new Step.Balance(SOURCE, 10, 3.6, 0.5, HOUR))).isFalse();
        assertThat(Steps.measures(new Step.ProveProtection(SINK, 5, 2.6))).isFalse();
        assertThat(Steps.measures(new Step.Recover(SOURCE, 5, 3.0))).isFalse();
        assertThat(Steps.measures(new Step.ProveStop(SINK, 5, Step.Element.RELAY))).isFalse();
    }
}
