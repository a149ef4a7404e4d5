package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.Visit;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.pack.Fault;
import rigwarden.pack.Load;
import rigwarden.pack.Node;
import rigwarden.pack.Supply;
import rigwarden.pack.WorldParameters;
import rigwarden.pack.Line;
import rigwarden.program.Ended;
import rigwarden.rig.Rig;
import rigwarden.rig.Spot;
import rigwarden.rig.TestRigs;

/** A loose probe is carried along the model pack in a heat run: what is attributed to which spot, ranked, and what is left out. */
class SpotHeatTest {
    private static final Rig RIG = TestRigs.withLoose(TestRigs.eightCells());
    private static final int LOOSE = RIG.probes().size() - 1;
    private static final List<String> BARS = List.of("bar 1–2", "bar 2–3", "bar 3–4", "bar 4–5", "bar 5–6");

    /** Everything that happened on one model pack. */
    private static final class Carried {
        final List<Row> rows = new ArrayList<>();
        final ModelRig model;

        Carried(long seed, double addedOhms) {
            double[] charges = new double[8];
            Arrays.fill(charges, 0.95);
            WorldParameters pack = WorldParameters.pack();
            model = new ModelRig(RIG, pack.withPath(pack.path().withSupplies(Supply.Charger.usual()).withLoads(new Load.Electronic(0.1),
                    new Load.Electronic(0.1))), charges, seed, rows::add);
            if (addedOhms > 0) {
                model.world().inflict(new Fault.LooseJoint(2, true, addedOhms));
            }
            model.begin(1, "rest");
            model.live(120, 1);
            model.end(Ended.SETTLED);
        }

        void flow(int step, double amps, double seconds) {
            model.begin(step, "heat_run");
            model.relay(Line.sink(0), true);
            model.world().sink(0, true, amps);
            model.live(seconds, 1);
        }

        void lay(String name, double seconds) {
            Spot spot = Spot.named(RIG, name).orElseThrow();
            model.laid(spot);
            model.world().inflict(new Fault.LaidBead(LOOSE, node(spot)));
            model.live(seconds, 1);
        }

        private static Node node(Spot spot) {
            return switch (spot.part()) {
                case BODY -> Node.body(spot.cell() - 1);
                case STUD_POSITIVE -> Node.stud(spot.cell() - 1, true);
                case STUD_NEGATIVE -> Node.stud(spot.cell() - 1, false);
                case BAR -> Node.link(spot.cell());
                case SHUNT -> Node.SHUNT;
                case CONTACTOR -> Node.CONTACTOR;
                case OTHER, AWAY -> Node.ROOM;
            };
        }

        void stop() {
            model.world().sink(0, false, 0);
            model.relay(Line.sink(0), false);
            model.end(Ended.TIME);
            model.live(30, 1);
        }

        Gathered gathered() {
            Trace trace = new Trace(RIG);
            rows.forEach(trace::take);
            return trace.end();
        }

        Finding finding() {
            return SpotHeat.of(RIG, gathered().visits()).orElseThrow();
        }
    }

    private static Carried along(long seed, double addedOhms) {
        Carried carried = new Carried(seed, addedOhms);
        carried.flow(2, 60, 1500);
        BARS.forEach(bar -> carried.lay(bar, 150));
        carried.stop();
        return carried;
    }

    private static String who(Finding finding) {
        return ((Answer.Named) finding.answer()).who();
    }

    @Test
    @Mark(of = "spot", standing = Standing.WORKED, source = "the pack model's own temperatures: 0.8 mΩ added at one of five bars")
    void the_bar_with_the_bad_joint_is_named_and_stands_first() {
        for (long seed = 1; seed <= 5; seed++) {
            Finding finding = along(seed, 0.8e-3).finding();

            assertThat(who(finding)).as("seed %d: %s", seed, finding).isEqualTo("bar 3–4");
            assertThat(finding.notes().getFirst()).startsWith("by heat: bar 3–4 ");
        }
    }

    @Test
    void sound_bars_are_ranked_and_none_is_named() {
        for (long seed = 1; seed <= 10; seed++) {
            Finding finding = along(seed, 0).finding();

            assertThat(who(finding)).as("seed %d: %s", seed, finding).isEqualTo("none");
        }
    }

