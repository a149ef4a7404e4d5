package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.Rehearsal;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.run.Event;

/** Each further kind of step on the real code path, to the end that it should have. */
class StepKindsTest {
    private static final long SECOND = 1_000_000_000L;
    private static final int SOURCE = 0;
    private static final int SINK = 1;

    private final Map<Integer, List<Double>> amps = new TreeMap<>();

    private List<Ended> ends(Rig rig, Step... steps) {
        try {
            Rehearsal rehearsal = new Rehearsal(rig, new Program("steps", false, List.of(steps)), 5, List.of(), Bench.NOWHERE);
            List<Ended> ends = new ArrayList<>();
            while (!rehearsal.over()) {
                for (Event event : rehearsal.scan()) {
                    assertThat(event).isNotInstanceOf(Event.Tripped.class);
                    if (event instanceof Event.StepEnded ended) {
                        ends.add(ended.by());
                    }
                }
                amps.computeIfAbsent(rehearsal.step(), _ -> new ArrayList<>()).add(rehearsal.rig().world().amps());
            }
            return ends;
        } catch (BusFailure e) {
            throw new AssertionError(e);
        }
    }

    @Test
    void a_pulse_is_two_currents_for_their_times_and_ends_by_time() {
        List<Ended> ends = ends(Bench.rig(), new Step.Pulse(SINK, 21, 10 * SECOND, 105 * 0.9, 5 * SECOND));

        assertThat(ends).containsExactly(Ended.TIME);
        assertThat(seconds(1, -21)).isCloseTo(10, within(1.5));
        assertThat(seconds(1, -94.5)).isCloseTo(5, within(1.5));
    }

    @Test
    void cells_in_parallel_are_balanced_when_the_current_has_been_small_for_half_an_hour() {
        List<Ended> ends = ends(Bench.rig(), new Step.Balance(SOURCE, 21, 3.60, 1.05, 1800 * SECOND));

        assertThat(ends).containsExactly(Ended.TAPER);
        List<Double> all = amps.get(1);
        assertThat(all.stream().filter(a -> a > 0.01 && a < 1.3).count() / 10.0).as("s at a small current")
                .isBetween(1700.0, 2400.0);
    }

    @Test
    void a_protection_is_approached_gently_and_named_when_it_opens() {
        List<Ended> ends = ends(Bench.packRig(), new Step.Discharge(SINK, 10.5, 2.50),
                new Step.ProveProtection(SINK, 5.25, 2.42));

        assertThat(ends).containsExactly(Ended.CUT_OFF, Ended.PROTECTION);
    }

    private double seconds(int step, double wanted) {
        return amps.get(step).stream().filter(a -> Math.abs(a - wanted) < 0.03 * Math.abs(wanted)).count() / 10.0;
    }
}
