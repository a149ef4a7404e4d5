package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rigwarden.findings.trace.RestTrail;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.quantity.Uncertain;

/** What cells lose by themselves, told only where their readings can tell it. */
class SelfDischargeTest {
    /** 125 µV, 105 Ah, one kelvin of difference between the days. */
    private static final SelfDischarge.Reading BY = new SelfDischarge.Reading(125e-6, 105, 1);

    private static Capacity full(double rateC, double ampHours, double expanded, double celsius) {
        Budget budget = new Budget(List.of(Budget.standard(Nature.TAPS, "tap at the cut-off", expanded / 2)));
        return new Capacity(3, rateC, new Uncertain(ampHours, expanded), new Uncertain(3.2 * ampHours, 1), budget, budget.times(3.2), celsius, 0, 2.5, 0.005,
                Capacity.Start.FULL, 0, 0, false, false);
    }

    @Test
    @Mark(of = "self discharge", standing = Standing.FROM_MEMORY, source = "IEC 61960-3:2017, 7.4: what is retained after 28 days")
    void charge_retained_over_four_weeks_is_a_share_and_over_one_week_is_refused() {
        Capacity before = full(0.2, 108.0, 0.3, 25);
        Capacity after = full(0.2, 105.84, 0.3, 25);

        Answer.Value retained = (Answer.Value) SelfDischarge.retained(before, after, 28, t -> t.nature() == Nature.GAIN);

        assertThat(retained.value()).isCloseTo(98.0, within(0.001));
        assertThat(retained.budget().terms()).extracting(Budget.Term::name).contains("drawn by the taps");
        assertThat(SelfDischarge.retained(before, after, 7, _ -> false)).isInstanceOf(Answer.Refused.class);
    }

    @Test
    @Mark(of = "self discharge", standing = Standing.WORKED, source = "written trails: 2, 2 and 9 mV in eleven days")
    void cells_are_ranked_by_the_fall_of_their_rest_voltage_on_a_steep_end_and_not_on_the_flat() {
        assertThat(SelfDischarge.ranking(rest(3.00, 2, 9, 2), BY))
                .isInstanceOfSatisfying(Answer.Named.class, n -> assertThat(n.who()).isEqualTo("cell 2"));
        assertThat(SelfDischarge.ranking(rest(3.00, 2, 2.1, 2), BY)).isInstanceOf(Answer.CannotTell.class);
        assertThat(SelfDischarge.ranking(rest(3.30, 2, 9, 2), BY))
                .isInstanceOfSatisfying(Answer.Refused.class, r -> assertThat(r.because()).contains("on the flat"));
    }

    @Test
    @Mark(of = "self discharge", standing = Standing.WORKED, source = "taps of 20 µA over 264 h are 5.28 mAh of 105 Ah, at 100 mV a percent 0.50 mV; 1 K at 0.2 mV/K")
    void noise_the_rooms_warmth_and_the_taps_are_in_what_decides() {
        assertThat(SelfDischarge.ranking(rest(3.00, 2, 2.5, 2), BY)).as("four steps of the readings, but the taps may draw as much")
                .isInstanceOf(Answer.CannotTell.class);
        assertThat(SelfDischarge.ranking(rest(3.00, 2, 4, 2), BY)).isInstanceOf(Answer.Named.class);
        assertThat(SelfDischarge.ranking(rest(3.00, 2, 4, 2), new SelfDischarge.Reading(125e-6, 105, -25)))
                .isInstanceOfSatisfying(Answer.CannotTell.class, c -> assertThat(c.because()).contains("temperature between the two days"));
        assertThat(SelfDischarge.ranking(rest(3.00, 2, 4, 2), new SelfDischarge.Reading(125e-6, 105, Double.NaN)))
                .as("nobody knows how warm it was").isInstanceOf(Answer.CannotTell.class);
        assertThat(SelfDischarge.ranking(rest(3.00, 2, 4, 2), new SelfDischarge.Reading(125e-6, 2.5, 1)))
                .isInstanceOfSatisfying(Answer.CannotTell.class, c -> assertThat(c.because()).contains("drawn by the taps"));
        assertThat(SelfDischarge.ranking(rest(3.00, 2), BY)).isInstanceOf(Answer.Refused.class);
    }

    @Test
    void hourly_means_that_scatter_by_two_millivolts_hardly_ever_name_a_cell_that_lost_no_more() {
        int named = 0;
        for (long seed = 1; seed <= 200; seed++) {
            named += SelfDischarge.ranking(noisy(rest(3.00, 5, 5, 5), seed), BY) instanceof Answer.Named ? 1 : 0;
        }

        assertThat(named).isLessThan(20);
        assertThat(SelfDischarge.ranking(noisy(rest(3.00, 5, 25, 5), 1), BY)).isInstanceOfSatisfying(Answer.Named.class,
                n -> assertThat(n.who()).isEqualTo("cell 2"));
    }

    private static RestTrail noisy(RestTrail quiet, long seed) {
        Random random = new Random(seed);
        return new RestTrail(quiet.hours(), Arrays.stream(quiet.volts())
                .map(cell -> Arrays.stream(cell).map(v -> v + 2e-3 * random.nextGaussian()).toArray()).toArray(double[][]::new));
    }

    private static RestTrail rest(double volts, double... fallMillivolts) {
        double[] hours = new double[400];
        Arrays.setAll(hours, i -> i + 0.5);
        double[][] trails = new double[fallMillivolts.length][hours.length];
        for (int cell = 0; cell < trails.length; cell++) {
            for (int i = 0; i < hours.length; i++) {
                trails[cell][i] = volts - fallMillivolts[cell] * 1e-3 * (hours[i] - 72) / 264;
            }
        }
        return new RestTrail(hours, trails);
    }
}
