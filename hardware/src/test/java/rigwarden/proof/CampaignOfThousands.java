package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rigwarden.campaign.Scene;
import rigwarden.campaign.Campaign;
import rigwarden.campaign.Night;
import rigwarden.campaign.Outcome;
import rigwarden.campaign.Report;

/** The fault campaign in earnest, not part of the default run: 10,000 cases unless {@code -Drigwarden.faults} says otherwise. */
class CampaignOfThousands {
    private static final int CASES = Integer.getInteger("rigwarden.faults", 10_000);
    private static final long SEED = Long.getLong("rigwarden.seed", 1);
    private static final int SPECIMENS = 2;
    private static final int WITHOUT = 40;
    private static final double MOST_UNSAFE = 0.001;

    @Test
    void of_all_cases_at_most_one_in_a_thousand_is_unsafe_and_each_is_printed() {
        Campaign campaign = new Campaign(List.of(
                new Scene("one-cell", Bench.rig(), Bench.night()),
                new Scene("eight-cells", Bench.packRig(), Bench.packNight())),
                SPECIMENS, Runtime.getRuntime().availableProcessors());
        List<Night> nights = campaign.nights();

        List<Outcome> outcomes = campaign.run(nights, SEED, IntStream.rangeClosed(1, CASES).boxed().toList(), _ -> { });

        Report.of(outcomes).lines().forEach(System.out::println);
        LeaveOneOut left = LeaveOneOut.of(campaign, outcomes, WITHOUT);
        left.lines().forEach(System.out::println);
        assertThat(outcomes.stream().filter(Outcome::unsafe).count()).isLessThanOrEqualTo(Math.round(MOST_UNSAFE * CASES));
        assertThat(left.worst()).as("every rule that acted is missed").doesNotContainValue(LeaveOneOut.Without.SAME);
        assertThat(outcomes).filteredOn(o -> o.thrown().isPresent()).extracting(Outcome::words).isEmpty();
    }
}
