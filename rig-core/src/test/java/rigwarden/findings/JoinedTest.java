package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.findings.trace.Continuity;
import rigwarden.findings.trace.Knees;
import rigwarden.findings.trace.RestTrail;
import rigwarden.program.Ended;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.Rig;
import rigwarden.rig.TestRigs;

/** A step in two parts is one step, and its capacity carries what the outage can have changed. */
class JoinedTest {
    private static final Rig CELL = TestRigs.oneCell();

    private static StepFinding step(int index, String kind, double hours, double ampHours, Ended by) {
        Budget budget = new Budget(List.of(Budget.limits("shunt tolerance", 0.001 * ampHours),
                Budget.limits("amplifier offset", 0.01 * hours)));
        StepFinding.Extreme some = new StepFinding.Extreme(3.2 + ampHours * 1e-4, "cell_01_v");
        return new StepFinding(index, kind, hours * 3600, new Uncertain(ampHours, budget.expanded()), budget, ampHours,
                new Uncertain(3.2 * ampHours, 0.1), some, some, some, 25, ampHours / hours, 0, by, true);
    }

    private static final StepFinding CHARGE = step(1, "charge", 5, 100, Ended.TAPER);
    private static final StepFinding REST = step(2, "rest", 1, 0, Ended.SETTLED);
    private static final StepFinding WHOLE = step(3, "discharge", 5, -105, Ended.CUT_OFF);

    /** The step with nothing else kept of it. */
    private static StepNotes notes(StepFinding sums) {
        Knees none = new Knees(new double[1][0], new double[1][0], new double[] {2.5}, sums.chargeAmpHours().value(), sums.startAmps());
        return new StepNotes(sums, new Continuity(1, 100, 0, 0.1, false, 0, 0, 3600 * sums.chargeAmpHours().value(), 0, 0, 0, 0, 0, false), none,
                List.of(), new RestTrail(new double[0], new double[1][0]), 0, 22);
    }

    private static Gathered run(List<StepFinding> steps) {
        return new Gathered(steps.stream().map(JoinedTest::notes).toList(), List.of(), 100, 0);
    }

    private static List<StepFinding> joined(List<StepFinding> before, double outageSeconds, double amps, List<StepFinding> after) {
        return Joined.of(run(before), outageSeconds, amps, run(after)).steps().stream().map(StepNotes::sums).toList();
    }

    private static Capacity capacity(List<StepFinding> steps) {
        return Capacity.of(CELL, steps).getFirst();
    }

    private static List<StepFinding> brokenAfter(double hours) {
        return joined(List.of(CHARGE, REST, step(3, "discharge", hours, -21 * hours, Ended.CUT)), 1200, 21,
                List.of(step(3, "discharge", 5 - hours, -21 * (5 - hours), Ended.CUT_OFF)));
    }

    /** Of 21 A for 11 s, Ah: half of what nobody saw flow. */
    private static final double HALF_UNSEEN = 21 * 11 / 3600.0 / 2;

    @Test
    void the_parts_add_up_and_their_common_errors_add_as_they_are() {
        StepFinding joined = brokenAfter(2).getLast();

        assertThat(brokenAfter(2)).hasSize(3);
        assertThat(joined.chargeAmpHours().value()).isCloseTo(-105 - HALF_UNSEEN, within(1e-9));
        assertThat(joined.chargeBudget().terms()).filteredOn(t -> !t.name().equals("unseen until it was open")).allSatisfy(term ->
                assertThat(WHOLE.chargeBudget().terms()).anySatisfy(own -> assertThat(term.signed()).isCloseTo(own.signed(), within(1e-9))));
        assertThat(joined.chargeBudget().expanded()).isGreaterThan(WHOLE.chargeBudget().expanded());
        assertThat(joined.energyWattHours().value()).isCloseTo(WHOLE.energyWattHours().value() * (1 + HALF_UNSEEN / 105), within(1e-9));
        assertThat(joined.seconds()).isCloseTo(5 * 3600, within(1e-9));
        assertThat(joined.by()).isEqualTo(Ended.CUT_OFF);
        assertThat(joined.breaks()).containsExactly(new Break(1200, 21, 3 * 3600));
    }

    @Test
    void such_a_capacity_is_marked_and_wider_and_the_more_so_the_nearer_the_break_was_to_the_end() {
        Capacity undisturbed = capacity(List.of(CHARGE, REST, WHOLE));
        Capacity early = capacity(brokenAfter(2));
        Capacity late = capacity(brokenAfter(4.9));

        assertThat(undisturbed.interrupted()).isFalse();
        assertThat(early.interrupted()).isTrue();
        assertThat(early.ampHours().value()).isCloseTo(undisturbed.ampHours().value() + HALF_UNSEEN, within(1e-9));
        assertThat(early.ampHours().expanded()).isGreaterThan(undisturbed.ampHours().expanded());
        assertThat(late.ampHours().expanded()).isGreaterThan(early.ampHours().expanded() + 0.5);
        assertThat(early.budget().terms()).extracting(Budget.Term::name)
                .contains("unseen until it was open", "drained in the outage", "recovered by the rest");
        // half of 21 A for 11 s, and 0.001 C of 105 Ah for a third of an hour: half widths of rectangles
        assertThat(early.budget().terms()).filteredOn(t -> t.name().equals("unseen until it was open"))
                .singleElement().satisfies(t -> assertThat(t.halfWidth()).isCloseTo(HALF_UNSEEN, within(1e-9)));
        assertThat(early.budget().terms()).filteredOn(t -> t.name().equals("drained in the outage"))
                .singleElement().satisfies(t -> assertThat(t.halfWidth()).isCloseTo(0.035, within(1e-6)));
    }

    @Test
    void a_break_in_the_charge_or_in_the_rest_before_marks_the_capacity_too_and_one_after_it_does_not() {
        List<StepFinding> charge = joined(List.of(step(1, "charge", 2, 40, Ended.TRIPPED)), 600, 21,
                List.of(step(1, "charge", 3, 60, Ended.TAPER), REST, WHOLE));
        List<StepFinding> rest = joined(List.of(CHARGE, step(2, "rest", 0.5, 0, Ended.CUT)), 600, 0, List.of(REST, WHOLE));
        List<StepFinding> after = joined(List.of(CHARGE, REST, WHOLE, step(4, "rest", 0.5, 0, Ended.CUT)), 600, 0,
                List.of(step(4, "rest", 1, 0, Ended.SETTLED)));

        assertThat(capacity(charge).interrupted()).isTrue();
        assertThat(capacity(rest).interrupted()).isTrue();
        assertThat(capacity(rest).ampHours().expanded()).isGreaterThan(capacity(after).ampHours().expanded());
        assertThat(capacity(after).interrupted()).isFalse();
    }

    @Test
    void two_breaks_of_one_step_are_both_remembered_each_with_what_came_after_it() {
        List<StepFinding> once = joined(List.of(step(3, "discharge", 2, -42, Ended.CUT)), 600, 21,
                List.of(step(3, "discharge", 1, -21, Ended.CUT)));

        StepFinding twice = joined(once, 300, 21, List.of(step(3, "discharge", 2, -42, Ended.CUT_OFF))).getFirst();

        assertThat(twice.breaks()).containsExactly(new Break(600, 21, 3 * 3600), new Break(300, 21, 2 * 3600));
        assertThat(twice.chargeAmpHours().value()).isCloseTo(-105 - 2 * HALF_UNSEEN, within(1e-9));
    }
}
