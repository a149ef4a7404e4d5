package rigwarden.rigfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.program.Program;
import rigwarden.rig.Rig;

/** The table of who opens first, and the plain words where the order is wrong. */
class OpensFirstTest {
    private static List<OpensFirst> tables(Read.Sound<Rig> rig) {
        Program night = Reference.sound(Reference.packNight(rig, "unattended = true", "unattended = false")).value();
        return OpensFirst.of(rig.value(), List.of(night));
    }

    private static OpensFirst table(List<OpensFirst> tables, String quantity) {
        return tables.stream().filter(t -> t.quantity().equals(quantity)).findFirst().orElseThrow();
    }

    @Test
    void on_the_reference_rig_the_programme_ends_first_and_the_warden_last_and_nothing_is_wrong() {
        List<OpensFirst> tables = tables(Reference.sound(Reference.pack()));

        assertThat(table(tables, "cell high").openers()).extracting(OpensFirst.Opener::who).containsExactly(
                "programme's ceiling", "charger's own limit, per cell of equal cells", "battery's protection",
                "warden, rule 1");
        assertThat(table(tables, "cell low").openers()).extracting(OpensFirst.Opener::who).containsExactly(
                "inverter quits, per cell of equal cells", "programme's cut-off", "battery's protection", "warden, rule 2");
        assertThat(tables).allSatisfy(t -> assertThat(t.words()).isEmpty());
        assertThat(tables).extracting(OpensFirst::quantity).contains("current through charger", "current through sink",
                "current through inverter");
    }

    @Test
    void a_protection_that_opens_inside_the_programme_is_named_for_either_edge() {
        List<OpensFirst> high = tables(Reference.sound(Reference.pack("high_v = 3.65", "high_v = 3.61")));
        List<OpensFirst> low = tables(Reference.sound(Reference.pack("low_v = 2.45", "low_v = 2.49")));

        assertThat(table(high, "cell high").words()).hasSize(1)
                .first().asString().contains("before the programme's ceiling");
        assertThat(table(low, "cell low").words()).hasSize(1)
                .first().asString().contains("before the programme's cut-off");
    }

    @Test
    void one_cell_without_window_but_with_limits_read_back_is_stopped_by_the_instruments() {
        Rig rig = Reference.sound(Reference.rig("window_high_v = 3.75", "", "window_low_v = 2.30", "")).value();

        assertThat(table(OpensFirst.of(rig, List.of()), "cell high").words()).isEmpty();
        assertThat(table(OpensFirst.of(rig, List.of()), "cell low").words())
                .containsExactly("Nobody stops a cell that goes low with the computer dead.");
    }
}
