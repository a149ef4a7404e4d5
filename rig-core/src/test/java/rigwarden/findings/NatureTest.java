package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import rigwarden.findings.trace.Row;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.program.Ended;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Doubt;
import rigwarden.rig.Rig;
import rigwarden.rig.TestRigs;

/** What errs alike in several charges of a run leaves in their sums and ratios what it must, and no more. */
class NatureTest {
    private static final Rig CELL = TestRigs.oneCell();

    private static Rig calibrated(Doubt doubt) {
        return CELL.calibrated(List.of(new ChannelCalibration("current_a", 1, 0, doubt, LocalDate.EPOCH, LocalDate.EPOCH.plusDays(365),
                OptionalDouble.of(25), OptionalLong.empty(), "by hand")));
    }

    /** Full, two discharges at 10 and 40 A, full after each. */
    private static List<Row> fullToFull(Rig rig) {
        DoubleUnaryOperator falls = t -> 3.25 - 0.75 * Math.pow(t / 18_000, 8);
        return new WrittenRun(rig, 5)
                .step(1, "charge", 3600, Ended.TAPER, _ -> 21, _ -> 25, _ -> 3.5)
                .step(2, "discharge", 18_000, Ended.CUT_OFF, _ -> -10, _ -> 25, falls)
                .step(3, "charge", 18_000, Ended.TAPER, _ -> 10.02, _ -> 25, _ -> 3.5)
                .step(4, "discharge", 4_400, Ended.CUT_OFF, _ -> -40, _ -> 25, t -> falls.applyAsDouble(t * 18_000 / 4400))
                .step(5, "charge", 18_000, Ended.TAPER, _ -> 9.8, _ -> 25, _ -> 3.5).rows();
    }

    /** How alike the two full ends were is left out: the written charges end at their whole current, and it would cover all else. */
    private static double ofTheInstruments(Budget budget) {
        return new Budget(budget.terms().stream().filter(t -> !t.name().equals("two full ends alike")).toList()).expanded();
    }

    private static Map<String, Double> expanded(Rig rig) {
        return WrittenRun.findings(rig, fullToFull(rig)).stream()
                .filter(f -> f.kind() == Kind.EFFICIENCY || f.kind() == Kind.ACCOUNT || f.kind() == Kind.RATE)
                .collect(Collectors.toMap(f -> f.kind() + " " + f.about(), f -> ofTheInstruments(((Answer.Value) f.answer()).budget())));
    }

    @Test
    @Mark(of = "efficiency", standing = Standing.WORKED, source = "JCGM 100, 5.2: a scale that is the same in and out falls out, whoever brought it")
    void calibrating_the_shunt_never_widens_an_efficiency_an_account_or_a_rate_exponent() {
        Map<String, Double> without = expanded(CELL);
        assertThat(without).hasSize(7);

        // each knows the zero as well as the chip's data sheet does, 2 mA and 1 mA: what they bring besides are scales
        for (Doubt doubt : List.of(
                new Doubt(25, 5e-4, 1e-5, 5e-4, 5e-4, 0, 5, 50, 2.5e-3),
                new Doubt(25, 5e-4, 1e-5, 2e-3, 5e-4, 1e-3, 5, 50, 2.5e-3),
                new Doubt(0, 5e-4, 3e-4, 1e-3, 1e-3, 0, -50, 50, 2.5e-3))) {
            assertThat(expanded(calibrated(doubt))).allSatisfy((what, u) ->
                    assertThat(u).as("%s with %s", what, doubt).isLessThanOrEqualTo(without.get(what)));
        }
    }

    @Test
    void where_the_zero_was_read_at_rest_no_calibration_however_poor_widens_an_efficiency() {
        for (Doubt doubt : List.of(
                new Doubt(25, 0.04, 1e-3, 5e-3, 0.02, 5e-3, 5, 50, 2.5e-3),
                new Doubt(12, 0.04, 3e-3, 1e-2, 0.01, 0, 8, 50, 2.5e-3))) {
            double without = efficiency(CELL);
            double with = efficiency(calibrated(doubt));

            assertThat(with).as("%s", doubt).isLessThanOrEqualTo(without * 1.05);
        }
    }

