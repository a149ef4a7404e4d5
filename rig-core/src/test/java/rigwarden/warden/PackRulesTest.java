package rigwarden.warden;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** Rules that only a pack and switched devices have: what breaks them, how soon, and what a healthy night must not break. */
class PackRulesTest {
    private static final Rig RIG = TestRigs.eightCells();
    private static final int CHARGER = 0;
    private static final int SINK = 1;
    private static final int INVERTER = 2;
    private static final long SCAN = TestRigs.SCAN_NANOS;

    private final Warden warden = new Warden(RIG);
    private final List<Warning> warnings = new ArrayList<>();
    private Guard guard = warden.fresh(0);
    private Orders inForce = Orders.OFF;
    private Verdict last = new Verdict.Stopped(List.of());
    private Wish wish = Wish.NOTHING;
    private long nanos;
    private long stageNanos;
    private long number;

    private void scan(Inbox inbox, UnaryOperator<Scans> change, long forNanos) {
        nanos += forNanos;
        Scan scan = change.apply(new Scans(RIG, nanos).obeying(inForce, nanos - stageNanos)).scan(++number);
        Judged judged = warden.judge(guard, scan, inForce, inbox);
        Granted granted = warden.grant(judged.guard(), judged.verdict(), scan, wish);
        if (!words(granted.orders()).equals(words(inForce))) {
            stageNanos = nanos;
        }
        guard = granted.guard();
        inForce = granted.orders();
        last = judged.verdict();
        if (last instanceof Verdict.Healthy healthy) {
            warnings.addAll(healthy.warnings());
        }
    }

    private static String words(Orders orders) {
        return orders instanceof Orders.Energised on ? on.way() + " " + on.through() + " " + on.stage() : "off";
    }

    private void scans(double seconds, UnaryOperator<Scans> change) {
        for (int i = 0; i < Math.round(seconds * 10); i++) {
            scan(Inbox.EMPTY, change, SCAN);
        }
    }

    private void start() {
        scan(Inbox.of(Request.START), s -> s, SCAN);
        scans(30, s -> s);
    }

    private void flowing(int through, double amps) {
        start();
        Way way = RIG.devices().get(through).charges() ? Way.CHARGE : Way.DISCHARGE;
        for (Closing stage : List.of(Closing.PRECHARGE, Closing.CONTACT, Closing.CURRENT)) {
            wish = new Wish.Path(way, through, stage, stage == Closing.CURRENT ? new Setpoint(amps, 0) : Setpoint.NONE);
            scans(stage == Closing.CURRENT ? 60 : 1, s -> s);
        }
        assertThat(last).isInstanceOf(Verdict.Healthy.class);
    }

    /** Seconds until this rule is named, while the breach lasts. */
    private double until(int rule, UnaryOperator<Scans> breach) {
        long began = nanos + SCAN;
        for (int i = 0; i < 3000; i++) {
            scan(Inbox.EMPTY, breach, SCAN);
            if (last instanceof Verdict.Unhealthy unhealthy) {
                assertThat(unhealthy.first().rule().number()).isEqualTo(rule);
                assertThat(inForce).isInstanceOf(Orders.Off.class);
                return (nanos - began) * 1e-9;
            }
        }
        throw new AssertionError("rule " + rule + " never tripped");
    }

    private static Channel cell(int number) {
        return RIG.column(String.format("cell_%02d_v", number)).orElseThrow();
    }

    @Test
    void a_tap_that_is_off_trips_after_a_second_and_is_named_by_the_lower_of_its_cells() {
        start();

        double seconds = until(5, s -> s.set(cell(3), 3.25).set(cell(4), 3.35));

        assertThat(seconds).isCloseTo(1, within(0.11));
        assertThat(((Verdict.Unhealthy) last).first().where().cell()).isEqualTo(3);
    }

    @Test
    void cells_that_differ_among_themselves_are_no_tap_that_is_off() {
        start();

        scans(30, s -> s.set(cell(2), 3.38).set(cell(3), 3.26).set(cell(5), 3.36).set(cell(7), 3.29)
                .set(Role.PACK_VOLTS, 26.49));

        assertThat(last).isInstanceOf(Verdict.Healthy.class);
    }

    @Test
    void a_joint_that_steps_at_steady_current_trips_in_a_fifth_of_a_second() {
        flowing(SINK, 20);

        double seconds = until(6, s -> s.set(cell(5), 3.29).set(Role.PACK_VOLTS, 26.39));

        assertThat(seconds).isCloseTo(0.2, within(0.11));
        assertThat(((Verdict.Unhealthy) last).first().where().cell()).isEqualTo(5);
    }

    @Test
    void a_step_of_all_cells_with_their_current_is_no_joint() {
        flowing(INVERTER, 75);

        scans(5, s -> s.set(Role.CURRENT, -70).set(Role.CELL_VOLTS, 3.28).set(Role.PACK_VOLTS, 26.24));

        assertThat(last).isInstanceOf(Verdict.Healthy.class);
    }

    @Test
    void a_path_resistance_that_is_not_what_was_learnt_is_a_notice_told_once_and_a_trip_when_it_is_large() {
        flowing(SINK, 20);
        scans(60, s -> s);

        scans(120, s -> s.set(Role.PACK_VOLTS, 26.39));
        assertThat(warnings).extracting(w -> w.rule().number()).containsExactly(7);

        assertThat(until(4, s -> s.set(Role.PACK_VOLTS, 26.33))).isCloseTo(2, within(0.11));
    }

