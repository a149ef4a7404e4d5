package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** A cell and the joint below it lie between the same two taps: what breaks the tie, and what does not. */
class JointsTest {
    /** Eight places of 0.38 mΩ, one of them with so much more. */
    private static List<Resistance> places(int odd, double more) {
        return IntStream.rangeClosed(1, 8).mapToObj(cell -> {
            double ohms = 0.38e-3 * (1 + 0.01 * (cell % 3 - 1)) + (cell == odd ? more : 0);
            return new Resistance(cell, "-64 A to 0 A, after 0.1 s", 0.1, ohms, new double[] {-64, 0},
                    new Budget(List.of(Budget.standard("each reading", 2e-6))), 1);
        }).toList();
    }

    private static List<Joints.Warm> warm(int odd, double kelvin) {
        List<Joints.Warm> all = new ArrayList<>();
        for (int lower = 1; lower < 8; lower++) {
            all.add(new Joints.Warm(lower, 0.2 + (lower == odd ? kelvin : 0), 0.5));
        }
        return all;
    }

    @Test
    @Mark(of = "joint", standing = Standing.WORKED, source = "written places: 0.1 mΩ more between taps 3 and 4 of eight")
    void by_its_voltage_alone_it_is_the_cell_or_the_joint() {
        assertThat(Joints.outOfFamily(places(4, 0.1e-3), List.of(), List.of()).orElseThrow()).isInstanceOfSatisfying(
                Answer.CannotTell.class, c -> assertThat(c.between()).isEqualTo("cell 4 or the joint between cells 3 and 4"));
        assertThat(Joints.outOfFamily(places(4, 0.1e-3), warm(3, 0.2), List.of()).orElseThrow())
                .as("a warmth that could be nothing breaks no tie").isInstanceOf(Answer.CannotTell.class);
    }

    @Test
    void its_own_warmth_or_a_hand_meter_on_it_names_the_joint() {
        Answer byHeat = Joints.outOfFamily(places(4, 0.1e-3), warm(3, 2), List.of()).orElseThrow();
        Answer byHand = Joints.outOfFamily(places(4, 0.1e-3), List.of(), List.of(new Joints.Walked(3, 13e-3, -64, 0.2e-3))).orElseThrow();

        for (Answer answer : List.of(byHeat, byHand)) {
            assertThat(answer).isInstanceOfSatisfying(Answer.Named.class,
                    n -> assertThat(n.who()).isEqualTo("the joint between cells 3 and 4"));
        }
    }

    @Test
    void a_hand_meter_that_finds_the_joint_good_speaks_for_the_cell_but_never_names_it() {
        Answer answer = Joints.outOfFamily(places(4, 0.1e-3), List.of(), List.of(new Joints.Walked(3, 2e-3, -64, 0.2e-3))).orElseThrow();

        assertThat(answer).isInstanceOfSatisfying(Answer.CannotTell.class, c -> assertThat(c.because()).contains("speaks for the cell"));
    }

    @Test
    void a_spread_as_of_a_lot_is_no_fault_and_three_places_are_no_family() {
        assertThat(Joints.outOfFamily(places(4, 0.04e-3), List.of(), List.of())).isEmpty();
        assertThat(Joints.outOfFamily(places(4, 0.1e-3).subList(0, 3), List.of(), List.of()).orElseThrow()).isInstanceOf(Answer.Refused.class);
        assertThat(Joints.outOfFamily(places(1, 0.2e-3), List.of(), List.of()).orElseThrow()).isInstanceOfSatisfying(
                Answer.CannotTell.class, c -> assertThat(c.between()).isEqualTo("cell 1 or its lower terminal"));
    }
}