    @Test
    void each_reading_is_of_the_spot_that_was_told_and_covers_its_true_rise() {
        Carried carried = new Carried(3, 0.3e-3);
        carried.flow(2, 60, 1500);
        carried.lay("bar 3-4", 150);
        double trueBar = carried.model.world().celsius(Node.link(3))
                - (carried.model.world().celsius(Node.body(2)) + carried.model.world().celsius(Node.body(3))) / 2;
        carried.lay("shunt", 150);
        double trueShunt = carried.model.world().celsius(Node.SHUNT) - carried.model.world().celsius(Node.ROOM);
        carried.lay("away", 30);
        carried.stop();

        List<Visit> visits = carried.gathered().visits();

        List<SpotHeat.Rise> rises = SpotHeat.ranked(RIG, visits.stream().filter(Visit::settled).toList(), 60);
        assertThat(rises).extracting(rise -> rise.spot().name()).containsExactlyInAnyOrder("bar 3–4", "shunt");
        for (SpotHeat.Rise rise : rises) {
            double truth = rise.spot().part() == Spot.Part.BAR ? trueBar : trueShunt;
            assertThat(rise.kelvin()).as(rise.words()).isCloseTo(truth, within(rise.budget().expanded()));
            assertThat(rise.budget().expanded()).as(rise.words()).isLessThan(3);
        }
    }

    @Test
    void a_stay_that_was_too_short_to_settle_is_left_out_and_said() {
        Carried carried = new Carried(1, 0);
        carried.flow(2, 60, 600);
        carried.lay("bar 1-2", 150);
        carried.lay("bar 2-3", 70);
        carried.lay("away", 60);
        carried.stop();

        Finding finding = carried.finding();

        assertThat(carried.gathered().visits()).filteredOn(v -> v.spot().name().equals("bar 2–3")).singleElement()
                .satisfies(visit -> assertThat(visit.settled()).isFalse());
        assertThat(finding.notes()).anyMatch(note -> note.endsWith("too little current: bar 2–3"));
        assertThat(who(finding)).isEqualTo("warmest bar 1–2");
    }

    @Test
    void what_it_reads_after_it_fell_is_of_no_spot() {
        Carried carried = new Carried(1, 0.3e-3);
        carried.flow(2, 60, 1500);
        carried.lay("bar 3-4", 200);
        double warm = carried.model.world().beadCelsius(LOOSE);
        carried.model.world().inflict(new Fault.DetachedBead(LOOSE));
        carried.model.live(300, 1);
        carried.stop();

        List<Visit> visits = carried.gathered().visits();

        assertThat(visits).singleElement().satisfies(visit -> {
            assertThat(visit.fell()).isTrue();
            assertThat(visit.celsius()).isCloseTo(warm, within(2.5));
        });
        assertThat(carried.finding().notes()).anyMatch(note -> note.startsWith("from there it dropped") && note.endsWith("bar 3–4"));
    }

    @Test
    void the_end_of_the_current_ends_a_reading_and_rest_readings_are_not_compared() {
        Carried carried = new Carried(1, 0.3e-3);
        carried.flow(2, 60, 1500);
        carried.lay("bar 3-4", 200);
        carried.stop();
        carried.model.begin(3, "rest");
        carried.model.live(600, 1);
        carried.model.end(Ended.SETTLED);

        List<Visit> visits = carried.gathered().visits();

        assertThat(visits.getFirst().squareAmps()).isCloseTo(3600, within(100.0));
        assertThat(visits.stream().skip(1)).allSatisfy(visit -> assertThat(visit.squareAmps()).isLessThan(1));
        assertThat(carried.finding().notes().getFirst()).contains("bar 3–4").doesNotContain(",");
    }

    @Test
    void late_and_repeated_rows_make_no_difference_and_a_rig_that_nobody_told_anything_has_no_such_finding() {
        Carried carried = along(2, 0.3e-3);
        Trace again = new Trace(RIG);
        for (int i = 0; i + 20 <= carried.rows.size(); i += 20) {
            carried.rows.subList(i, i + 20).reversed().forEach(again::take);
            carried.rows.subList(i, i + 10).forEach(again::take);
        }
        carried.rows.subList(carried.rows.size() - 20, carried.rows.size()).forEach(again::take);

        assertThat(again.end().visits()).isEqualTo(carried.gathered().visits());
        assertThat(SpotHeat.of(RIG, List.of())).isEqualTo(Optional.empty());
    }
}
