package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.program.Ended;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.warden.Closing;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;

/** Sources and sinks that do as they like, in an otherwise obedient world: what ends their steps, and by which name. */
class PackMachineTest {
    private static final Rig PACK = TestRigs.eightCells();
    private static final int CHARGER = 0;
    private static final int SINK = 1;
    private static final int INVERTER = 2;
    private static final long MINUTE = 60_000_000_000L;
    private static final Step.Charge CHARGE = new Step.Charge(CHARGER, PACK.devices().get(CHARGER).maxAmps(), 3.60, 3);
    private static final Step.Rest REST = new Step.Rest(30 * MINUTE, 180 * MINUTE);

    private static Step.HeatRun heatRun(long atMostMinutes) {
        return new Step.HeatRun(INVERTER, PACK.devices().get(INVERTER).maxAmps(), 2.50, atMostMinutes * MINUTE);
    }

    @Test
    void a_charger_shows_its_voltage_once_before_it_first_meets_a_cell() {
        ObedientRig night = new ObedientRig(PACK, 0.9, CHARGE, REST, new Step.Discharge(SINK, 10.5, 2.5), REST, CHARGE);
        night.flows = (rig, on) -> on.through() == CHARGER ? 20 : on.set().amps();
        night.until(() -> night.orders instanceof Orders.Energised);
        assertThat(((Orders.Energised) night.orders).stage()).isEqualTo(Closing.NO_LOAD);

        night.run();

        assertThat(night.ends()).containsExactly(Ended.CEILING, Ended.SETTLED, Ended.CUT_OFF, Ended.SETTLED, Ended.CEILING);
        assertThat(night.events.stream().filter(e -> e instanceof Event.NoLoadShown)).hasSize(1)
                .first().isInstanceOfSatisfying(Event.NoLoadShown.class, shown -> {
                    assertThat(shown.source()).isEqualTo("charger");
                    assertThat(shown.volts()).isCloseTo(PACK.devices().get(CHARGER).highestVolts(), within(0.02));
                });
    }

    @Test
    void a_switched_device_is_ordered_its_own_greatest_current_and_no_voltage() {
        ObedientRig night = new ObedientRig(PACK, 0.5, CHARGE).reach(RunState.Stepping.class);

        assertThat(((Orders.Energised) night.orders).set().amps()).isEqualTo(PACK.devices().get(CHARGER).maxAmps());
        assertThat(((Orders.Energised) night.orders).set().volts()).isZero();
    }

    @Test
    void a_charger_that_comes_down_to_the_taper_near_the_ceiling_has_filled_the_cells() {
        ObedientRig night = new ObedientRig(PACK, 0.8, CHARGE);
        night.flows = (rig, _) -> rig.volts(0) < 3.55 ? 20 : Math.max(2.5, rig.amps() - 0.1);

        assertThat(night.run()).containsExactly(Ended.TAPER);
    }

    @Test
    void a_charger_that_starts_softly_has_not_tapered() {
        ObedientRig night = new ObedientRig(PACK, 0.992, CHARGE).reach(RunState.Stepping.class);
        long began = night.nanos;
        night.flows = (rig, _) -> Math.min(2.9, 1.5 + (rig.nanos - began) * 1e-9 / 100);

        night.until(() -> night.nanos - began > 4 * MINUTE);
        assertThat(night.state).isInstanceOf(RunState.Stepping.class);
        assertThat(night.run()).containsExactly(Ended.TAPER);
        assertThat((night.nanos - began) / (double) MINUTE).isCloseTo(5, within(0.1));
    }

    @Test
    void the_first_cell_at_the_ceiling_ends_a_charge_whatever_the_others_are() {
        ObedientRig night = new ObedientRig(PACK, 0.8, CHARGE);
        night.ampHours[3] += 3;
        night.flows = (_, _) -> 20;

        assertThat(night.run()).containsExactly(Ended.CEILING);
        assertThat(night.volts(3)).isGreaterThan(night.volts(0) + 0.05);
    }

    @Test
    void a_charger_that_stops_by_itself_has_ended_the_charge() {
        ObedientRig night = new ObedientRig(PACK, 0.5, CHARGE);
        night.flows = (rig, _) -> rig.ampHours[0] < 70 ? 20 : 0;

        assertThat(night.run()).containsExactly(Ended.CHARGER);
        assertThat(night.endedAmpHours(1)).isCloseTo(70 - 52.5, within(0.1));
    }

    @Test
    void a_heat_run_ends_at_its_cut_off_or_after_its_time() {
        ObedientRig whole = new ObedientRig(PACK, 0.9, heatRun(600));
        whole.flows = (_, _) -> 60;
        assertThat(whole.run()).containsExactly(Ended.CUT_OFF);

        ObedientRig part = new ObedientRig(PACK, 0.9, heatRun(20));
        part.flows = (_, _) -> 60;
        assertThat(part.run()).containsExactly(Ended.TIME);
        assertThat(part.endedAmpHours(1)).isCloseTo(-20, within(0.5));
    }

    @Test
    void an_inverter_that_quits_has_ended_the_run_at_once() {
        ObedientRig night = new ObedientRig(PACK, 0.3, heatRun(600));
        long[] quit = {0};
        night.flows = (rig, _) -> {
            quit[0] = quit[0] == 0 && rig.volts(0) <= 2.8 ? rig.nanos : quit[0];
            return quit[0] == 0 ? 60 : 0;
        };

        assertThat(night.run()).containsExactly(Ended.SINK);
        assertThat((night.nanos - quit[0]) * 1e-9).isLessThan(3);
    }

    @Test
    void a_thermostat_s_pause_ends_nothing() {
        ObedientRig night = new ObedientRig(PACK, 0.9, heatRun(30)).reach(RunState.Stepping.class);
        night.flows = (rig, _) -> rig.nanos / 40_000_000_000L % 2 == 0 ? 60 : 0;

        assertThat(night.run()).containsExactly(Ended.TIME);
        assertThat(night.endedAmpHours(1)).isCloseTo(-15, within(1.0));
    }

    @Test
    void the_battery_s_protection_that_opens_at_its_edge_is_named() {
        ObedientRig night = new ObedientRig(PACK, 0.1, new Step.Discharge(SINK, 10.5, 2.50)).reach(RunState.Stepping.class);
        night.twist = scans -> night.volts(0) < 2.51 || night.state instanceof RunState.Opening
                ? scans.set(Role.CURRENT, 0).set(Role.BUS_VOLTS, 10) : scans;

        assertThat(night.run()).containsExactly(Ended.PROTECTION);
        assertThat(night.tripped()).isFalse();
    }

    @Test
    void a_current_that_stops_far_from_any_edge_is_a_trip() {
        ObedientRig night = new ObedientRig(PACK, 0.5, new Step.Discharge(SINK, 10.5, 2.50)).reach(RunState.Stepping.class);
        for (int i = 0; i < 60; i++) {
            night.scan(1, Inbox.EMPTY);
        }
        night.twist = scans -> scans.set(Role.CURRENT, 0).set(Role.BUS_VOLTS, 10);
        night.scan(0.1, Inbox.EMPTY);

        assertThat(night.tripped()).isTrue();
        assertThat(night.ends()).isEqualTo(List.of(Ended.TRIPPED));
    }
}
