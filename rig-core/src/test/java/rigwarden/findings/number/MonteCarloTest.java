package rigwarden.findings.number;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** The examples of the supplement by a million draws each, with the tolerances that a million draws leave. */
class MonteCarloTest {
    private static final int TRIALS = 1_000_000;
    private static final double ROOT3 = Math.sqrt(3);

    private static double rectangular(RandomGenerator chance, double standard) {
        return MonteCarlo.between(chance, -ROOT3 * standard, ROOT3 * standard);
    }

    @Test
    @Mark(of = "random draws", standing = Standing.FROM_MEMORY, source = "JCGM 101:2008, 9.2.2 to 9.2.4, Tables 2 to 4")
    void sums_of_four_have_the_intervals_of_the_supplement() {
        MonteCarlo normal = MonteCarlo.draw(1, TRIALS,
                c -> c.nextGaussian() + c.nextGaussian() + c.nextGaussian() + c.nextGaussian());
        MonteCarlo even = MonteCarlo.draw(2, TRIALS,
                c -> rectangular(c, 1) + rectangular(c, 1) + rectangular(c, 1) + rectangular(c, 1));
        MonteCarlo one = MonteCarlo.draw(3, TRIALS,
                c -> rectangular(c, 1) + rectangular(c, 1) + rectangular(c, 1) + rectangular(c, 10));

        assertThat(normal.standard()).isCloseTo(2.00, within(0.01));
        assertThat(normal.symmetric(0.95).high()).isCloseTo(3.92, within(0.02));
        assertThat(normal.symmetric(0.95).low()).isCloseTo(-3.92, within(0.02));
        assertThat(even.standard()).isCloseTo(2.00, within(0.01));
        assertThat(even.symmetric(0.95).high()).isCloseTo(3.88, within(0.02));
        assertThat(one.standard()).isCloseTo(10.15, within(0.05));
        assertThat(one.symmetric(0.95).high()).isCloseTo(17.0, within(0.1));
        assertThat(one.symmetric(0.95).low()).isCloseTo(-17.0, within(0.1));
    }

    @Test
    @Mark(of = "random draws", standing = Standing.FROM_MEMORY, source = "JCGM 101:2008, 9.3, mass calibration: 1.2340, u 0.0754, [1.0834, 1.3825] mg")
    void the_mass_calibration_has_its_shortest_interval() {
        MonteCarlo mass = MonteCarlo.draw(4, TRIALS, c -> {
            double reference = 100_000.000 + 0.050 * c.nextGaussian();
            double difference = 1.234 + 0.020 * c.nextGaussian();
            double air = MonteCarlo.between(c, 1.10, 1.30);
            double weight = MonteCarlo.between(c, 7000, 9000);
            double standard = MonteCarlo.between(c, 7950, 8050);
            return (reference + difference) * (1 + (air - 1.2) * (1 / weight - 1 / standard)) - 100_000;
        });

        assertThat(mass.mean()).isCloseTo(1.2340, within(4 * 0.0754 / Math.sqrt(TRIALS)));
        assertThat(mass.standard()).isCloseTo(0.0754, within(0.0004));
        assertThat(mass.shortest(0.95).low()).isCloseTo(1.0834, within(0.05 * 0.0754));
        assertThat(mass.shortest(0.95).high()).isCloseTo(1.3825, within(0.05 * 0.0754));
    }

    @Test
    @Mark(of = "random draws", standing = Standing.FROM_MEMORY, source = "JCGM 101:2008, 9.4, comparison loss at 0, 0.010 and 0.050")
    void the_comparison_loss_near_zero_is_what_no_first_order_sees() {
        double[] places = {0, 0.010, 0.050};
        double[] mean = {50e-6, 150e-6, 2550e-6};
        double[] standard = {50e-6, 112e-6, 502e-6};
        double[] high = {150e-6, 367e-6, 3543e-6};
        for (int i = 0; i < places.length; i++) {
            double place = places[i];
            MonteCarlo loss = MonteCarlo.draw(5 + i, TRIALS,
                    c -> Math.pow(place + 0.005 * c.nextGaussian(), 2) + Math.pow(0.005 * c.nextGaussian(), 2));

            assertThat(loss.mean()).isCloseTo(mean[i], within(0.5e-6 + 4 * standard[i] / Math.sqrt(TRIALS)));
            assertThat(loss.standard()).isCloseTo(standard[i], within(0.5e-6 + 0.005 * standard[i]));
            assertThat(loss.shortest(0.95).high()).isCloseTo(high[i], within(0.05 * standard[i]));
        }
    }

    @Test
    void the_same_seed_draws_the_same() {
        MonteCarlo one = MonteCarlo.draw(7, 1000, RandomGenerator::nextGaussian);

        MonteCarlo other = MonteCarlo.draw(7, 1000, RandomGenerator::nextGaussian);

        assertThat(one.sorted()).isEqualTo(other.sorted());
    }
}
