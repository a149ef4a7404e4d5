package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rigwarden.campaign.Campaign;
import rigwarden.campaign.Outcome;
import rigwarden.campaign.Scene;
import rigwarden.proof.LeaveOneOut.Without;
import rigwarden.prove.Stops;

/** Cases of the fault campaign in the programme by which one way to stop is opened alone. */
class ProofCasesTest {
    private static final Scene PROOF = new Scene("one-cell, its proof", Bench.rig(), Stops.programme(Bench.rig()));

    @Test
    void without_the_rules_that_judge_a_proof_a_welded_relay_and_a_welded_contactor_pass_it() {
        Campaign campaign = new Campaign(List.of(PROOF), 1, 1);
        List<Outcome> outcomes = CampaignTest.written(campaign, campaign.nights().getFirst(), "one-cell-proof.toml");

        LeaveOneOut left = LeaveOneOut.of(campaign, outcomes, 1);
        left.lines().forEach(System.out::println);
        assertThat(outcomes).noneMatch(Outcome::unsafe);
        assertThat(left.worst()).isEqualTo(Map.of(39, Without.UNNOTICED, 40, Without.LATER));
    }
}
