package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.StepMark;
import rigwarden.program.Ended;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** However the rows come, the findings are the same; and what cannot be said is said. */
class TraceTest {
    private static final Rig CELL = TestRigs.oneCell();

    /** Charged for 10 min, rested, discharged for 20 min down to the cut-off. */
    private static List<Row> shortRun() {
        return shortRun(CELL);
    }

    private static List<Row> shortRun(Rig rig) {
        return new WrittenRun(rig, 0.5)
                .step(1, "charge", 600, Ended.TAPER, _ -> 21, t -> 22 + t / 600, t -> 3.45 + t * 2e-4)
                .step(2, "rest", 300, Ended.SETTLED, _ -> 0, _ -> 23, _ -> 3.35)
                .step(3, "discharge", 1200, Ended.CUT_OFF, _ -> -52.5, t -> 23 + t / 200, t -> 3.25 - 0.75 * Math.pow(t / 1200, 6))
                .step(4, "rest", 60, Ended.TIME, _ -> 0, _ -> 29, t -> 2.6 + 0.1 * (1 - Math.exp(-t / 20)))
                .rows();
    }

    private static Answer answer(List<Finding> findings, Kind kind) {
        return findings.stream().filter(f -> f.kind() == kind).reduce((_, last) -> last).orElseThrow().answer();
    }

    private static String refusal(List<Finding> findings, Kind kind) {
        assertThat(answer(findings, kind)).isInstanceOf(Answer.Refused.class);
        return ((Answer.Refused) answer(findings, kind)).because();
    }

    @Test
    void rows_late_twice_and_in_any_chunks_give_what_the_whole_gives() {
        List<Row> rows = shortRun();
        List<Finding> whole = WrittenRun.findings(CELL, rows);
        assertThat(whole).hasSizeGreaterThan(10);

        for (long seed = 1; seed <= 100; seed++) {
            Random random = new Random(seed);
            Trace trace = new Trace(CELL);
            for (Row row : disturbed(rows, random)) {
                trace.take(row);
                if (random.nextInt(200) == 0) {
                    trace.warmthNow();
                }
            }

            assertThat(Findings.of(CELL, trace.end(), Rating.usual(105))).as("seed %d", seed).isEqualTo(whole);
        }
    }

    /** Chunks of up to 40 rows, each shuffled, some sent twice, some with rows of long ago. */
    private static List<Row> disturbed(List<Row> rows, Random random) {
        List<Row> sent = new ArrayList<>();
        for (int from = 0; from < rows.size(); ) {
            int to = Math.min(rows.size(), from + 1 + random.nextInt(40));
            List<Row> chunk = new ArrayList<>(rows.subList(from, to));
            if (random.nextInt(3) == 0) {
                chunk.addAll(rows.subList(from, to));
            }
            if (random.nextInt(5) == 0) {
                chunk.add(rows.get(random.nextInt(to)));
            }
            Collections.shuffle(chunk, random);
            sent.addAll(chunk);
            from = to;
        }
        return sent;
    }

    @Test
    void a_restart_half_way_is_fed_from_the_file_and_then_live_with_rows_that_overlap() {
        List<Row> rows = shortRun();
        List<Finding> whole = WrittenRun.findings(CELL, rows);

        for (long seed = 1; seed <= 20; seed++) {
            Random random = new Random(seed);
            int died = 100 + random.nextInt(rows.size() - 200);
            Trace before = new Trace(CELL);
            rows.subList(0, died).forEach(before::take);
            Trace after = new Trace(CELL);
            rows.subList(0, died).forEach(after::take);
            rows.subList(died - random.nextInt(90), rows.size()).forEach(after::take);

            assertThat(Findings.of(CELL, after.end(), Rating.usual(105))).as("seed %d", seed).isEqualTo(whole);
        }
    }

