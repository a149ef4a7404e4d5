package rigwarden.prove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Rig;
import rigwarden.rig.TestRigs;
import rigwarden.warden.Scans;

/** The finger test, on six probes of one cell. */
class FingersTest {
    private static final Rig RIG = TestRigs.oneCell();
    private static final String[] PROBES = {"cell_01_c", "terminal_01p_c", "terminal_01n_c", "shunt_c", "contactor_c", "room_c"};

    private final Bedside bedside = new Bedside(RIG);
    private final Fingers stage = new Fingers(RIG);
    private final Map<String, Double> over = new HashMap<>();

    FingersTest() {
        Consumer<Scans> warmed = scans -> over.forEach((probe, kelvin) -> Bedside.set(RIG, probe, 22 + kelvin).accept(scans));
        bedside.twist = warmed;
        bedside.take(stage, 1.1);
    }

    /** A channel moves to this much over its level, and that is looked at for so long, s. */
    private void moves(String probe, double kelvin, double seconds) {
        over.put(probe, kelvin);
        bedside.take(stage, seconds);
    }

    @Test
    void each_probe_that_rises_when_it_is_asked_for_is_in_its_place() {
        for (String probe : PROBES) {
            assertThat(bedside.last.prompt()).isInstanceOf(Prompt.Warm.class);
            assertThat(bedside.last.prompt().words()).contains("(" + probe + ")");
            moves(probe, 1.0, 0.3);
        }

        assertThat(bedside.last.over()).isTrue();
        assertThat(bedside.outcomes).extracting(Outcome::what).containsExactly(PROBES);
        assertThat(bedside.wrong()).isEmpty();
    }

    @Test
    void half_a_kelvin_in_two_scans_is_a_rise_and_less_or_once_is_none() {
        moves("cell_01_c", 0.4375, 2);
        assertThat(bedside.outcomes).isEmpty();
        moves("cell_01_c", 0.5, 0.1);
        assertThat(bedside.outcomes).isEmpty();
        moves("cell_01_c", 0, 0.1);
        moves("cell_01_c", 0.5, 0.1);
        assertThat(bedside.outcomes).isEmpty();
        bedside.take(stage, 0.1);
        assertThat(bedside.outcomes).hasSize(1);
    }

    @Test
    void another_that_rises_instead_for_a_second_is_named() {
        moves("shunt_c", 1.0, 0.9);
        assertThat(bedside.outcomes).isEmpty();
        moves("shunt_c", 1.0, 0.1);

        assertThat(bedside.wrong()).singleElement().asString().startsWith("probe cell_01_c: shunt_c rose where cell_01_c was warmed");
    }

    @Test
    void two_that_rise_alike_prove_nothing_before_one_leads() {
        moves("cell_01_c", 1.0, 0);
        moves("shunt_c", 0.75, 3);
        assertThat(bedside.outcomes).isEmpty();
        moves("cell_01_c", 2.0, 0.2);

        assertThat(bedside.wrong()).isEmpty();
        assertThat(bedside.outcomes).hasSize(1);
    }

    @Test
    void one_that_falls_is_reversed_and_where_it_is_another_both_are_said() {
        moves("cell_01_c", -1.0, 1);
        assertThat(bedside.wrong()).singleElement().asString().contains("cell_01_c falls when it is warmed: its two wires are reversed");

        moves("room_c", -1.0, 1);
        assertThat(bedside.wrong().getLast()).startsWith("probe terminal_01p_c: room_c fell where terminal_01p_c was warmed");
    }

    @Test
    void what_was_warmed_before_and_goes_on_rising_or_cools_is_not_taken_for_the_next() {
        moves("cell_01_c", 1.0, 0.2);
        moves("cell_01_c", 4.0, 2.8);
        assertThat(bedside.outcomes).as("its finger leaves late").hasSize(1);
        moves("cell_01_c", 0.0, 3);
        assertThat(bedside.outcomes).as("and it cools").hasSize(1);
        moves("terminal_01p_c", 1.0, 0.2);

        assertThat(bedside.wrong()).isEmpty();
        assertThat(bedside.outcomes).hasSize(2);
    }

    @Test
    void after_twenty_seconds_nothing_is_dead_and_a_person_may_leave_one_out() {
        bedside.take(stage, 19.9);
        assertThat(bedside.outcomes).isEmpty();
        bedside.take(stage, 0.2);
        assertThat(bedside.wrong()).singleElement().asString().contains("nothing moved when it was warmed");

        bedside.take(stage, Answer.SKIP);
        assertThat(bedside.outcomes.getLast()).isEqualTo(Outcome.skipped(Outcome.Part.PROBE, "terminal_01p_c"));
        assertThat(bedside.outcomes.getLast().spoils()).isTrue();
    }
}
