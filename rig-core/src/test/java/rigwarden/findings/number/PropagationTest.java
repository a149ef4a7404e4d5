package rigwarden.findings.number;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.hipparchus.analysis.differentiation.Gradient;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.stat.correlation.Covariance;
import org.junit.jupiter.api.Test;
import rigwarden.findings.Budget;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** Several results of several correlated inputs. */
class PropagationTest {
    private static final double[][] VOLTS_AMPS_RADIANS = {
        {5.007, 19.663e-3, 1.0456}, {4.994, 19.639e-3, 1.0438}, {5.005, 19.640e-3, 1.0468}, {4.990, 19.685e-3, 1.0428},
        {4.999, 19.678e-3, 1.0433}};

    private static double[] means() {
        double[] means = new double[3];
        for (double[] set : VOLTS_AMPS_RADIANS) {
            for (int i = 0; i < 3; i++) {
                means[i] += set[i] / VOLTS_AMPS_RADIANS.length;
            }
        }
        return means;
    }

    /** Of the means of five readings. */
    private static double[][] covariance() {
        return new Covariance(VOLTS_AMPS_RADIANS).getCovarianceMatrix().scalarMultiply(1.0 / VOLTS_AMPS_RADIANS.length).getData();
    }

    private static Gradient[] impedance(Gradient[] in) {
        Gradient z = in[0].divide(in[1]);
        return new Gradient[] {z.multiply(in[2].cos()), z.multiply(in[2].sin()), z};
    }

    @Test
    @Mark(of = "correlated inputs", standing = Standing.PUBLISHED, source = "JCGM 100:2008, H.2, Tables H.2 to H.4")
    void resistance_and_reactance_of_the_guide_come_out_of_their_simultaneous_readings() {
        Propagation input = Propagation.of(means(), covariance(), in -> in);
        Propagation made = Propagation.of(means(), covariance(), PropagationTest::impedance);

        assertThat(input.standard(0)).isCloseTo(0.0032, within(0.00005));
        assertThat(input.standard(1)).isCloseTo(0.0095e-3, within(0.00005e-3));
        assertThat(input.standard(2)).isCloseTo(0.00075, within(0.000005));
        assertThat(input.correlation(0, 1)).isCloseTo(-0.36, within(0.005));
        assertThat(input.correlation(0, 2)).isCloseTo(0.86, within(0.005));
        assertThat(input.correlation(1, 2)).isCloseTo(-0.65, within(0.005));
        assertThat(made.values()[0]).isCloseTo(127.732, within(0.0005));
        assertThat(made.values()[1]).isCloseTo(219.847, within(0.0005));
        assertThat(made.values()[2]).isCloseTo(254.260, within(0.0005));
        assertThat(made.standard(0)).isCloseTo(0.071, within(0.0005));
        assertThat(made.standard(1)).as("the guide prints 0.295, rounding 0.2956 down").isCloseTo(0.295, within(0.001));
        assertThat(made.standard(2)).isCloseTo(0.236, within(0.0005));
        assertThat(made.correlation(0, 1)).isCloseTo(-0.588, within(0.0005));
        assertThat(made.correlation(0, 2)).isCloseTo(-0.485, within(0.0005));
        assertThat(made.correlation(1, 2)).isCloseTo(0.993, within(0.0006));
    }

    @Test
    @Mark(of = "correlated inputs", standing = Standing.WORKED, source = "the same with the correlations left out: 0.195, 0.201, 0.204 Ω")
    void left_out_correlations_would_almost_triple_the_uncertainty_of_the_resistance() {
        double[][] diagonal = covariance();
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                diagonal[i][j] = i == j ? diagonal[i][j] : 0;
            }
        }

        Propagation wrong = Propagation.of(means(), diagonal, PropagationTest::impedance);

        assertThat(wrong.standard(0)).isCloseTo(0.195, within(0.0005));
        assertThat(wrong.standard(1)).isCloseTo(0.201, within(0.0005));
        assertThat(wrong.standard(2)).isCloseTo(0.204, within(0.0005));
    }

    @Test
    @Mark(of = "budget", standing = Standing.PUBLISHED, source = "JCGM 100:2008, H.1: 50 000 838 nm, u 32 nm, k for 99 % and 16 degrees 2.92, U 93 nm")
    void the_end_gauge_of_the_guide_comes_out_of_its_equation() {
        // l = ls + d − ls (δα θ + α δθ), nm, 1/K, K
        double[] inputs = {50_000_623, 215, 0, -0.1, 11.5e-6, 0};
        double[] standard = {25, 9.7, 1e-6 / Math.sqrt(3), 0.41, 1.2e-6, 0.05 / Math.sqrt(3)};

        Propagation gauge = Propagation.of(inputs, Propagation.covariance(standard, new double[6][6]), in -> new Gradient[] {
            in[0].add(in[1]).subtract(in[0].multiply(in[2].multiply(in[3]).add(in[4].multiply(in[5]))))});
        Budget budget = new Budget(List.of(
                new Budget.Term("standard", 25, 18), new Budget.Term("difference", 9.7, 25.6),
                new Budget.Term("expansion", 50_000_623 * 0.1 * standard[2], 50),
                new Budget.Term("temperature", 50_000_623 * 11.5e-6 * standard[5], 2)));

        assertThat(gauge.values()[0]).isCloseTo(50_000_838, within(0.5));
        assertThat(gauge.standard(0)).isCloseTo(32, within(0.5)).isCloseTo(budget.combined(), within(1e-6));
        assertThat(Math.floor(budget.freedom())).isEqualTo(16);
        double k99 = new TDistribution(16).inverseCumulativeProbability(0.995);
        assertThat(k99).isCloseTo(2.92, within(0.005));
        assertThat(k99 * 32).isCloseTo(93, within(0.5));
    }
}
