package rigwarden.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.HashSet;
import java.util.List;
import org.junit.jupiter.api.Test;

class SpotTest {
    private static final Rig PACK = TestRigs.eightCells();

    @Test
    void every_stud_bar_and_body_is_a_spot_and_each_name_means_one() {
        List<String> names = Spot.of(PACK).stream().map(Spot::name).toList();

        assertThat(names).contains("cell 1, − stud", "cell 8, + stud", "cell 5, body", "bar 7–8", "fuse", "contactor", "shunt",
                "battery's protection", "inverter, plus", "away").doesNotContain("bar 8–9");
        assertThat(new HashSet<>(names)).hasSameSizeAs(names);
        assertThat(Spot.of(PACK)).allSatisfy(spot -> assertThat(Spot.named(PACK, spot.name())).contains(spot));
    }

    @Test
    void what_a_person_types_without_marks_is_understood() {
        assertThat(Spot.named(PACK, "Cell 3 +")).map(Spot::name).contains("cell 3, + stud");
        assertThat(Spot.named(PACK, "cell 3 - stud")).map(Spot::name).contains("cell 3, − stud");
        assertThat(Spot.named(PACK, "the bar 3-4")).map(Spot::name).contains("bar 3–4");
        assertThat(Spot.named(PACK, " cell 8  body ")).map(Spot::name).contains("cell 8, body");
    }

    @Test
    void what_is_not_there_is_no_spot() {
        assertThat(Spot.named(PACK, "cell 9 +")).isEmpty();
        assertThat(Spot.named(PACK, "")).isEmpty();
        assertThat(Spot.named(TestRigs.oneCell(), "bar 1-2")).isEmpty();
        assertThat(Spot.of(TestRigs.oneCell())).extracting(Spot::name).doesNotContain("battery's protection");
    }
}
