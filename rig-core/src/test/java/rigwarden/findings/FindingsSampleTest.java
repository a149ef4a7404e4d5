package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** A few nights of {@link FindingsCampaign}: too few to prove coverage, enough to see it break. */
class FindingsSampleTest {
    private static final int RIGS = 2;
    /** A rig whose calibration leaves so little that most effects are beyond it. */
    private static final long CALIBRATED = 3;

    @Test
    @Mark(of = "capacity", standing = Standing.WORKED, source = "model truth: charge through the cell's terminals in that run")
    @Mark(of = "resistance", standing = Standing.WORKED, source = "model truth: true volts and amperes around the opening")
    @Mark(of = "heat", standing = Standing.WORKED, source = "model truth: temperature of the node at the end of the step")
    void on_a_few_rigs_the_truth_lies_inside_nearly_always() {
        List<Coverage.Line> lines = CampaignNights.stated(CampaignNights.LOOKED_AT, RIGS).lines();

        lines.forEach(line -> System.out.println(line.print()));
        assertThat(lines).extracting(Coverage.Line::what).hasSizeGreaterThanOrEqualTo(13);
        assertThat(lines).allSatisfy(line -> assertThat(line.honest()).as(line.print()).isTrue());
    }

    @Test
    @Mark(of = "joint", standing = Standing.WORKED, source = "model truth: one joint of eight cells with 0.1 mΩ more")
    void a_bad_joint_is_found_and_a_sound_pack_has_none() {
        assertThat(List.of(CampaignNights.badJoint(1), CampaignNights.badJoint(2))).containsOnly(CampaignNights.Said.RIGHT);
        assertThat(CampaignNights.soundPack(3)).isEqualTo(CampaignNights.Said.RIGHT);
    }

    @Test
    void a_cold_bench_does_not_make_a_good_cell_not_met() {
        assertThat(CampaignNights.coldNotMet(1)).isFalse();
    }

    @Test
    void an_effect_that_nobody_told_is_named_where_it_is_beyond_what_is_stated() {
        List<UntoldEffects.Row> rows = UntoldEffects.ALL.stream().filter(untold -> untold.share() > 0).map(untold -> UntoldEffects.row(untold, CALIBRATED, 1)).toList();

        rows.forEach(row -> System.out.println(row.print()));
        assertThat(rows).allSatisfy(row -> assertThat(row.holds()).as(row.print()).isTrue());
        assertThat(rows).filteredOn(row -> row.beyond() > 0).as("effects beyond U that must be named").hasSizeGreaterThanOrEqualTo(7);
        assertThat(UntoldEffects.row(UntoldEffects.SOUND, CALIBRATED, 1).beyond()).as("a calibrated rig with nothing wrong").isZero();
        assertThat(UntoldEffects.falselyNamed(CALIBRATED, 1)).isZero();
    }
}
