package rigwarden.findings.number;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** A straight line with the uncertainty of what is read off it. */
class StraightLineTest {
    private static final double[] CELSIUS = {21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511};
    private static final double[] CORRECTION = {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160};

    @Test
    @Mark(of = "straight line", standing = Standing.PUBLISHED, source = "JCGM 100:2008, H.3")
    void the_thermometer_of_the_guide_is_calibrated_to_its_last_printed_digit() {
        StraightLine line = StraightLine.through(CELSIUS, CORRECTION, 20);

        assertThat(line.height()).isCloseTo(-0.1712, within(0.00005));
        assertThat(line.heightU()).isCloseTo(0.0029, within(0.00005));
        assertThat(line.slope()).isCloseTo(0.00218, within(0.000005));
        assertThat(line.slopeU()).isCloseTo(0.00067, within(0.000005));
        assertThat(line.correlation()).isCloseTo(-0.930, within(0.0005));
        assertThat(line.residual()).isCloseTo(0.0035, within(0.00005));
        assertThat(line.freedom()).isEqualTo(9);
        assertThat(line.at(30).value()).isCloseTo(-0.1494, within(0.00005));
        assertThat(line.at(30).standard()).isCloseTo(0.0041, within(0.00005));
    }

    @Test
    @Mark(of = "straight line", standing = Standing.WORKED, source = "the same without the covariance: 0.00727")
    void a_line_whose_height_and_slope_were_taken_as_independent_would_say_almost_twice_as_much() {
        StraightLine line = StraightLine.through(CELSIUS, CORRECTION, 20);

        double apart = Math.hypot(line.heightU(), 10 * line.slopeU());

        assertThat(apart).isCloseTo(0.00727, within(0.000005));
        assertThat(line.at(30).standard()).isLessThan(0.6 * apart);
    }

    @Test
    @Mark(of = "straight line", standing = Standing.PUBLISHED, source = "NIST StRD, Norris")
    void the_certified_line_of_norris_is_met_in_eleven_digits() {
        double[] x = numbers("0.2 337.4 118.2 884.6 10.1 226.5 666.3 996.3 448.6 777.0 558.2 0.4 0.6 775.5 666.9 338.0 447.5 11.6 556.0"
                + " 228.1 995.8 887.6 120.2 0.3 0.3 556.8 339.1 887.2 999.0 779.0 11.1 118.3 229.2 669.1 448.9 0.5");
        double[] y = numbers("0.1 338.8 118.1 888.0 9.2 228.1 668.5 998.5 449.1 778.9 559.2 0.3 0.1 778.1 668.8 339.3 448.9 10.8 557.7"
                + " 228.3 998.0 888.8 119.6 0.3 0.6 557.6 339.3 888.0 998.5 778.9 10.2 117.6 228.9 668.4 449.2 0.2");

        StraightLine line = StraightLine.through(x, y, 0);

        assertThat(line.height()).isCloseTo(-0.262323073774029, within(1e-11));
        assertThat(line.slope()).isCloseTo(1.00211681802045, within(1e-13));
        assertThat(line.heightU()).isCloseTo(0.232818234301152, within(1e-11));
        assertThat(line.slopeU()).isCloseTo(0.429796848199937e-3, within(1e-14));
        assertThat(line.residual()).isCloseTo(0.884796396144373, within(1e-11));
        assertThat(line.freedom()).isEqualTo(34);
    }

    @Test
    @Mark(of = "straight line", standing = Standing.WORKED, source = "three points, normal equations by hand")
    void a_point_that_is_known_ten_times_better_draws_the_line_to_itself() {
        // Σ1/u² = 102, Σx/u² = 102, Σx²/u² = 104 over x = 0, 1, 2 with u = 1, 0.1, 1; y = 0, 1, 0
        StraightLine line = StraightLine.weighted(new double[] {0, 1, 2}, new double[] {0, 1, 0}, new double[] {1, 0.1, 1}, 0);

        assertThat(line.slope()).isCloseTo(0, within(1e-12));
        assertThat(line.height()).isCloseTo(100.0 / 102, within(1e-12));
        assertThat(line.slopeU()).isCloseTo(Math.sqrt(102.0 / (102.0 * 104 - 102.0 * 102)), within(1e-12));
        assertThat(line.heightU()).isCloseTo(Math.sqrt(104.0 / (102.0 * 104 - 102.0 * 102)), within(1e-12));
    }

    @Test
    void two_points_make_no_line_with_an_uncertainty() {
        assertThatThrownBy(() -> StraightLine.through(new double[] {1, 2}, new double[] {1, 2}, 0))
                .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("three points");
    }

    private static double[] numbers(String words) {
        return Arrays.stream(words.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }
}
