package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.Rehearsal;
import rigwarden.findings.StepFinding;
import rigwarden.findings.Tally;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.run.Event;

/**
 * Whether the stated uncertainty of a charge is honest: over specimens drawn from the stated distributions, is the model's
 * own charge inside, and is the interval no wider than it must be? Seeds 1…N; N is 5 in the default run and 30 with
 * {@code -Drigwarden.seeds=30}.
 */
class CoverageTest {
    private static final int SEEDS = Integer.getInteger("rigwarden.seeds", 5);
    private static final Rig RIG = Bench.rig();
    /** A driver whose scale is off by 1 %. */
    private static final Rig MUTANT = scaled(RIG, 1.01);

    private record Measured(int step, double truth, double value, double expanded, double mutant) {
        double error() {
            return Math.abs(value - truth) / Math.abs(truth);
        }

        double relative() {
            return expanded / Math.abs(value);
        }

        boolean inside() {
            return Math.abs(value - truth) <= expanded;
        }

        boolean mutantInside() {
            return Math.abs(mutant - truth) <= expanded;
        }
    }

    @Test
    void the_true_charge_lies_inside_the_stated_uncertainty_which_is_no_wider_than_it_must_be() {
        List<List<Measured>> all = LongStream.rangeClosed(1, SEEDS).parallel().mapToObj(CoverageTest::night).toList();
        for (int step : new int[] {3, 7}) {
            List<Measured> rate = all.stream().flatMap(List::stream).filter(m -> m.step() == step).toList();
            long inside = rate.stream().filter(Measured::inside).count();
            long mutant = rate.stream().filter(Measured::mutantInside).count();
            double[] errors = rate.stream().mapToDouble(Measured::error).sorted().toArray();
            double quantile = quantile(errors, 0.95);
            double widest = rate.stream().mapToDouble(Measured::relative).max().orElseThrow();
            System.out.printf("step %d, %d seeds: inside %d, a scale off by 1 %% inside %d; U %.3f %%, 95 %% of errors within "
                    + "%.3f %%, U ÷ that %.2f%n", step, rate.size(), inside, mutant, 100 * widest, 100 * quantile,
                    widest / quantile);
            assertThat(rate).hasSize(SEEDS);
            assertThat(inside).as("inside").isGreaterThanOrEqualTo(Math.round(Math.floor(SEEDS * 26 / 30.0)));
            assertThat(mutant).as("a driver off by 1 %").isLessThanOrEqualTo(SEEDS * 8L / 30);
            assertThat(widest).as("relative uncertainty, uncalibrated").isLessThanOrEqualTo(0.007);
            if (SEEDS >= 30) {
                assertThat(widest).as("no wider than 1.3 × what is seen").isLessThanOrEqualTo(1.3 * quantile);
            }
        }
    }

    private static double quantile(double[] sorted, double share) {
        double at = share * (sorted.length - 1);
        int below = (int) at;
        double above = sorted[Math.min(below + 1, sorted.length - 1)];
        return sorted[below] + (at - below) * (above - sorted[below]);
    }

    private static List<Measured> night(long seed) {
        Tally tally = new Tally(RIG);
        Tally mutant = new Tally(MUTANT);
        try {
            Rehearsal rehearsal = new Rehearsal(RIG, Bench.night(), seed, List.of(), (scan, _, _, _) -> {
                tally.scan(scan);
                mutant.scan(scan);
            });
            double began = 0;
            double[] truth = new double[Bench.night().steps().size() + 1];
            while (!rehearsal.over()) {
                for (Event event : rehearsal.scan()) {
                    if (event instanceof Event.StepEnded ended) {
                        truth[ended.step()] = (rehearsal.rig().world().coulombs() - began) / 3600;
                        tally.ended(ended.by(), ended.settled(), ended.account());
                        mutant.ended(ended.by(), ended.settled(), ended.account());
                    } else if (event instanceof Event.StepBegun begun) {
                        began = rehearsal.rig().world().coulombs();
                        tally.begun(begun.step(), begun.kind());
                        mutant.begun(begun.step(), begun.kind());
                    }
                }
            }
            List<Measured> found = new ArrayList<>();
            for (int i = 0; i < tally.steps().size(); i++) {
                StepFinding step = tally.steps().get(i);
                found.add(new Measured(step.index(), truth[step.index()], step.chargeAmpHours().value(),
                        step.chargeAmpHours().expanded(), mutant.steps().get(i).chargeAmpHours().value()));
            }
            return found;
        } catch (BusFailure e) {
            throw new AssertionError(e);
        }
    }

    private static Rig scaled(Rig rig, double factor) {
        List<Channel> channels = rig.channels().stream()
                .map(c -> c.role() == Role.ACCUMULATED || c.role() == Role.CURRENT
                        ? new Channel(c.index(), c.name(), c.role(), c.cell(), c.periodNanos(), c.scale() * factor,
                                c.shift(), c.gainU(), c.offsetU(), c.lowest(), c.highest(), c.lagSeconds())
                        : c)
                .toList();
        return rig.with(channels);
    }

    @Test
    void the_quantile_is_what_the_word_means() {
        assertThat(quantile(new double[] {0, 1, 2, 3, 4}, 0.5)).isEqualTo(2);
        assertThat(Arrays.stream(new double[] {quantile(new double[] {0, 10}, 0.95)}).sum()).isEqualTo(9.5);
    }
}
