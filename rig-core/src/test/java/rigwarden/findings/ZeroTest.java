package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.program.Ended;
import rigwarden.rig.Rig;
import rigwarden.rig.TestRigs;

/** What the shunt shows with the contactor open is its zero, and is taken off what it showed in between. */
class ZeroTest {
    private static final Rig CELL = TestRigs.oneCell();
    /** A written step's last row is without current: ten amperes for 7199 s. */
    private static final double TRUE_AH = -10 * 7199 / 3600.0;
    /** One code of the current. */
    private static final double CODE = CELL.shunt().ampsPerCode();

    /** A shunt that shows 5 codes too much before, 7 after and 6 in between, over two hours of 10 A. */
    private static WrittenRun shifted() {
        return new WrittenRun(CELL, 1)
                .step(1, "rest", 300, Ended.SETTLED, _ -> 5 * CODE, _ -> 25, _ -> 3.3)
                .step(2, "discharge", 7200, Ended.TIME, _ -> -10 + 6 * CODE, _ -> 25, _ -> 3.2);
    }

    private static Answer.Value value(List<Finding> found, Kind kind, String about) {
        return (Answer.Value) found.stream().filter(f -> f.kind() == kind && f.about().equals(about)).findFirst().orElseThrow().answer();
    }

    @Test
    @Mark(of = "charge", standing = Standing.WORKED, source = "6 codes of 0.3125 mA over 2 h are 3.75 mAh; the zero's own doubt is √((2² + 1²)/12) codes over 2 h, 0.40 mAh")
    void the_zero_before_and_after_is_taken_off_with_its_own_uncertainty() {
        List<Finding> found = WrittenRun.findings(CELL, shifted().step(3, "rest", 300, Ended.TIME, _ -> 7 * CODE, _ -> 25, _ -> 3.3).rows());

        Answer.Value charge = value(found, Kind.CHARGE, "step 2, discharge");
        assertThat(charge.value()).isCloseTo(TRUE_AH, within(5e-5));
        assertThat(charge.budget().terms()).extracting(Budget.Term::name).contains("current's zero at rest", "thermo-electric voltage")
                .doesNotContain("amplifier offset");
        assertThat(charge.budget().terms()).filteredOn(t -> t.name().equals("current's zero at rest")).singleElement()
                .satisfies(t -> assertThat(t.standard()).isCloseTo(2 * CODE * Math.sqrt(5 / 12.0), within(3e-5)));
        assertThat(value(found, Kind.ENERGY, "step 2, discharge").value()).isCloseTo(3.2 * TRUE_AH, within(2e-3));
        assertThat(value(found, Kind.CHARGE, "step 1, rest").value()).as("nothing flows through an open contact").isCloseTo(0, within(1e-5));
        assertThat(found).filteredOn(f -> f.kind() == Kind.CHARGE && f.about().equals("step 2, discharge")).singleElement()
                .satisfies(f -> assertThat(f.notes()).anySatisfy(n -> assertThat(n).startsWith("the shunt showed +1.9 ± 0.4 mA with the contactor open")));
    }

    @Test
    void a_step_with_a_rest_on_one_side_only_keeps_the_data_sheets_zero() {
        List<Finding> found = WrittenRun.findings(CELL, shifted().rows());

        Answer.Value charge = value(found, Kind.CHARGE, "step 2, discharge");
        assertThat(charge.value()).isCloseTo(TRUE_AH + 2 * 6 * CODE, within(5e-5));
        assertThat(charge.budget().terms()).extracting(Budget.Term::name).contains("amplifier offset").doesNotContain("current's zero at rest");
    }

    @Test
    void a_contactor_that_is_called_open_under_a_current_tells_no_zero() {
        List<Finding> found = WrittenRun.findings(CELL, WrittenRun.open(CELL, new WrittenRun(CELL, 1)
                .step(1, "rest", 300, Ended.SETTLED, _ -> 2, _ -> 25, _ -> 3.3)
                .step(2, "discharge", 7200, Ended.TIME, _ -> -10, _ -> 25, _ -> 3.2)
                .step(3, "rest", 300, Ended.TIME, _ -> 2, _ -> 25, _ -> 3.3).rows()));

        assertThat(value(found, Kind.CHARGE, "step 2, discharge").value()).isCloseTo(TRUE_AH, within(1e-4));
    }
}