    @Test
    void a_run_in_two_parts_gives_the_same_however_the_rows_of_each_come() {
        List<Row> rows = shortRun();
        int cut = 2 * (600 + 300 + 450);
        List<Row> before = new ArrayList<>(rows.subList(0, cut));
        List<Row> after = new ArrayList<>();
        for (Row row : rows.subList(cut, rows.size())) {
            List<StepMark> marks = new ArrayList<>(row.marks());
            if (after.isEmpty()) {
                marks.addFirst(new StepMark.Begun(3, "discharge"));
            }
            after.add(new Row(new Scan(after.size() + 1, row.scan().nanos(), row.scan().readings()), marks));
        }
        List<Finding> whole = inParts(before, after);
        assertThat(answer(whole, Kind.CAPACITY)).isInstanceOf(Answer.Value.class);
        assertThat(((Answer.Value) answer(whole, Kind.CAPACITY)).value()).isCloseTo(52.5 * 1200 / 3600 + 52.5 * 11 / 3600 / 2, within(0.03));

        for (long seed = 1; seed <= 50; seed++) {
            Random random = new Random(seed);
            assertThat(inParts(disturbed(before, random), disturbed(after, random))).as("seed %d", seed).isEqualTo(whole);
        }
    }

    @Test
    void what_flowed_unseen_at_a_break_is_no_ripple_and_is_not_said_to_be_counted_where_the_part_before_is_lost() {
        List<Row> rows = shortRun();
        int cut = 2 * (600 + 300 + 450);
        List<Row> after = new ArrayList<>(rows.subList(cut, rows.size()));
        after.set(0, new Row(after.getFirst().scan(), List.of(new StepMark.Begun(3, "discharge"))));

        Finding joined = discharged(inParts(rows.subList(0, cut), after));
        Finding alone = discharged(Findings.of(CELL, Joined.alone(600, 52.5, 3, WrittenRun.gathered(CELL, after)), Rating.usual(105)));

        assertThat(joined.notes()).anyMatch(note -> note.contains("up to 0.16 Ah may have flowed unseen")).noneMatch(note -> note.contains("ripple"));
        assertThat(alone.conditions()).anyMatch(words -> words.startsWith("INTERRUPTED for 10.0 min"));
        assertThat(alone.notes()).noneMatch(note -> note.contains("unseen"));
    }

    private static Finding discharged(List<Finding> findings) {
        return findings.stream().filter(f -> f.kind() == Kind.CHARGE && f.about().equals("step 3, discharge")).findFirst().orElseThrow();
    }

    private static List<Finding> inParts(List<Row> before, List<Row> after) {
        return Findings.of(CELL, Joined.of(WrittenRun.gathered(CELL, before), 600, 52.5, WrittenRun.gathered(CELL, after)), Rating.usual(105));
    }

    @Test
    void where_the_current_was_not_read_the_count_stands_and_no_ripple_is_made_of_what_is_not_there() {
        List<Row> rows = new ArrayList<>();
        for (Row row : shortRun()) {
            long scan = row.scan().number();
            rows.add(scan > 2200 && scan < 3200 ? WrittenRun.without(List.of(row), CELL.channel(Role.CURRENT)).getFirst() : row);
        }
        Finding charge = WrittenRun.findings(CELL, rows).stream().filter(f -> f.kind() == Kind.CHARGE && f.about().startsWith("step 3")).findFirst()
                .orElseThrow();

        assertThat(((Answer.Value) charge.answer()).value()).isCloseTo(-52.5 * 1200 / 3600, within(0.02));
        assertThat(charge.notes()).anyMatch(note -> note.startsWith("over 500.0 s of it the current was not read")).noneMatch(note -> note.contains("ripple"));
    }

    @Test
    void a_long_step_is_kept_in_as_little_as_a_short_one() {
        List<Row> rows = new WrittenRun(CELL, 5)
                .step(1, "discharge", 400_000, Ended.CUT_OFF, _ -> -5, t -> 22 + t / 1e5, t -> 3.3 - t * 2e-6).rows();

        StepNotes step = WrittenRun.gathered(CELL, rows).steps().getFirst();

        assertThat(step.warmth()).allSatisfy(w -> assertThat(w.hours()).hasSizeBetween(100, 240));
        assertThat(step.rest().hours()).hasSizeLessThanOrEqualTo(1024);
        double[] hours = step.warmth().getFirst().hours();
        double middle = step.warmth().getFirst().celsius()[hours.length / 2];
        assertThat(middle).as("thinning keeps the course").isCloseTo(22 + hours[hours.length / 2] * 3600 / 1e5, within(0.05));
    }

