package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rigwarden.campaign.Scene;
import rigwarden.campaign.Campaign;
import rigwarden.campaign.Night;
import rigwarden.campaign.Outcome;
import rigwarden.campaign.Report;
import rigwarden.warden.Rules;

/** The fault campaign in earnest, not part of the default run: 10,000 cases unless {@code -Drigwarden.faults} says otherwise. */
class CampaignOfThousands {
    private static final int CASES = Integer.getInteger("rigwarden.faults", 10_000);
    private static final long SEED = Long.getLong("rigwarden.seed", 1);
    private static final int SPECIMENS = 2;
    private static final int WITHOUT = 40;
    private static final double MOST_UNSAFE = 0.001;
    /** A reading is old only where the computer stood still, which rule 54 sees in the same scan, and names better. */
    private static final Set<Integer> NAMED_BETTER = Set.of(32);
    /** Those of which the kept cases of {@link CampaignTest} and {@link ProofCasesTest} show what is missed without them. */
    private static final Set<Integer> WRITTEN = Set.of(3, 9, 10, 20, 22, 29, 36, 39, 40, 55, 56);

    @Test
    void of_all_cases_at_most_one_in_a_thousand_is_unsafe_and_each_is_printed() {
        Campaign campaign = new Campaign(List.of(
                new Scene("one-cell", Bench.rig(), Bench.night()),
                new Scene("eight-cells", Bench.packRig(), Bench.packNight())),
                SPECIMENS, Runtime.getRuntime().availableProcessors());
        List<Night> nights = campaign.nights();

        List<Outcome> outcomes = campaign.run(nights, SEED, IntStream.rangeClosed(1, CASES).boxed().toList(), _ -> { });

        List<Outcome> stopped = campaign.stopped(outcomes);
        Report.of(outcomes, stopped).lines().forEach(System.out::println);
        LeaveOneOut left = LeaveOneOut.of(campaign, outcomes, WITHOUT);
        left.lines().forEach(System.out::println);
        assertThat(outcomes.stream().filter(Outcome::unsafe).count()).isLessThanOrEqualTo(Math.round(MOST_UNSAFE * CASES));
        assertThat(stopped).as("what no order prevents, with STOP pressed in the fault's own scan").noneMatch(o -> o.harms().isEmpty());
        Set<Integer> named = new TreeSet<>(left.worst().keySet());
        named.removeAll(left.missed());
        named.removeAll(WRITTEN);
        assertThat(named).as("rules that acted and without which another acts as soon").isSubsetOf(NAMED_BETTER);
        Set<Integer> idle = new TreeSet<>();
        nights.forEach(night -> Rules.of(night.scene().rig()).forEach(rule -> idle.add(rule.number())));
        idle.removeAll(left.worst().keySet());
        assertThat(idle).as("rules that no drawn case calls").isSubsetOf(WRITTEN);
        assertThat(outcomes).filteredOn(o -> o.thrown().isPresent()).extracting(Outcome::words).isEmpty();
    }
}
