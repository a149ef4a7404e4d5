package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import rigwarden.findings.ModelNights.Cut;
import rigwarden.findings.ModelNights.Night;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** A discharge whose supply is cut and that goes on as another run is answered for as one step, and the model's truth lies in what is said of it. */
class CutNightsTest {
    private static final Rating RATING = Rating.usual(105);

    /** Soon after its beginning, on the flat, on the knee; the contactor opens at once, later, and nearly as late as it can. */
    static Stream<List<Cut>> cuts() {
        return Stream.of(List.of(new Cut(0.3, 0.05, 120)), List.of(new Cut(30, 10, 600)), List.of(new Cut(70, 2, 1800)),
                List.of(new Cut(101, 10, 1800)), List.of(new Cut(20, 1, 300), new Cut(60, 5, 900)));
    }

    private static Answer answer(Night night, Kind kind, String about) {
        return Findings.of(night.rig(), night.gathered(), RATING).stream().filter(f -> f.kind() == kind && f.about().equals(about)).findFirst()
                .orElseThrow().answer();
    }

    private static String who(Answer answer) {
        return answer instanceof Answer.Named named ? named.who() : ((Answer.CannotTell) answer).between();
    }

    private static void holds(Answer answer, double truth) {
        assertThat(answer).isInstanceOfSatisfying(Answer.Value.class, said -> assertThat(Math.abs(said.value() - truth))
                .as("%.4f ± %.4f, truly %.4f", said.value(), said.budget().expanded(), truth).isLessThanOrEqualTo(said.budget().expanded()));
    }

    @ParameterizedTest
    @MethodSource("cuts")
    @Mark(of = "charge", standing = Standing.WORKED, source = "model truth: charge through the cell's terminals, both parts and unseen between them")
    @Mark(of = "capacity", standing = Standing.WORKED, source = "model truth: the same since full")
    void the_charge_and_the_capacity_of_one_cell_are_those_of_all_parts(List<Cut> cuts) {
        Night night = ModelNights.oneCellCut(11, cuts);
        double truth = night.truths().get(2).ampHours();

        holds(answer(night, Kind.CHARGE, "step 3, discharge"), truth);
        holds(answer(night, Kind.CAPACITY, "step 3, discharge"), -truth);
        assertThat(night.gathered().steps()).extracting(step -> step.sums().index()).containsExactly(1, 2, 3, 4);
        assertThat(answer(night, Kind.VERDICT, "step 3, discharge")).isInstanceOfSatisfying(Answer.NotDecided.class,
                not -> assertThat(not.because()).contains("interrupted"));
    }

    @ParameterizedTest
    @MethodSource("cuts")
    void so_is_the_charge_of_a_pack_and_no_cell_is_named_that_would_not_be_without_a_break(List<Cut> cuts) {
        Night night = ModelNights.packCut(12, cuts);
        Night whole = ModelNights.packCut(12, List.of());

        holds(answer(night, Kind.CHARGE, "step 2, discharge"), night.truths().get(1).ampHours());
        assertThat(who(answer(whole, Kind.LIMITING_CELL, "step 2, discharge"))).contains(who(answer(night, Kind.LIMITING_CELL, "step 2, discharge")));
    }

    @Test
    void what_a_cell_gives_with_a_break_is_told_so_wide_that_it_holds_what_it_gives_without() {
        double undisturbed = -ModelNights.oneCellCut(11, List.of()).truths().get(2).ampHours();

        cuts().forEach(cuts -> holds(answer(ModelNights.oneCellCut(11, cuts), Kind.CAPACITY, "step 3, discharge"), undisturbed));
    }

    /** The first cell's knee may be seen in two pieces, with a rest between them. */
    @ParameterizedTest
    @MethodSource("cuts")
    void what_the_other_cells_still_held_is_within_what_is_told_without_a_break(List<Cut> cuts) {
        Night night = ModelNights.packCut(12, cuts);
        Night whole = ModelNights.packCut(12, List.of());

        int held = 0;
        for (int cell = 1; cell <= 8; cell++) {
            String about = "step 2, discharge, left in cell " + cell;
            if (said(night, about) instanceof Answer.Between with && said(whole, about) instanceof Answer.Between without) {
                held++;
                double middle = (without.low() + without.high()) / 2;
                assertThat(middle).as(about).isBetween(with.low(), with.high());
            }
        }
        assertThat(held).as("cells that both tell of").isGreaterThanOrEqualTo(6);
    }

    /** A refusal of the cell that was first. */
    private static Answer said(Night night, String about) {
        return Findings.of(night.rig(), night.gathered(), RATING).stream().filter(f -> f.about().equals(about)).map(Finding::answer).findFirst()
                .orElse(new Answer.Refused("it was the first"));
    }

    @Test
    void each_break_stands_in_the_conditions_and_its_widening_in_the_budget() {
        Night night = ModelNights.oneCellCut(11, List.of(new Cut(20, 1, 300), new Cut(60, 5, 900)));
        Finding charge = Findings.of(night.rig(), night.gathered(), RATING).stream()
                .filter(f -> f.kind() == Kind.CHARGE && f.about().startsWith("step 3")).findFirst().orElseThrow();

        assertThat(charge.conditions()).filteredOn(words -> words.startsWith("INTERRUPTED")).hasSize(2).first().asString().contains("5.0 min at 52.5");
        // half of 52.5 A for 11 s, twice: half width of a rectangle
        assertThat(((Answer.Value) charge.answer()).budget().terms()).filteredOn(term -> term.name().equals("unseen until it was open"))
                .singleElement().satisfies(term -> assertThat(term.halfWidth()).isBetween(0.159, 0.163));
        assertThat(charge.firstScan()).isLessThan(charge.lastScan());
        assertThat(charge.lastScan()).isGreaterThan(night.gathered().steps().get(1).continuity().lastScan());
    }

    @Test
    void scans_are_counted_on_so_that_no_two_are_the_same() {
        Night night = ModelNights.oneCellCut(11, List.of(new Cut(30, 1, 600)));
        List<Long> ends = new ArrayList<>();
        night.gathered().steps().forEach(step -> ends.addAll(List.of(step.continuity().firstScan(), step.continuity().lastScan())));

        assertThat(ends).isSorted();
        assertThat(night.gathered().edges()).allSatisfy(edge -> assertThat(edge.scan()).isLessThanOrEqualTo(night.gathered().scans()));
    }
}
