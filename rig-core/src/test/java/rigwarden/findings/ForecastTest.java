package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.differentiation.Gradient;
import org.junit.jupiter.api.Test;
import rigwarden.findings.number.Curve;
import rigwarden.findings.trace.Warmth;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** What the first part of a rise tells of its end. */
class ForecastTest {
    private static final Rig CELL = TestRigs.oneCell();

    /** A rise by two clocks, in closed form: 3 K in six minutes and 20 K in 2.5 hours, under a constant current. */
    private static double twoClocks(double hours) {
        return 3 * (1 - Math.exp(-hours / 0.1)) + 20 * (1 - Math.exp(-hours / 2.5));
    }

    private static Warmth warmth(double untilHours, int points, double noise, DoubleUnaryOperator rise) {
        Random random = new Random(7);
        double[] hours = new double[points];
        double[] celsius = new double[points];
        double[] amps = new double[points];
        double[] squares = new double[points];
        for (int i = 0; i < points; i++) {
            hours[i] = untilHours * (i + 0.5) / points;
            celsius[i] = rise.applyAsDouble(hours[i]) + noise * random.nextGaussian();
            amps[i] = -52.5;
            squares[i] = 52.5 * 52.5;
        }
        return new Warmth(CELL.channel(Role.BODY), 0, hours, celsius, amps, squares);
    }

    @Test
    @Mark(of = "heat", standing = Standing.WORKED, source = "closed form of two clocks; measures.md: one exponential on the first 20 % is confidently wrong")
    void one_exponential_through_the_first_fifth_is_confidently_wrong_and_the_range_of_clocks_is_not() {
        double end = 2.0;
        Warmth early = warmth(0.2 * end, 60, 0.03, ForecastTest::twoClocks);
        Curve exponential = (x, b) -> b[0].multiply(b[1].multiply(-x).exp().subtract(1).negate());

        Curve.Fit fit = exponential.through(early.hours(), early.celsius(), 8, 3);
        Gradient atEnd = exponential.at(end, new Gradient[] {Gradient.variable(2, 0, fit.parameters()[0]), Gradient.variable(2, 1, fit.parameters()[1])});
        Forecast forecast = BodyForecast.of(early, end, 52.5 * 52.5, Optional.empty()).orElseThrow();

        double truth = twoClocks(end);
        assertThat(atEnd.getValue()).as("one exponential").isLessThan(truth - 4);
        assertThat(fit.standard(0)).as("and sure of it").isLessThan(1);
        assertThat(forecast.celsius()).isCloseTo(truth, within(forecast.expandedKelvin()));
        assertThat(forecast.settled()).isFalse();
    }

    @Test
    @Mark(of = "heat", standing = Standing.WORKED, source = "check-values 8.5: 63.2 % at one time constant, 86.5 % at two")
    void a_body_on_one_clock_within_the_range_is_foretold_ever_better() {
        double end = 5;
        double truth = 20 * (1 - Math.exp(-end / 2));
        double lastU = Double.POSITIVE_INFINITY;
        for (double seen : new double[] {0.5, 1.5, 3.5}) {
            Forecast forecast = BodyForecast.of(warmth(seen, 100, 0.03, h -> 20 * (1 - Math.exp(-h / 2))), end,
                    52.5 * 52.5, Optional.empty()).orElseThrow();

            assertThat(forecast.celsius()).isCloseTo(truth, within(forecast.expandedKelvin()));
            assertThat(forecast.expandedKelvin()).isLessThan(lastU);
            lastU = forecast.expandedKelvin();
        }
        assertThat(lastU).as("what is stated of the heat that is still to come, half of it either way, where nobody knows how full the cell is").isLessThan(8.0);
    }

    @Test
    void a_current_that_grows_until_the_end_warms_more() {
        Warmth early = warmth(0.5, 60, 0.03, ForecastTest::twoClocks);

        double constant = BodyForecast.of(early, 1.5, 52.5 * 52.5, Optional.empty()).orElseThrow().celsius();
        double growing = BodyForecast.of(early, 1.5, 1.4 * 52.5 * 52.5, Optional.empty()).orElseThrow().celsius();

        assertThat(growing).isGreaterThan(constant + 1);
    }

    @Test
    void of_a_plateau_is_spoken_only_after_two_of_the_slow_clock() {
        assertThat(BodyForecast.of(warmth(1.5, 100, 0.03, h -> 20 * (1 - Math.exp(-h / 1.2))), 3, 2756, Optional.empty()).orElseThrow().settled()).isFalse();
        assertThat(BodyForecast.of(warmth(8.5, 240, 0.03, h -> 20 * (1 - Math.exp(-h / 1.2))), 9, 2756, Optional.empty()).orElseThrow().settled()).isTrue();
        assertThat(BodyForecast.of(warmth(1, 5, 0, h -> h), 2, 2756, Optional.empty())).as("five points tell nothing").isEmpty();
    }

    @Test
    @Mark(of = "heat", standing = Standing.WORKED, source = "rise ∝ I²: 10 K at 60 A are 17.8 K at 80 A")
    void a_rise_scales_with_the_square_of_the_current_and_not_too_far() {
        Answer.Value scaled = (Answer.Value) Heat.scaled(10, 1, 60, 80);

        assertThat(scaled.value()).isCloseTo(17.78, within(0.005));
        assertThat(scaled.budget().expanded()).isGreaterThan(1.78);
        assertThat(Heat.scaled(10, 1, 60, 130)).isInstanceOf(Answer.Refused.class);
        assertThat(Heat.scaled(10, 1, 60, 25)).isInstanceOf(Answer.Refused.class);
    }
}
