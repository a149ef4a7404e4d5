package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.findings.trace.Edge;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.program.Ended;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** Steps of the current: however many there are the last is kept, and few rows before one make its resistance less sure. */
class EdgesTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.eightCells();

    /** A load that goes on and off every two seconds, 400 times, in a step of its own before a plain discharge. */
    private static Gathered switched() {
        return WrittenRun.gathered(PACK, new WrittenRun(PACK, 0.1)
                .step(1, "discharge", 1600, Ended.TIME, t -> (int) Math.floor(t / 2 + 1e-6) % 2 == 0 ? -50 : 0, _ -> 22,
                        t -> (int) Math.floor(t / 2 + 1e-6) % 2 == 0 ? 3.26 : 3.28)
                .step(2, "discharge", 30, Ended.TIME, _ -> -50, _ -> 22, _ -> 3.26)
                .step(3, "rest", 30, Ended.TIME, _ -> 0, _ -> 22, _ -> 3.28).rows());
    }

    @Test
    void a_step_with_hundreds_of_stops_hides_neither_its_own_last_nor_those_of_later_steps() {
        Gathered run = switched();

        assertThat(run.edges()).hasSizeBetween(40, 70);
        assertThat(run.droppedEdges() + run.edges().size()).isBetween(790L, 802L);
        assertThat(run.edges()).filteredOn(e -> e.step() == 1 && e.opened()).extracting(Edge::scan).last().isEqualTo(15_981L);
        assertThat(run.edges()).filteredOn(e -> e.step() == 2 && e.opened()).isNotEmpty();
        List<Finding> found = Findings.of(PACK, run, Rating.usual(105));
        assertThat(found).filteredOn(f -> f.kind() == Kind.RESISTANCE && f.answer() instanceof Answer.Refused).isEmpty();
        assertThat(found).filteredOn(f -> f.kind() == Kind.JOINT).singleElement()
                .satisfies(f -> assertThat(f.notes()).last().asString().contains(run.droppedEdges() + " further steps of the current"));
    }

    @Test
    @Mark(of = "resistance", standing = Standing.WORKED, source = "a line one row beyond n rows: √(1/n + 3(n + 1)/(n(n − 1))): 0.4775 of 19, 1.2247 of 4; with one reading 1.108 and 1.581")
    void a_line_through_four_rows_is_less_sure_than_one_through_nineteen() {
        Answer.Value few = opening(0.5);
        Answer.Value many = opening(10);

        double resolution = CELL.channel(Role.CELL_VOLTS).scale() / Math.sqrt(12) / 50 * 1000;
        assertThat(noise(many)).isCloseTo(1.108 * resolution, within(0.01 * resolution));
        assertThat(noise(few)).isCloseTo(1.581 * resolution, within(0.01 * resolution));
    }

    /** A current of 50 A that stops after so long, in rows of 0.1 s without any noise. */
    private static Answer.Value opening(double seconds) {
        List<Finding> found = WrittenRun.findings(CELL, new WrittenRun(CELL, 0.1)
                .step(1, "discharge", seconds, Ended.TIME, _ -> -50, _ -> 22, _ -> 3.25)
                .step(2, "rest", 20, Ended.TIME, _ -> 0, _ -> 22, _ -> 3.25).rows());
        return (Answer.Value) found.stream().filter(f -> f.kind() == Kind.RESISTANCE && f.answer() instanceof Answer.Value).findFirst()
                .orElseThrow().answer();
    }

    private static double noise(Answer.Value resistance) {
        return resistance.budget().terms().stream().filter(t -> t.name().equals("noise and rounding of the taps"))
                .mapToDouble(Budget.Term::standard).findFirst().orElseThrow();
    }
}
