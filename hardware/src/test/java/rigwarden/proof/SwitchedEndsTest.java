package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.Rehearsal;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.run.Event;

/** Sources and sinks that do as they like, and the battery's own protection: what ends a step is called by its name. */
class SwitchedEndsTest {
    private static final int CHARGER = 0;
    private static final int SINK = 1;
    private static final int INVERTER = 2;
    private static final double WHATEVER_IT_GIVES = 21;
    private static final long HOUR = 3_600_000_000_000L;

    private final List<Event> events = new ArrayList<>();

    private static Rig rig(String... edits) throws IOException {
        String text = Files.readString(Bench.RIGS.resolve("eight-cells.toml"));
        for (int i = 0; i < edits.length; i += 2) {
            assertThat(text).contains(edits[i]);
            text = text.replace(edits[i], edits[i + 1]);
        }
        return ((Read.Sound<Rig>) RigFile.read("eight-cells.toml", text)).value();
    }

    private List<Ended> ends(Rig rig, Step... steps) throws BusFailure {
        Rehearsal rehearsal = new Rehearsal(rig, new Program("ends", false, List.of(steps)), 1, List.of(), Bench.NOWHERE);
        List<Ended> ends = new ArrayList<>();
        while (!rehearsal.over()) {
            for (Event event : rehearsal.scan()) {
                events.add(event);
                if (event instanceof Event.StepEnded ended) {
                    ends.add(ended.by());
                    assertThat(Math.abs(rehearsal.rig().world().amps())).as("opened at once").isLessThan(0.1);
                }
            }
        }
        return ends;
    }

    private static Step.Charge charge() {
        return new Step.Charge(CHARGER, WHATEVER_IT_GIVES, 3.60, 3.0);
    }

    private static Step.HeatRun heatRun(Rig rig) {
        return new Step.HeatRun(INVERTER, rig.devices().get(INVERTER).maxAmps(), 2.50, 3 * HOUR);
    }

    @Test
    void equal_cells_are_full_when_the_charger_has_come_down_to_the_taper() throws Exception {
        Rig rig = rig("charge_spread_percent = 3", "charge_spread_percent = 0", "capacity_spread_percent = 0.4",
                "capacity_spread_percent = 0", "volts = 28.8", "volts = 28.5", "volts_percent = 1 ", "volts_percent = 0.1 ");

        assertThat(ends(rig, charge())).containsExactly(Ended.TAPER);
    }

    @Test
    void a_charger_that_finishes_before_the_ceiling_has_ended_the_charge() throws Exception {
        Rig rig = rig("charge_spread_percent = 3", "charge_spread_percent = 0", "volts = 28.8", "volts = 27.6",
                "finish_a = 2 ", "finish_a = 4 ");

        assertThat(ends(rig, charge())).containsExactly(Ended.CHARGER);
    }

    @Test
    void an_inverter_that_quits_has_ended_the_heat_run_and_is_not_started_again() throws Exception {
        Rig rig = rig("quit_v = 21.0", "quit_v = 24.0");

        assertThat(ends(rig, charge(), heatRun(rig))).containsExactly(Ended.CEILING, Ended.SINK);
        assertThat(events).filteredOn(e -> e instanceof Event.Tripped).isEmpty();
    }

    @Test
    void a_thermostat_s_pauses_do_not_end_a_heat_run() throws Exception {
        Rig rig = rig("pause_s = 0", "pause_s = 120");

        assertThat(ends(rig, charge(), heatRun(rig))).containsExactly(Ended.CEILING, Ended.CUT_OFF);
        assertThat(events).filteredOn(e -> e instanceof Event.Tripped).isEmpty();
    }

    @Test
    void a_protection_that_opens_inside_the_programme_is_named_and_the_result_stands() throws Exception {
        Rig rig = rig("low_v = 2.45", "low_v = 2.60");

        assertThat(ends(rig, charge(), new Step.Discharge(SINK, 10.5, 2.50)))
                .containsExactly(Ended.CEILING, Ended.PROTECTION);
        assertThat(events).filteredOn(e -> e instanceof Event.Tripped).isEmpty();
    }

    @Test
    void a_charger_above_what_the_cold_allows_waits_and_trips_nothing() throws Exception {
        Rig rig = rig("room_c = 15", "room_c = 9", "room_drift_k_per_h = 0.27", "room_drift_k_per_h = 0.7");

        assertThat(ends(rig, charge())).containsExactly(Ended.CEILING);
        assertThat(events).filteredOn(e -> e instanceof Event.Tripped).isEmpty();
        OptionalDouble waited = events.stream().filter(e -> e instanceof Event.Waited)
                .mapToDouble(e -> ((Event.Waited) e).celsius()).findFirst();
        assertThat(waited).as("it said so").isPresent();
    }
}