    @Test
    void a_cell_that_falls_alone_at_rest_is_a_notice_only_after_the_cells_have_settled() {
        start();
        for (int minute = 0; minute < 150; minute++) {
            double fallen = minute * 2e-4;
            scan(Inbox.EMPTY, s -> s.set(cell(2), 3.30 - fallen).set(Role.PACK_VOLTS, 26.4 - fallen), 60_000_000_000L);
            if (minute < 85) {
                assertThat(warnings).extracting(w -> w.rule().number()).doesNotContain(8);
            }
        }

        assertThat(warnings).filteredOn(w -> w.rule().number() == 8).hasSize(1)
                .first().satisfies(w -> assertThat(w.where().cell()).isEqualTo(2));
    }

    @Test
    void a_lost_path_trips_at_once_but_not_where_the_battery_s_protection_opens() {
        flowing(SINK, 20);
        assertThat(until(16, s -> s.set(Role.CURRENT, 0).set(Role.BUS_VOLTS, 10))).isZero();

        PackRulesTest other = new PackRulesTest();
        other.flowing(SINK, 20);
        other.scans(2, s -> s.set(Role.CELL_VOLTS, 2.47).set(Role.PACK_VOLTS, 19.76).set(Role.BUS_VOLTS, 19.7));
        other.scan(Inbox.EMPTY, s -> s.set(Role.CELL_VOLTS, 2.6).set(Role.PACK_VOLTS, 20.8).set(Role.CURRENT, 0)
                .set(Role.BUS_VOLTS, 10), SCAN);
        assertThat(other.last).as("named by the machine, in this very scan").isInstanceOf(Verdict.Healthy.class);
    }

    @Test
    void a_source_that_shows_too_much_without_load_trips_and_one_that_shows_nothing_too() {
        start();
        wish = new Wish.Path(Way.CHARGE, CHARGER, Closing.NO_LOAD, Setpoint.NONE);
        scans(3, s -> s);
        assertThat(last).isInstanceOf(Verdict.Healthy.class);

        assertThat(until(17, s -> s.set(Role.BUS_VOLTS, 29.4))).isCloseTo(0.2, within(0.11));

        PackRulesTest other = new PackRulesTest();
        other.start();
        other.wish = wish;
        assertThat(other.until(18, s -> s.set(Role.BUS_VOLTS, 0))).isCloseTo(40, within(0.3));
    }

    @Test
    void a_contactor_that_is_closed_while_a_source_shows_its_voltage_trips() {
        start();
        wish = new Wish.Path(Way.CHARGE, CHARGER, Closing.NO_LOAD, Setpoint.NONE);
        scans(1, s -> s);

        assertThat(until(48, s -> s.set(Role.FEEDBACK, 1))).isLessThan(0.05);
    }

    @Test
    void a_thermostat_s_pause_is_no_missing_current_and_a_longer_one_is() {
        flowing(INVERTER, 75);

        scans(55, s -> s.set(Role.CURRENT, 0));
        assertThat(last).isInstanceOf(Verdict.Healthy.class);

        assertThat(until(13, s -> s.set(Role.CURRENT, 0))).isBetween(11.0, 12.0);
    }

    @Test
    void one_false_reading_of_the_bus_in_a_thermostat_s_pause_is_no_lost_path_and_two_are() {
        flowing(INVERTER, 75);
        scans(10, s -> s.set(Role.CURRENT, 0));

        scans(0.1, s -> s.set(Role.CURRENT, 0).set(Role.BUS_VOLTS, 12));
        scans(1, s -> s.set(Role.CURRENT, 0));
        assertThat(last).isInstanceOf(Verdict.Healthy.class);

        assertThat(until(16, s -> s.set(Role.CURRENT, 0).set(Role.BUS_VOLTS, 12))).isCloseTo(0.1, within(0.05));
    }

    @Test
    void wishes_that_no_device_may_have_trip() {
        start();
        scans(5, s -> s);
        wish = new Wish.Path(Way.DISCHARGE, SINK, Closing.NO_LOAD, Setpoint.NONE);
        assertThat(until(62, s -> s)).as("only a switched source has a no-load voltage").isGreaterThanOrEqualTo(0);

        PackRulesTest crossed = new PackRulesTest();
        crossed.start();
        crossed.wish = new Wish.Path(Way.CHARGE, SINK, Closing.PRECHARGE, Setpoint.NONE);
        crossed.scan(Inbox.EMPTY, s -> s, SCAN);
        assertThat(crossed.guard).as("a sink does not charge").isInstanceOf(Guard.Tripped.class);

        PackRulesTest changed = new PackRulesTest();
        changed.flowing(SINK, 20);
        changed.wish = new Wish.Path(Way.DISCHARGE, INVERTER, Closing.CURRENT, new Setpoint(20, 0));
        changed.scan(Inbox.EMPTY, s -> s, SCAN);
        assertThat(changed.guard).as("a path goes through one device").isInstanceOf(Guard.Tripped.class);

        PackRulesTest strong = new PackRulesTest();
        strong.flowing(SINK, 20);
        strong.wish = new Wish.Path(Way.DISCHARGE, SINK, Closing.CURRENT, new Setpoint(40, 0));
        strong.scan(Inbox.EMPTY, s -> s, SCAN);
        assertThat(strong.guard).as("beyond the device, below the way's ceiling").isInstanceOf(Guard.Tripped.class);
    }

    @Test
    void a_pre_charge_may_follow_a_no_load_proof_only_through_off() {
        start();
        wish = new Wish.Path(Way.CHARGE, CHARGER, Closing.NO_LOAD, Setpoint.NONE);
        scans(1, s -> s);
        wish = new Wish.Path(Way.CHARGE, CHARGER, Closing.PRECHARGE, Setpoint.NONE);
        scan(Inbox.EMPTY, s -> s, SCAN);

        assertThat(guard).isInstanceOf(Guard.Tripped.class);
        assertThat(inForce).isInstanceOf(Orders.Off.class);
    }
}
