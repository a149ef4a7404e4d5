package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.Warmth;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.pack.Fault;
import rigwarden.pack.Line;
import rigwarden.pack.Load;
import rigwarden.pack.Supply;
import rigwarden.pack.WorldParameters;
import rigwarden.program.Ended;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.TestRigs;

/** Two runs of one pack at two currents: what the square of the current says, and a joint that has changed meanwhile. */
class SquareTest {
    private static final Rig RIG = TestRigs.eightCells();

    /** An hour of a model pack at one current. */
    private static Gathered hour(double amps, double addedOhms, long seed) {
        double[] charges = new double[8];
        Arrays.fill(charges, 0.95);
        WorldParameters pack = WorldParameters.pack();
        Trace trace = new Trace(RIG);
        ModelRig model = new ModelRig(RIG, pack.withPath(pack.path().withSupplies(Supply.Charger.usual()).withLoads(new Load.Electronic(0.1),
                new Load.Electronic(0.1))), charges, seed, (Row row) -> trace.take(row));
        if (addedOhms > 0) {
            model.world().inflict(new Fault.LooseJoint(4, true, addedOhms));
        }
        model.begin(1, "heat_run");
        model.relay(Line.sink(0), true);
        model.world().sink(0, true, amps);
        model.live(3500, 2);
        model.world().sink(0, false, 0);
        model.end(Ended.TIME);
        return trace.end();
    }

    private static String who(Answer answer) {
        return ((Answer.Named) answer).who();
    }

    @Test
    @Mark(of = "square", standing = Standing.WORKED, source = "the pack model at 40 A and 60 A, with and without 1 mΩ added at one bar")
    void sound_joints_warm_as_the_square_says_and_one_that_has_changed_is_named() {
        Gathered earlier = hour(40, 0, 1);

        Finding same = Findings.beside(earlier, "run 3", hour(60, 0, 1));
        Finding changed = Findings.beside(earlier, "run 3", hour(60, 1e-3, 1));

        assertThat(who(same.answer())).as("%s", same).isEqualTo("none");
        assertThat(same.notes()).hasSize(RIG.channels().stream().map(Channel::role).filter(role -> role.joint()).toList().size());
        assertThat(who(changed.answer())).as("%s", changed).isEqualTo("bar_05_c");
        assertThat(changed.about()).isEqualTo("run 3 to this run");
    }

    /** A joint that settled at a rise over cells that stay as they are. */
    private static Gathered written(double kelvin, double amps, double hours) {
        int points = (int) (hours * 60);
        double[] at = IntStream.range(0, points).mapToDouble(i -> i / 60.0).toArray();
        double[] squares = IntStream.range(0, points).mapToDouble(_ -> amps * amps).toArray();
        double[] flat = IntStream.range(0, points).mapToDouble(_ -> 22).toArray();
        double[] warm = IntStream.range(0, points).mapToDouble(i -> 22 + kelvin * -Math.expm1(-i / 5.0)).toArray();
        List<Warmth> warmth = List.of(new Warmth(RIG.column("cell_03_c").orElseThrow(), 22, at, flat, squares, squares),
                new Warmth(RIG.column("bar_03_c").orElseThrow(), 22, at, warm, squares, squares));
        StepNotes any = hourless();
        return new Gathered(List.of(new StepNotes(any.sums(), any.continuity(), any.knees(), warmth, any.rest(), 0, 22)), List.of(), 1, 0);
    }

    private static StepNotes hourless() {
        return new WrittenRun(TestRigs.oneCell(), 1).step(1, "discharge", 60, Ended.TIME, _ -> -50, _ -> 22, _ -> 3.2).rows().stream()
                .collect(() -> new Trace(TestRigs.oneCell()), Trace::take, (_, _) -> { }).end().steps().getFirst();
    }

    @Test
    void a_rise_of_two_kelvin_at_forty_amperes_is_four_and_a_half_at_sixty() {
        Finding finding = Findings.beside(written(2, 40, 1), "run 3", written(4.5, 60, 1));

        assertThat(finding.notes()).singleElement().satisfies(note -> assertThat(note).startsWith("bar_03_c 4.5 K, by the square 4.5 ± "));
        assertThat(who(finding.answer())).isEqualTo("none");
        assertThat(who(Findings.beside(written(2, 40, 1), "run 3", written(9, 60, 1)).answer())).isEqualTo("bar_03_c");
    }

    @Test
    void what_is_too_far_or_not_settled_is_refused() {
        assertThat(Findings.beside(written(2, 20, 1), "run 3", written(4.5, 60, 1)).answer()).isInstanceOfSatisfying(Answer.Refused.class,
                refused -> assertThat(refused.because()).contains("60 A is too far from the 20 A"));
        assertThat(Findings.beside(written(2, 40, 0.5), "run 3", written(4.5, 60, 1)).answer()).isInstanceOfSatisfying(Answer.Refused.class,
                refused -> assertThat(refused.because()).startsWith("run 3 has no step").endsWith("45 min"));
    }
}
