package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.program.Ended;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.Rig;
import rigwarden.rig.TestRigs;

/** What a capacity counts from, where something lay between full and the discharge. The cell is rated 105 Ah. */
class CapacityTest {
    private static final Rig CELL = TestRigs.oneCell();

    private static StepFinding step(int index, String kind, double hours, double ampHours, Ended by) {
        Budget budget = new Budget(List.of(Budget.limits(Nature.GAIN, "shunt tolerance", 0.001 * ampHours),
                Budget.limits(Nature.OFFSET, "amplifier offset", 0.01 * hours)));
        StepFinding.Extreme some = new StepFinding.Extreme(2.5, "cell_01_v");
        return new StepFinding(index, kind, hours * 3600, new Uncertain(ampHours, budget.expanded()), budget, ampHours,
                new Uncertain(3.2 * ampHours, 3.2 * budget.expanded()), some, some, some, 25, ampHours / hours, 0, by, true);
    }

    private static final StepFinding FULL = step(1, "charge", 5, 100, Ended.TAPER);
    private static final StepFinding REST = step(2, "rest", 1, -0.02, Ended.SETTLED);

    private static StepFinding discharge(double ampHours) {
        return step(9, "discharge", 5, -ampHours, Ended.CUT_OFF);
    }

    private static Capacity of(StepFinding... steps) {
        return Capacity.of(CELL, List.of(steps)).getLast();
    }

    @Test
    void a_tap_that_reads_wrong_moves_the_end_of_a_discharge_at_its_cut_off_and_of_no_other() {
        StepFinding falls = discharge(104);
        StepFinding slow = new StepFinding(9, "discharge", falls.seconds(), falls.chargeAmpHours(), falls.chargeBudget(), -104, falls.energyWattHours(),
                falls.lowest(), falls.highest(), falls.hottest(), 25, -20.8, -1e-6, Ended.TIME, true);

        assertThat(of(FULL, REST, slow).budget().terms()).extracting(Budget.Term::name).doesNotContain("tap at the cut-off");
        assertThat(of(FULL, REST, slow).ampHours().expanded()).isCloseTo(falls.chargeBudget().expanded(), within(1e-9));
    }

    /** 84 A for an hour, the first third and some pauses of its time without: the cells were waited for at 5 °C and were 25 °C under the current. */
    @Test
    @Mark(of = "capacity", standing = Standing.WORKED, source = "written run: 84 A of 105 Ah are 0.80 C however long the cells were waited for before, and their warmth is that under the current")
    void a_wait_before_the_current_and_pauses_in_it_are_neither_in_its_rate_nor_in_its_warmth() {
        Gathered run = WrittenRun.gathered(CELL, new WrittenRun(CELL, 1)
                .step(1, "charge", 3600, Ended.TAPER, _ -> 21, _ -> 25, _ -> 3.5)
                .step(2, "discharge", 3 * 3600 + 1200, Ended.CUT_OFF, t -> flows(t) ? -84 : 0, t -> flows(t) ? 25 : 5,
                        t -> flows(t) ? 3.2 - 0.7 * Math.pow(t / 12_000, 30) : 3.3).rows());
        StepFinding step = run.steps().getLast().sums();

        assertThat(step.seconds()).isCloseTo(12_000, within(2.0));
        assertThat(step.flowSeconds()).isCloseTo(3600, within(2.0));
        assertThat(step.startAmps()).isCloseTo(-84, within(0.1));
        Capacity capacity = Capacity.of(CELL, run.steps().stream().map(StepNotes::sums).toList()).getLast();
        assertThat(capacity.rateC()).isCloseTo(0.8, within(0.001));
        assertThat(capacity.bodyCelsius()).isCloseTo(25, within(0.01));
    }

    /** Two hours of waiting, then an hour of current with two pauses of ten minutes. */
    private static boolean flows(double t) {
        return t >= 7200 && !(t >= 9000 && t < 9600) && !(t >= 10_200 && t < 10_800);
    }

    @ParameterizedTest
    @CsvSource({"pulse,TIME", "prove_protection,PROTECTION", "prove_stop,PROVED"})
    @Mark(of = "capacity", standing = Standing.WORKED, source = "1.5 Ah by another step after full, then 104: 105.5 Ah from full, gains of one shunt")
    void what_other_steps_took_out_of_full_cells_is_added_with_its_own_uncertainty(String kind, Ended by) {
        Capacity capacity = of(FULL, REST, step(3, kind, 0.1, -1.5, by), REST, discharge(104));

        assertThat(capacity.start()).isEqualTo(Capacity.Start.FULL);
        assertThat(capacity.lowerBound()).isFalse();
        assertThat(capacity.ampHours().value()).isCloseTo(105.5, within(1e-9));
        assertThat(capacity.beforeAmpHours()).isCloseTo(1.5, within(1e-9));
        assertThat(capacity.wattHours().value()).isCloseTo(105.5 * 3.2, within(1e-9));
        assertThat(capacity.budget().terms()).filteredOn(t -> t.name().equals("shunt tolerance")).singleElement()
                .satisfies(t -> assertThat(t.halfWidth()).isCloseTo(0.1055, within(1e-9)));
        assertThat(capacity.rateC()).as("of the discharge itself").isCloseTo(104.0 / 5 / 105, within(1e-9));
        assertThat(of(FULL, REST, discharge(104)).ampHours().value()).as("a rest counts nothing but its zero").isCloseTo(104, within(1e-9));
    }

