package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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

    /** Every bar walked at 64 A: sound ones with so much, one of them with so much more. */
    private static List<Joints.Walked> walked(double sound, int odd, double more) {
        return IntStream.range(1, 8).mapToObj(lower -> new Joints.Walked(lower,
                64 * (sound * (1 + 0.08 * (lower % 3 - 1)) + (lower == odd ? more : 0)), -64, 0.2e-3)).toList();
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
        Answer byHand = Joints.outOfFamily(places(4, 0.1e-3), List.of(), walked(0.05e-3, 3, 0.1e-3)).orElseThrow();

        for (Answer answer : List.of(byHeat, byHand)) {
            assertThat(answer).isInstanceOfSatisfying(Answer.Named.class,
                    n -> assertThat(n.who()).isEqualTo("the joint between cells 3 and 4"));
        }
    }

    @Test
    void a_hand_meter_that_finds_the_joint_good_speaks_for_the_cell_but_never_names_it() {
        Answer answer = Joints.outOfFamily(places(4, 0.1e-3), List.of(), walked(0.03e-3, 3, 0)).orElseThrow();

        assertThat(answer).isInstanceOfSatisfying(Answer.CannotTell.class, c -> assertThat(c.because()).contains("speaks for the cell"));
    }

    @Test
    @Mark(of = "joint", standing = Standing.WORKED, source = "written places: a bad cell of + 0.07…0.09 mΩ among sound joints of 0.05 mΩ and 1 K")
    void a_bad_cell_among_sound_joints_is_never_called_a_joint() {
        for (double more = 0.070e-3; more < 0.091e-3; more += 0.005e-3) {
            for (double kelvin : new double[] {0, 0.3, 0.6, 0.9}) {
                for (int odd = 2; odd <= 8; odd++) {
                    Optional<Answer> answer = Joints.outOfFamily(places(odd, more), warm(odd - 1, kelvin), walked(0.05e-3, 0, 0));

                    assertThat(answer.filter(Answer.Named.class::isInstance)).as("cell %d with %.3f mΩ more, its joint %.1f K warmer", odd,
                            1000 * more, kelvin).isEmpty();
                }
            }
        }
    }

    @Test
    void a_joint_that_was_walked_without_its_likes_breaks_no_tie() {
        for (List<Joints.Walked> few : List.of(walked(0.05e-3, 3, 0.1e-3).subList(2, 3), walked(0.05e-3, 3, 0.1e-3).subList(2, 4))) {
            assertThat(Joints.outOfFamily(places(4, 0.1e-3), List.of(), few).orElseThrow()).isInstanceOfSatisfying(Answer.CannotTell.class,
                    c -> assertThat(c.because()).contains("on two of its likes too"));
        }
    }

    @Test
    void a_spread_as_of_a_lot_is_no_fault_and_three_places_are_no_family() {
        assertThat(Joints.outOfFamily(places(4, 0.04e-3), List.of(), List.of())).isEmpty();
        assertThat(Joints.outOfFamily(places(4, 0.1e-3).subList(0, 3), List.of(), List.of()).orElseThrow()).isInstanceOf(Answer.Refused.class);
        assertThat(Joints.outOfFamily(places(1, 0.2e-3), List.of(), List.of()).orElseThrow()).isInstanceOfSatisfying(
                Answer.CannotTell.class, c -> assertThat(c.between()).isEqualTo("cell 1 or its lower terminal"));
    }
}
