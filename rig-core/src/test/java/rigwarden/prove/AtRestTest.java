package rigwarden.prove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.warden.Scans;

/** Five seconds at rest: what a sound rig shows, and how each wrong wire is called. */
class AtRestTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.eightCells();

    private static Bedside rested(Rig rig, Consumer<Scans> twist) {
        Bedside bedside = new Bedside(rig);
        bedside.twist = twist;
        return bedside.take(new AtRest(rig), 6);
    }

    private static List<String> wrong(Rig rig, Consumer<Scans> twist) {
        return rested(rig, twist).wrong();
    }

    private static List<String> seated(int... studs) {
        Bedside bedside = new Bedside(PACK);
        bedside.twist = scans -> bedside.seated(scans, studs);
        return bedside.take(new AtRest(PACK), 6).wrong();
    }

    @Test
    void a_sound_rig_passes_after_five_seconds_and_not_before() {
        for (Rig rig : List.of(CELL, PACK)) {
            Bedside bedside = new Bedside(rig);
            AtRest stage = new AtRest(rig);
            bedside.take(stage, 4.9);
            assertThat(bedside.last.over()).isFalse();
            bedside.take(stage, 0.1);

            assertThat(bedside.last.over()).isTrue();
            assertThat(bedside.wrong()).isEmpty();
            assertThat(bedside.outcomes).extracting(Outcome::what)
                    .containsExactly("channels", "taps", "count", "sum", "zero", "probes", "loop", "arm key", "coil supply", "feedback", "bus");
        }
    }

    @Test
    void exchanged_taps_are_named_within_an_island_and_across() {
        assertThat(seated(1, 2, 4, 3, 5, 6, 7, 8)).contains("at rest taps: tap 3 and tap 4 are swapped").hasSize(1);
        assertThat(seated(2, 1, 3, 4, 5, 6, 7, 8)).contains("at rest taps: tap 1 and tap 2 are swapped").hasSize(1);
        assertThat(seated(1, 2, 3, 5, 4, 6, 7, 8)).contains("at rest taps: tap 4 and tap 5 are swapped").hasSize(1);
        assertThat(seated(8, 2, 3, 4, 5, 6, 7, 1)).contains("at rest taps: tap 1 and tap 8 are swapped").hasSize(1);
    }

    @Test
    void a_missing_a_double_and_a_wandered_tap_are_named() {
        assertThat(seated(1, 2, 0, 4, 5, 6, 7, 8)).singleElement().asString().startsWith("at rest taps: tap 3 reads nothing");
        assertThat(seated(1, 2, 2, 4, 5, 6, 7, 8)).containsExactly("at rest taps: tap 3 sits on stud 2, where tap 2 sits too");
        assertThat(seated(1, 2, 3, 4, 5, 6, 8, 8)).singleElement().asString().contains("tap 7 reads the end of its range");
        assertThat(seated(1, 2, 3, 4, 5, 7, 6, 6)).contains("at rest taps: tap 6 and tap 7 are swapped");
    }

    @Test
    void a_tap_between_two_studs_fits_none() {
        Bedside bedside = new Bedside(PACK);
        double[] shown = {3.3, 6.6, 8.2, 13.2, 3.3, 6.6, 9.9, 13.2};
        bedside.twist = scans -> {
            for (int tap = 0; tap < shown.length; tap++) {
                bedside.read(scans, shown, tap);
            }
        };

        assertThat(bedside.take(new AtRest(PACK), 6).wrong()).singleElement().asString().contains("tap 3 reads 8.20 V, which fits no stud");
    }

    @Test
    void a_reversed_cell_is_named_and_missed_by_the_count() {
        Bedside bedside = new Bedside(PACK);
        double[] shown = {3.3, 6.6, 3.3, 6.6, 3.3, 6.6, 9.9, 13.2};
        bedside.twist = scans -> {
            for (int tap = 0; tap < shown.length; tap++) {
                bedside.read(scans, shown, tap);
            }
            scans.set(Role.PACK_VOLTS, 6 * 3.3);
        };

        assertThat(bedside.take(new AtRest(PACK), 6).wrong()).hasSize(2).anyMatch(w -> w.contains("cell 3 is reversed"))
                .anyMatch(w -> w.startsWith("at rest count: the pack's own 19.80 V are 6 cells"));
    }

    @Test
    void the_cells_and_the_pack_must_agree_in_number_and_in_sum() {
        assertThat(wrong(PACK, s -> s.set(Role.PACK_VOLTS, 7 * 3.3))).singleElement().asString().startsWith("at rest count:").contains("are 7 cells");
        assertThat(wrong(PACK, s -> s.set(Role.PACK_VOLTS, 26.4 + 0.020))).isEmpty();
        assertThat(wrong(PACK, s -> s.set(Role.PACK_VOLTS, 26.4 + 0.035))).singleElement().asString().startsWith("at rest sum:");
        assertThat(wrong(CELL, s -> s.set(Role.CELL_VOLTS, 1.9).set(Role.PACK_VOLTS, 1.9))).anyMatch(w -> w.startsWith("at rest taps"));
        assertThat(wrong(CELL, s -> s.set(Role.CELL_VOLTS, 2.01).set(Role.PACK_VOLTS, 2.01))).isEmpty();
        assertThat(wrong(CELL, s -> s.set(Role.CELL_VOLTS, 0).set(Role.PACK_VOLTS, 3.3))).anyMatch(w -> w.contains("tap 1 reads nothing"));
    }

    /** 1 µV and 0.5 µV on 0.5 mΩ are 2.58 mA expanded, and 3.9 mA at every edge. */
    @Test
    void the_current_s_zero_stays_within_what_is_stated_for_it() {
        assertThat(wrong(CELL, s -> s.set(Role.CURRENT, 0.0037))).isEmpty();
        assertThat(wrong(CELL, s -> s.set(Role.CURRENT, -0.0037))).isEmpty();
        assertThat(wrong(CELL, s -> s.set(Role.CURRENT, 0.0044))).singleElement().asString().startsWith("at rest zero: +4.4 mA at no current");
        assertThat(rested(CELL, s -> s.set(Role.CURRENT, 0.002)).outcomes).anyMatch(o -> o.kind().equals("at rest zero") && o.words().startsWith("+1.9 mA"));
    }

    @Test
    void a_probe_beside_the_room_asks_whether_it_is_so() {
        Bedside bedside = rested(PACK, Bedside.set(PACK, "cell_03_c", 22 + 3.8));
        assertThat(bedside.wrong()).isEmpty();

        Bedside warm = new Bedside(PACK);
        warm.twist = Bedside.set(PACK, "cell_03_c", 22 + 4.1);
        AtRest stage = new AtRest(PACK);
        warm.take(stage, 6);
        assertThat(warm.last.prompt()).isInstanceOf(Prompt.Confirm.class);
        assertThat(warm.last.prompt().words()).contains("cell_03_c 26.1 °C where the room has 22.0 °C");
        warm.take(stage, Answer.DONE);
        assertThat(warm.last.over()).isTrue();
        assertThat(warm.wrong()).isEmpty();

        AtRest again = new AtRest(PACK);
        Bedside denied = new Bedside(PACK);
        denied.twist = warm.twist;
        denied.take(again, 6).take(again, Answer.SKIP);
        assertThat(denied.wrong()).singleElement().asString().contains("cell_03_c");
    }

    @Test
    void switches_bus_and_silent_channels_are_named() {
        assertThat(wrong(CELL, s -> s.set(Role.LOOP, 0))).singleElement().asString().contains("the loop is open");
        assertThat(wrong(CELL, s -> s.set(Role.ARM, 0))).singleElement().asString().contains("the arm key is off");
        assertThat(wrong(CELL, s -> s.set(Role.COIL_FEED, 1))).singleElement().asString().contains("alive although no beat");
        assertThat(wrong(CELL, s -> s.set(Role.FEEDBACK, 1))).singleElement().asString().contains("feedback says closed");
        assertThat(wrong(CELL, s -> s.set(Role.BUS_VOLTS, 0.15))).isEmpty();
        assertThat(wrong(CELL, s -> s.set(Role.BUS_VOLTS, 0.2))).singleElement().asString().contains("0.20 V behind the open contactor");
        assertThat(wrong(CELL, Bedside.failed(CELL, "terminal_01n_c"))).singleElement().asString().contains("no reading of terminal_01n_c");
        assertThat(wrong(CELL, Bedside.failed(CELL, "sink_v"))).singleElement().asString().contains("no reading of sink_v");
        assertThat(wrong(CELL, Bedside.failed(CELL, "clock_ratio"))).isEmpty();
    }
}