    @Test
    void beyond_a_twentieth_of_the_rating_nobody_knows_how_full_it_began_and_it_is_a_lower_bound() {
        Capacity taken = of(FULL, REST, step(3, "prove_protection", 1, -6, Ended.PROTECTION), REST, discharge(98));

        assertThat(taken.start()).isEqualTo(Capacity.Start.UNKNOWN);
        assertThat(taken.lowerBound()).isTrue();
        assertThat(taken.ampHours().value()).isCloseTo(98, within(1e-9));
        assertThat(Verdict.of(taken, Rating.of(CELL.cells()))).isInstanceOf(Answer.NotDecided.class);
    }

    @Test
    @Mark(of = "capacity", standing = Standing.WORKED, source = "0.8 Ah put in after full, none or all of it kept: 0.4 ± 0.4 Ah of 106 Ah are not the cell's")
    void what_was_put_in_after_full_is_taken_for_half_kept_give_or_take_all_of_it() {
        Capacity capacity = of(FULL, REST, step(3, "prove_protection", 0.2, 0.8, Ended.CEILING), REST, discharge(106));

        assertThat(capacity.start()).isEqualTo(Capacity.Start.FULL);
        assertThat(capacity.ampHours().value()).isCloseTo(105.6, within(1e-9));
        assertThat(capacity.budget().terms()).filteredOn(t -> t.name().equals("put in after full")).singleElement()
                .satisfies(t -> assertThat(t.halfWidth()).isCloseTo(0.4, within(1e-9)));
    }

    @Test
    void a_balance_that_ended_by_its_taper_fills_and_one_that_met_the_ceiling_only_puts_in() {
        assertThat(of(step(3, "balance", 5, 10, Ended.TAPER), REST, discharge(104)).start()).isEqualTo(Capacity.Start.FULL);
        assertThat(of(step(3, "balance", 5, 10, Ended.CEILING), REST, discharge(104)).start()).isEqualTo(Capacity.Start.UNKNOWN);
        assertThat(of(FULL, step(3, "balance", 1, 0.5, Ended.CEILING), REST, discharge(104)).beforeAmpHours()).isCloseTo(-0.5, within(1e-9));
    }

    @Test
    void a_good_cell_is_not_held_to_fall_short_by_what_a_pulse_took_out_first() {
        Capacity capacity = of(FULL, REST, step(3, "pulse", 0.1, -4, Ended.TIME), REST, discharge(101.7));

        assertThat(Verdict.of(capacity, Rating.of(CELL.cells()))).isInstanceOfSatisfying(Answer.NotDecided.class,
                n -> assertThat(n.at().value()).isCloseTo(105.7, within(0.01)));
    }

    @Test
    @Mark(of = "capacity", standing = Standing.WORKED, source = "a body of ± 1.8 K, an end at 2.5 V by a tap of ± U falling 10 mV/s: 50 mV in five seconds")
    void it_carries_how_well_its_temperature_and_its_end_were_known() {
        StepFinding falling = new StepFinding(9, "discharge", 18_000, new Uncertain(-104, 0.1), discharge(104).chargeBudget(), -104, new Uncertain(-332, 1),
                new StepFinding.Extreme(2.49, "cell_01_v"), new StepFinding.Extreme(3.4, "cell_01_v"), new StepFinding.Extreme(30, ""), 25, -20, -0.010,
                Ended.CUT_OFF, true);
        Capacity capacity = of(FULL, REST, falling);

        assertThat(capacity.bodyExpandedKelvin()).isCloseTo(1.8, within(0.05));
        assertThat(capacity.endVolts()).isEqualTo(2.49);
        assertThat(capacity.endPlayVolts()).isCloseTo(0.050 + CELL.column("cell_01_v").orElseThrow().uncertainty(2.49), within(1e-9));
    }

    @Test
    @Mark(of = "capacity", standing = Standing.WORKED, source = "written run: 2 mV/s down to 2.5 V at 52.5 A, then 12 s of recovery by 0.2 V before the step is over")
    void the_slope_at_the_cut_off_is_that_under_the_current_and_not_of_the_cell_that_recovers() {
        List<StepFinding> steps = WrittenRun.gathered(CELL, new WrittenRun(CELL, 1)
                .step(1, "discharge", 212, Ended.CUT_OFF, t -> t < 200 ? -52.5 : 0, _ -> 25, t -> t < 200 ? 2.9 - 0.002 * t : 2.7).rows()).steps().stream()
                .map(StepNotes::sums).toList();

        assertThat(steps.getFirst().endVoltsPerSecond()).isCloseTo(-0.002, within(2e-5));
        assertThat(Capacity.of(CELL, steps).getFirst().budget().terms()).extracting(Budget.Term::name).contains("tap at the cut-off");
    }
}
