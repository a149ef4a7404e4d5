package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.findings.trace.Row;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.program.Ended;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;

/** Where the battery's own protection opens, as far as the voltmeters can tell. */
class ProtectionProofTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.eightCells();

    @Test
    @Mark(of = "protection", standing = Standing.WORKED, source = "3.650 V and 1.2 s of delay at 1 and 10 mV/s: 3.6512 and 3.6620 V")
    void two_rates_tell_a_protections_threshold_from_its_delay() {
        List<ProtectionProof.Bracket> both = List.of(new ProtectionProof.Bracket(3.6512, 3.64, 1e-3, 5, 1, 4, 0, 0),
                new ProtectionProof.Bracket(3.6620, 3.64, 10e-3, 20, 2, 4, 0, 0));

        Answer.Value threshold = (Answer.Value) ProtectionProof.threshold(both).orElseThrow();

        assertThat(threshold.value()).isCloseTo(3.650, within(1e-6));
        assertThat(threshold.budget().expanded()).isBetween(0.0001, 0.005);
        assertThat(ProtectionProof.threshold(both.subList(0, 1))).as("one rate tells no threshold").isEmpty();
    }

    @Test
    void a_protection_that_opened_is_bracketed_and_one_that_did_not_is_a_finding() {
        List<Finding> opened = WrittenRun.findings(CELL, new WrittenRun(CELL, 0.1)
                .step(1, "prove_protection", 100, Ended.PROTECTION, _ -> 5, _ -> 22, t -> 3.60 + t * 0.5e-3)
                .step(2, "rest", 30, Ended.TIME, _ -> 0, _ -> 22, _ -> 3.62).rows());
        List<Finding> never = WrittenRun.findings(CELL, new WrittenRun(CELL, 0.1)
                .step(1, "prove_protection", 200, Ended.CEILING, _ -> 5, _ -> 22, t -> 3.60 + t * 0.5e-3).rows());

        assertThat(opened).filteredOn(f -> f.kind() == Kind.PROTECTION).singleElement().satisfies(f ->
                assertThat(f.answer()).isInstanceOfSatisfying(Answer.Between.class, b -> {
                    double voltmeter = CELL.channel(Role.CELL_VOLTS).uncertainty(3.65);
                    assertThat(voltmeter).as("of an uncalibrated converter").isBetween(0.003, 0.02);
                    assertThat(b.low()).isCloseTo(3.62 - voltmeter, within(0.001));
                    assertThat(b.high()).isCloseTo(3.65 + voltmeter, within(0.001));
                }));
        assertThat(never).filteredOn(f -> f.kind() == Kind.PROTECTION).singleElement().satisfies(f ->
                assertThat(f.answer()).isInstanceOfSatisfying(Answer.Named.class, n -> assertThat(n.who()).isEqualTo("not opened")));
    }

    @Test
    @Mark(of = "protection", standing = Standing.WORKED, source = "1 and 10 mV/s weigh the readings by 10/9 and -1/9: 3 mV of one voltmeter stay 3 mV, of two 3.7 mV")
    void what_the_voltmeter_errs_by_is_in_the_threshold() {
        ProtectionProof.Bracket slow = new ProtectionProof.Bracket(3.6512, 3.64, 1e-3, 5, 1, 4, 3e-3, 0.9e-3);
        ProtectionProof.Bracket quick = new ProtectionProof.Bracket(3.6620, 3.64, 10e-3, 20, 2, 4, 3e-3, 0.9e-3);
        ProtectionProof.Bracket other = new ProtectionProof.Bracket(3.6620, 3.64, 10e-3, 20, 2, 5, 3e-3, 0.9e-3);

        assertThat(term(List.of(slow, quick), "voltage taps")).isCloseTo(1.5e-3, within(1e-9));
        assertThat(term(List.of(slow, other), "voltage taps")).isCloseTo(1.5e-3 * 11 / 9, within(1e-9));
        assertThat(term(List.of(slow, quick), "noise of the taps")).isCloseTo(0.9e-3 * Math.sqrt(101) / 9, within(1e-9));
    }

    private static double term(List<ProtectionProof.Bracket> both, String name) {
        Answer.Value threshold = (Answer.Value) ProtectionProof.threshold(both).orElseThrow();
        return threshold.budget().terms().stream().filter(t -> t.name().equals(name)).mapToDouble(Budget.Term::standard).findFirst().orElseThrow();
    }

    @Test
    void where_a_cell_was_not_read_it_may_have_been_the_highest() {
        List<Row> rows = new WrittenRun(PACK, 0.1)
                .step(1, "prove_protection", 100, Ended.PROTECTION, _ -> 5, _ -> 22, t -> 3.60 + t * 0.5e-3, t -> 3.55 + t * 0.5e-3)
                .step(2, "rest", 30, Ended.TIME, _ -> 0, _ -> 22, _ -> 3.60).rows();

        List<Finding> found = WrittenRun.findings(PACK, WrittenRun.without(rows, PACK.channels(Role.CELL_VOLTS).getFirst()));

        assertThat(found).filteredOn(f -> f.kind() == Kind.PROTECTION).singleElement().satisfies(f ->
                assertThat(f.answer()).isInstanceOfSatisfying(Answer.Refused.class, r -> assertThat(r.because()).contains("not every cell was read")));
    }
}