    @Test
    void one_scan_only_gives_a_refusal_for_each() {
        Row first = shortRun().getFirst();

        List<Finding> findings = WrittenRun.findings(CELL, List.of(new Row(first.scan(), List.of(new StepMark.Begun(1, "discharge")))));

        assertThat(refusal(findings, Kind.CHARGE)).contains("one scan only");
        assertThat(refusal(findings, Kind.CAPACITY)).contains("one scan only");
        assertThat(refusal(findings, Kind.LIMITING_CELL)).contains("no cell met its cut-off");
        assertThat(refusal(findings, Kind.RESISTANCE)).contains("did not stop at once");
    }

    @Test
    void no_row_at_all_gives_refusals_too() {
        List<Finding> findings = WrittenRun.findings(CELL, List.of());

        assertThat(findings).isNotEmpty().allSatisfy(f -> assertThat(f.answer()).isInstanceOf(Answer.Refused.class));
    }

    @Test
    void without_a_discharge_there_is_no_capacity_and_no_rate() {
        List<Row> rows = new WrittenRun(CELL, 1)
                .step(1, "charge", 600, Ended.TAPER, _ -> 21, _ -> 22, t -> 3.45 + t * 2e-4).rows();

        List<Finding> findings = WrittenRun.findings(CELL, rows);

        assertThat(refusal(findings, Kind.CAPACITY)).contains("no discharge");
        assertThat(refusal(findings, Kind.RATE)).contains("two discharges");
        assertThat(refusal(findings, Kind.ACCOUNT)).contains("not full twice");
        assertThat(answer(findings, Kind.CHARGE)).isInstanceOf(Answer.Value.class);
    }

    @Test
    void two_clocks_in_one_step_are_named_and_spoil_that_step_only() {
        List<Row> rows = new ArrayList<>(shortRun());
        for (int i = 2500; i < rows.size(); i++) {
            rows.set(i, WrittenRun.at(rows.get(i), rows.get(i).scan().nanos() - 900_000_000_000L));
        }

        List<Finding> findings = WrittenRun.findings(CELL, rows);

        assertThat(refusal(findings, Kind.CAPACITY)).contains("two clocks");
        assertThat(findings.stream().filter(f -> f.kind() == Kind.CHARGE && f.about().startsWith("step 1")).findFirst().orElseThrow()
                .answer()).isInstanceOf(Answer.Value.class);
    }

    @Test
    void a_missing_channel_takes_with_it_only_what_needs_it() {
        List<Row> rows = shortRun();

        List<Finding> noCount = WrittenRun.findings(CELL, WrittenRun.without(rows, CELL.channel(Role.ACCUMULATED)));
        List<Finding> noCell = WrittenRun.findings(CELL, WrittenRun.without(rows, CELL.channel(Role.CELL_VOLTS)));
        List<Finding> noBus = WrittenRun.findings(CELL, WrittenRun.without(rows, CELL.channel(Role.BUS_VOLTS)));

        assertThat(refusal(noCount, Kind.CHARGE)).contains("accumulator could not be followed");
        assertThat(answer(noCount, Kind.RESISTANCE)).isInstanceOf(Answer.Value.class);
        assertThat(refusal(noCell, Kind.LIMITING_CELL)).contains("not every cell was read");
        assertThat(refusal(noCell, Kind.RESISTANCE)).isNotBlank();
        assertThat(answer(noCell, Kind.CHARGE)).isInstanceOf(Answer.Value.class);
        assertThat(noBus.stream().filter(f -> f.kind() == Kind.ENERGY && f.about().contains("bus")).map(Finding::answer))
                .allSatisfy(a -> assertThat(a).isInstanceOf(Answer.Refused.class));
    }