    private static double efficiency(Rig rig) {
        List<Row> rows = new WrittenRun(rig, 5)
                .step(1, "charge", 3600, Ended.TAPER, _ -> 21, _ -> 25, _ -> 3.5)
                .step(2, "rest", 600, Ended.TIME, _ -> 0, _ -> 25, _ -> 3.4)
                .step(3, "discharge", 18_000, Ended.CUT_OFF, _ -> -10, _ -> 25, _ -> 3.2)
                .step(4, "rest", 600, Ended.TIME, _ -> 0, _ -> 25, _ -> 3.2)
                .step(5, "charge", 18_000, Ended.TAPER, _ -> 10.02, _ -> 25, _ -> 3.5)
                .step(6, "rest", 600, Ended.TIME, _ -> 0, _ -> 25, _ -> 3.4).rows();
        return WrittenRun.findings(rig, rows).stream().filter(f -> f.kind() == Kind.EFFICIENCY).findFirst()
                .map(f -> ofTheInstruments(((Answer.Value) f.answer()).budget())).orElseThrow();
    }

    @Test
    @Mark(of = "efficiency", standing = Standing.WORKED, source = "5 h in and 5 h out of 10 A: a height of 4 mA counts 10 h; a slope turns about 25 A, ± 0.01 % of (0.1 Ah − 25 A × 10 h)")
    void a_lines_height_counts_all_hours_and_its_slope_turns_about_its_pivot() {
        Rig rig = calibrated(new Doubt(25, 0.004, 1e-4, 5e-4, 0.002, 0, 5, 50, 2.5e-3));
        Answer.Value account = (Answer.Value) WrittenRun.findings(rig, fullToFull(rig)).stream().filter(f -> f.kind() == Kind.ACCOUNT)
                .findFirst().orElseThrow().answer();

        assertThat(term(account.budget(), "the calibration's line")).isCloseTo(0.040, within(1e-4));
        assertThat(term(account.budget(), "the calibration's slope")).isCloseTo(0.025, within(1e-4));
        assertThat(term(account.budget(), "reference meter's scale")).isLessThan(1e-4);
    }

    private static double term(Budget budget, String name) {
        return budget.terms().stream().filter(t -> t.name().equals(name)).mapToDouble(Budget.Term::standard).findFirst().orElseThrow();
    }

    @Test
    @Mark(of = "rate", standing = Standing.WORKED, source = "20 ppm/K, 2 K at the slow and 30 K at the fast rate: 28 K × 20 ppm / √3 / ln 10")
    void a_shunt_that_was_warmer_at_the_higher_rate_stays_in_the_exponent_and_its_tolerance_falls_out() {
        Capacity slow = capacity(0.1, 105, 2);
        Capacity fast = capacity(1.0, 100, 30);

        Answer.Value exponent = (Answer.Value) RateEffect.exponent(slow, fast);

        assertThat(term(exponent.budget(), "shunt tolerance")).isCloseTo(0, within(1e-12));
        assertThat(term(exponent.budget(), "shunt temperature")).isCloseTo(28 * 20e-6 / Math.sqrt(3) / Math.log(10), within(1e-9));
        assertThat(term(exponent.budget(), "tap at the cut-off, fast test")).isCloseTo(0.1 / 100 / Math.log(10), within(1e-9));
    }

    private static Capacity capacity(double rateC, double ampHours, double warmerKelvin) {
        Budget budget = new Budget(List.of(Budget.limits(Nature.GAIN, "shunt tolerance", -0.0025 * ampHours),
                Budget.limits(Nature.WARMTH, "shunt temperature", -20e-6 * warmerKelvin * ampHours),
                Budget.standard(Nature.TAPS, "tap at the cut-off", 0.1)));
        return new Capacity(3, rateC, new Uncertain(ampHours, budget.expanded()), new Uncertain(3.2 * ampHours, 1), budget, budget.times(3.2), 25,
                0, 2.5, 0.005, Capacity.Start.FULL, 0, 0, false, false);
    }

    @Test
    void a_shunt_that_was_colder_than_its_reference_in_and_warmer_out_errs_twice() {
        Budget cold = ChargeBudget.of(CELL, 50, 18_000, true, 15, 25, Optional.empty());
        Budget warm = ChargeBudget.of(CELL, -50, 18_000, true, 35, 35, Optional.empty());

        double one = term(cold, "shunt temperature");
        assertThat(term(warm, "shunt temperature")).isCloseTo(one, within(1e-12));
        assertThat(term(cold.plus(warm), "shunt temperature")).isCloseTo(2 * one, within(1e-12));
        assertThat(term(cold.plus(warm), "shunt tolerance")).isCloseTo(0, within(1e-12));
    }
}
