package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.findings.trace.Row;
import rigwarden.program.Ended;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.run.Account;
import rigwarden.warden.Scans;

/** Findings of a rig whose shunt monitor sums nothing. */
class NoAccumulatorTest {
    private static final long HOUR = 3_600_000_000_000L;

    private static Rig rig() {
        return switch (RigFile.read(Path.of("..", "hardware", "rigs", "one-cell-spi.toml"))) {
            case Read.Sound<Rig> sound -> sound.value();
            case Read.Refused<Rig> refused -> throw new AssertionError(refused.refusals());
        };
    }

    @Test
    void the_charge_is_the_hosts_own_sum_and_its_budget_says_what_lies_between_the_readings() {
        Rig rig = rig();
        Tally tally = new Tally(rig);
        tally.scan(new Scans(rig, 0).set(Role.CURRENT, -21).scan(1));
        tally.begun(1, "discharge");
        tally.scan(new Scans(rig, HOUR).set(Role.CURRENT, -21).scan(2));

        tally.ended(Ended.CUT_OFF, false, Account.EMPTY.plus(HOUR, -21, -21 * 3.2, 3.2));

        StepFinding finding = tally.steps().getFirst();
        assertThat(finding.chargeAmpHours().value()).isCloseTo(-21, within(1e-6));
        assertThat(finding.chargeAmpHours().value()).isEqualTo(finding.trapezoidAmpHours());
        assertThat(finding.energyWattHours().value()).isCloseTo(-67.2, within(1e-4));
        assertThat(finding.chargeBudget().terms()).extracting(Budget.Term::name)
                .contains("current between the readings", "amplifier offset").doesNotContain("clock ratio", "chip clock, not learnt");
        // 10 µV on 0.5 mΩ for an hour, and 0.3 % of 21 Ah: rectangular limits
        assertThat(term(finding, "amplifier offset")).isCloseTo(0.02 / Math.sqrt(3), within(1e-9));
        assertThat(term(finding, "current between the readings")).isCloseTo(0.063 / Math.sqrt(3), within(1e-7));
    }

    @Test
    void a_step_that_was_broken_off_without_the_machines_sums_has_the_charge_of_its_rows() {
        Rig rig = rig();
        List<Row> rows = new WrittenRun(rig, 1).step(1, "discharge", 600, Ended.TIME, _ -> -21, _ -> 22, _ -> 3.2).rows().subList(0, 301);

        StepFinding finding = WrittenRun.gathered(rig, rows).steps().getFirst().sums();

        assertThat(finding.by()).isEqualTo(Ended.CUT);
        assertThat(finding.chargeAmpHours().value()).isCloseTo(-21 * 300 / 3600.0, within(1e-3));
    }

    private static double term(StepFinding finding, String name) {
        return finding.chargeBudget().terms().stream().filter(t -> t.name().equals(name)).mapToDouble(Budget.Term::standard)
                .findFirst().orElseThrow();
    }
}