    @Test
    void a_run_that_breaks_off_gives_what_came_until_then_as_a_bound() {
        List<Row> rows = shortRun();

        List<Finding> findings = WrittenRun.findings(CELL, rows.subList(0, 3000));

        Answer capacity = answer(findings, Kind.CAPACITY);
        assertThat(capacity).isInstanceOf(Answer.AtLeast.class);
        assertThat(((Answer.AtLeast) capacity).value()).isBetween(5.0, 10.0);
        assertThat(findings.stream().filter(f -> f.kind() == Kind.ENERGY && f.about().equals("step 3, discharge"))).singleElement()
                .satisfies(f -> assertThat(f.answer()).isInstanceOf(Answer.Refused.class));
        assertThat(answer(findings, Kind.VERDICT)).isInstanceOf(Answer.NotDecided.class);
        assertThat(refusal(findings, Kind.LIMITING_CELL)).contains("cut");
    }

    @Test
    void rows_that_never_came_are_named_and_the_chips_count_bridges_them_where_it_fits() {
        List<Row> rows = new ArrayList<>(shortRun());
        rows.subList(2400, 2500).clear();

        List<Finding> findings = WrittenRun.findings(CELL, rows);

        Finding discharge = findings.stream().filter(f -> f.kind() == Kind.CHARGE && f.about().startsWith("step 3")).findFirst().orElseThrow();
        assertThat(((Answer.Value) discharge.answer()).value()).isCloseTo(-52.5 * 1200 / 3600, within(0.02));
        assertThat(discharge.notes()).anySatisfy(n -> assertThat(n).contains("100 rows are missing").contains("50.5 s"));
    }

    private static List<Row> countedAnew(Rig rig, List<Row> whole) {
        List<Row> rows = new ArrayList<>(whole);
        long lost = ((Reading.Valid) rows.get(2600).scan().readings().get(rig.channel(Role.ACCUMULATED).index())).code();
        for (int i = 2600; i < rows.size(); i++) {
            rows.set(i, WrittenRun.moved(rows.get(i), rig.channel(Role.ACCUMULATED), -lost));
        }
        return rows;
    }

    private static Answer.Value discharge(Rig rig, List<Row> rows, Kind kind) {
        return (Answer.Value) WrittenRun.findings(rig, rows).stream().filter(f -> f.kind() == kind && f.about().equals("step 3, discharge"))
                .findFirst().orElseThrow().answer();
    }

    @Test
    void a_chip_that_began_to_count_anew_is_noticed_and_what_it_lost_is_bounded() {
        List<Row> rows = countedAnew(CELL, shortRun());

        Answer.Value charge = discharge(CELL, rows, Kind.CHARGE);
        Answer.Value energy = discharge(CELL, rows, Kind.ENERGY);

        assertThat(charge.value()).isCloseTo(-17.5, within(0.02));
        assertThat(charge.budget().terms()).filteredOn(t -> t.name().equals("accumulator not followed")).singleElement()
                .satisfies(t -> assertThat(t.halfWidth()).isCloseTo(52.5 * 0.5 / 3600, within(1e-4)));
        assertThat(energy.value()).as("17.5 Ah at 3.143 V").isCloseTo(-17.5 * (3.25 - 0.75 / 7), within(0.1));
        assertThat(energy.value()).isCloseTo(discharge(CELL, shortRun(), Kind.ENERGY).value(), within(0.02));
    }

    @Test
    void a_calibrated_zero_is_counted_once_over_the_time_that_the_chip_counted_whatever_it_lost() {
        Rig zeroed = CELL.calibrated(List.of(ComparisonTest.calibration(1, 1.5)));
        List<Row> rows = shortRun(zeroed);

        Answer.Value whole = discharge(zeroed, rows, Kind.CHARGE);
        Answer.Value anew = discharge(zeroed, countedAnew(zeroed, rows), Kind.CHARGE);

        assertThat(whole.value()).isCloseTo(-17.5 + 1.5 * 1200 / 3600, within(0.02));
        assertThat(anew.value()).isCloseTo(whole.value(), within(0.02));
    }
}
