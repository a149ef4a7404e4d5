package rigwarden.findings.number;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.util.Arrays;
import org.hipparchus.analysis.differentiation.Gradient;
import org.junit.jupiter.api.Test;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** Curves against the certified values of a statistics office, from either of its starts. */
class CurveTest {
    private record Points(double[] x, double[] y) {}

    private static final Points MISRA = new Points(
            numbers("77.6 114.9 141.1 190.8 239.9 289 332.8 378.4 434.8 477.3 536.8 593.1 689.1 760"),
            numbers("10.07 14.73 17.94 23.93 29.61 35.18 40.02 44.82 50.76 55.05 61.01 66.4 75.47 81.78"));
    private static final Points CHWIRUT = new Points(
            numbers("0.5 1 1.75 3.75 5.75 0.875 2.25 3.25 5.25 0.75 1.75 2.75 4.75 0.625 1.25 2.25 4.25 0.5 3 0.75 3 "
            + "1.5 6 3 6 1.5 3 0.5 2 4 0.75 2 5 0.75 2.25 3.75 5.75 3 0.75 2.5 4 0.75 2.5 4 0.75 2.5 4 0.5 6 3 "
            + "0.5 2.75 0.5 1.75"),
            numbers("92.9 57.1 31.05 11.5875 8.025 63.6 21.4 14.25 8.475 63.8 26.8 16.4625 7.125 67.3 41 21.15 8.175 "
            + "81.5 13.12 59.9 14.62 32.9 5.44 12.56 5.44 32 13.95 75.8 20 10.42 59.5 21.67 8.55 62 20.2 7.76 "
            + "3.75 11.81 54.7 23.7 11.55 61.3 17.7 8.74 59.2 16.3 8.62 81 4.87 14.62 81.7 17.17 81.3 28.9"));
    private static final Points THURBER = new Points(
            numbers("-3.067 -2.981 -2.921 -2.912 -2.84 -2.797 -2.702 -2.699 -2.633 -2.481 -2.363 -2.322 -1.501 -1.46 "
            + "-1.274 -1.212 -1.1 -1.046 -0.915 -0.714 -0.566 -0.545 -0.4 -0.309 -0.109 -0.103 0.01 0.119 0.377 "
            + "0.79 0.963 1.006 1.115 1.572 1.841 2.047 2.2"),
            numbers("80.574 84.248 87.264 87.195 89.076 89.608 89.868 90.101 92.405 95.854 100.696 101.06 401.672 "
            + "390.724 567.534 635.316 733.054 759.087 894.206 990.785 1090.109 1080.914 1122.643 1178.351 "
            + "1260.531 1273.514 1288.339 1327.543 1353.863 1414.509 1425.208 1421.384 1442.962 1464.35 1468.705 "
            + "1447.894 1457.628"));

    private static final Curve RISE = (x, b) -> b[0].multiply(b[1].multiply(-x).exp().subtract(1).negate());
    private static final Curve ULTRASONIC = (x, b) -> b[0].multiply(-x).exp().divide(b[2].multiply(x).add(b[1]));
    private static final Curve RATIONAL = CurveTest::rational;

    private static Gradient rational(double x, Gradient[] b) {
        Gradient above = b[3].multiply(x).add(b[2]).multiply(x).add(b[1]).multiply(x).add(b[0]);
        Gradient below = b[6].multiply(x).add(b[5]).multiply(x).add(b[4]).multiply(x).add(1);
        return above.divide(below);
    }

    @Test
    @Mark(of = "curve", standing = Standing.PUBLISHED, source = "NIST StRD, Misra1a: the shape of a first-order thermal rise")
    void a_thermal_rise_has_its_certified_parameters_and_their_uncertainty() {
        for (double[] start : new double[][] {{500, 0.0001}, {250, 0.0005}}) {
            Curve.Fit fit = RISE.through(MISRA.x(), MISRA.y(), start);

            certified(fit, 0, 2.3894212918e2, 2.7070075241, 1e-6);
            certified(fit, 1, 5.5015643181e-4, 7.2668688436e-6, 1e-6);
            assertThat(fit.squares()).isCloseTo(1.2455138894e-1, withinPercentage(1e-6));
            assertThat(fit.residual()).isCloseTo(1.0187876330e-1, withinPercentage(1e-6));
        }
    }

    @Test
    @Mark(of = "curve", standing = Standing.PUBLISHED, source = "NIST StRD, Chwirut2")
    void a_decay_over_a_line_has_its_certified_parameters() {
        for (double[] start : new double[][] {{0.1, 0.01, 0.02}, {0.15, 0.008, 0.010}}) {
            Curve.Fit fit = ULTRASONIC.through(CHWIRUT.x(), CHWIRUT.y(), start);

            certified(fit, 0, 1.6657666537e-1, 3.8303286810e-2, 1e-6);
            certified(fit, 1, 5.1653291286e-3, 6.6621605126e-4, 1e-6);
            certified(fit, 2, 1.2150007096e-2, 1.5304234767e-3, 1e-6);
            assertThat(fit.squares()).isCloseTo(5.1304802941e2, withinPercentage(1e-6));
        }
    }

    @Test
    @Mark(of = "curve", standing = Standing.PUBLISHED, source = "NIST StRD, Thurber, higher difficulty")
    void a_rational_curve_of_higher_difficulty_has_its_certified_parameters() {
        Curve.Fit fit = RATIONAL.through(THURBER.x(), THURBER.y(), 1300, 1500, 500, 75, 1, 0.4, 0.05);

        double[] certified = {1.2881396800e3, 1.4910792535e3, 5.8323836877e2, 7.5416644291e1, 9.6629502864e-1, 3.9797285797e-1,
            4.9727297349e-2};
        double[] standard = {4.6647963344, 3.9571156086e1, 2.8698696102e1, 5.5675370270, 3.1333340687e-2, 1.4984928198e-2,
            6.5842344623e-3};
        for (int i = 0; i < certified.length; i++) {
            certified(fit, i, certified[i], standard[i], 1e-4);
        }
        assertThat(fit.squares()).isCloseTo(5.6427082397e3, withinPercentage(1e-6));
        assertThat(fit.freedom()).isEqualTo(30);
    }

    private static void certified(Curve.Fit fit, int parameter, double value, double standard, double relative) {
        assertThat(fit.parameters()[parameter]).isCloseTo(value, withinPercentage(100 * relative));
        assertThat(fit.standard(parameter)).isCloseTo(standard, withinPercentage(100 * relative));
    }

    private static double[] numbers(String words) {
        return Arrays.stream(words.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }
}
