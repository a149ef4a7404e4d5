package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
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

    /** A rise by two clocks, in closed form: 3.5 K in six minutes and 16 K in two hours, under a constant current. */
    private static double twoClocks(double hours) {
        return 3.5 * (1 - Math.exp(-hours / 0.1)) + 16 * (1 - Math.exp(-hours / 2));
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
    @Mark(of = "heat", standing = Standing.WORKED, source = "closed form of two clocks; measures.md: one exponential on the first 20 % is confidently wrong, 7.4 ± 0.1 K against 14.9 K")
    void one_exponential_through_the_first_fifth_is_confidently_wrong_and_the_range_of_clocks_is_not() {
        double end = 2.5;
        Warmth early = warmth(0.2 * end, 120, 0.03, ForecastTest::twoClocks);
        Curve exponential = (x, b) -> b[0].multiply(b[1].multiply(-x).exp().subtract(1).negate());

        Curve.Fit fit = exponential.through(early.hours(), early.celsius(), 8, 3);
        Gradient atEnd = exponential.at(end, new Gradient[] {Gradient.variable(2, 0, fit.parameters()[0]), Gradient.variable(2, 1, fit.parameters()[1])});
        Forecast forecast = BodyForecast.of(early, end, 52.5 * 52.5, Optional.empty()).orElseThrow();

        double truth = twoClocks(end);
        assertThat(truth).isCloseTo(14.9, within(0.05));
        assertThat(atEnd.getValue()).as("one exponential").isCloseTo(7.4, within(0.1));
        assertThat(2 * fit.standard(0)).as("and sure of it: at that time nothing but its height is left").isCloseTo(0.1, within(0.03));
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
            Warmth early = warmth(seen, 100, 0.03, h -> 20 * (1 - Math.exp(-h / 2)));
            Forecast forecast = BodyForecast.of(early, end, 52.5 * 52.5, Optional.empty()).orElseThrow();
            Forecast known = BodyForecast.of(early, end, 52.5 * 52.5, Optional.of(IN_ITS_MIDDLE)).orElseThrow();

            assertThat(forecast.celsius()).isCloseTo(truth, within(forecast.expandedKelvin()));
            assertThat(forecast.expandedKelvin()).isLessThan(lastU);
            assertThat(known.celsius()).isCloseTo(truth, within(known.expandedKelvin()));
            assertThat(known.expandedKelvin()).as("where it is known how full it is, an eighth of the heat either way and not half").isLessThan(0.6 * forecast.expandedKelvin());
            lastU = forecast.expandedKelvin();
        }
        assertThat(lastU).as("half of all heat that is still to come, with the time constant that makes it most, and never all of that").isLessThan(0.5 * mostToCome(3.5, end));
    }

    /** So large that five hours at 52.5 A leave it on its flat, where neither end's heat comes into it. */
    private static final Reversible IN_ITS_MIDDLE = new Reversible(0.75, 1000);

    /** What the heat of this moment, slope and losses together, makes until the end by itself with the least time constant of the range, K. */
    private static double mostToCome(double seen, double end) {
        double tau = 0.5;
        double heat = 10 * Math.exp(-seen / 2) + 20 * (1 - Math.exp(-seen / 2)) / tau;
        return heat * tau * (1 - Math.exp(-(end - seen) / tau));
    }

    @Test
    void a_current_that_grows_until_the_end_warms_more() {
        Warmth early = warmth(0.5, 60, 0.03, ForecastTest::twoClocks);

        double constant = BodyForecast.of(early, 1.5, 52.5 * 52.5, Optional.empty()).orElseThrow().celsius();
        double growing = BodyForecast.of(early, 1.5, 1.4 * 52.5 * 52.5, Optional.empty()).orElseThrow().celsius();

        assertThat(growing).isGreaterThan(constant + 1);
    }

    @Test
    @Mark(of = "heat", standing = Standing.WORKED, source = "closed form: time at which a rise is at a limit, its heat up to a quarter less from now on, as is stated")
    void the_time_to_a_limit_lies_between_the_two_that_are_told_or_it_is_told_that_it_may_not_be_reached() {
        Random random = new Random(11);
        int right = 0;
        int closed = 0;
        for (int i = 0; i < 40; i++) {
            double slow = 1 + 3 * random.nextDouble();
            double warms = 6 + 20 * random.nextDouble();
            double end = 2 + 2 * random.nextDouble();
            double seen = 0.3 + 0.5 * random.nextDouble();
            double becomes = 0.75 + 0.25 * random.nextDouble();
            double reached = warms * (1 - Math.exp(-seen / slow));
            double later = (end - seen) * 1.4 * Math.pow(random.nextDouble(), 2);
            double limit = 22 + becomes * warms + (reached - becomes * warms) * Math.exp(-later / slow);

            Warmth body = warmth(seen, 100, 0.03, h -> 22 + warms * (1 - Math.exp(-h / slow)));
            Reach reach = Reach.of(List.of(body, room(body)), body.where(), limit, end, 52.5 * 52.5, Optional.of(IN_ITS_MIDDLE));

            boolean late = reach.latestHours().isEmpty() || later <= reach.latestHours().getAsDouble();
            boolean early = reach.earliestHours().isPresent() ? later >= reach.earliestHours().getAsDouble() : later > end - seen;
            right += early && late ? 1 : 0;
            closed += reach.latestHours().isPresent() ? 1 : 0;
        }
        assertThat(right).as("of 40").isGreaterThanOrEqualTo(Coverage.least(40));
        assertThat(closed).as("told between two times, of 40").isGreaterThanOrEqualTo(5);
    }

    private static Warmth room(Warmth body) {
        double[] even = new double[body.hours().length];
        Arrays.fill(even, 22);
        return new Warmth(CELL.channel(Role.ROOM), 22, body.hours(), even, body.amps(), body.squareAmps());
    }

    @Test
    void a_place_that_is_at_its_limit_is_there_now_and_one_far_below_never() {
        Warmth body = warmth(1, 100, 0.03, h -> 30 + 3 * h);

        assertThat(Reach.of(List.of(body, room(body)), body.where(), 31, 2, 52.5 * 52.5, Optional.empty()).latestHours().getAsDouble()).isZero();
        assertThat(Reach.of(List.of(body, room(body)), body.where(), 90, 2, 52.5 * 52.5, Optional.empty())).isEqualTo(Reach.NEVER);
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
