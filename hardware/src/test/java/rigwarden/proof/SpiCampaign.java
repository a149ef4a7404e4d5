package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rigwarden.campaign.Campaign;
import rigwarden.campaign.Outcome;
import rigwarden.campaign.Report;
import rigwarden.campaign.Scene;
import rigwarden.program.Program;
import rigwarden.program.Step;

/**
 * The fault campaign on the bench on SPI, over a night of half an hour with the currents of the reference night. Not in the
 * default run: {@code -Dtest=SpiCampaign -Drigwarden.faults=N}.
 */
class SpiCampaign {
    private static final int CASES = Integer.getInteger("rigwarden.faults", 200);
    private static final long SECOND = 1_000_000_000L;
    private static final Program HALF_AN_HOUR = new Program("half an hour", false, List.of(
            new Step.HeatRun(1, 52.5, 2.50, 600 * SECOND),
            new Step.Rest(60 * SECOND, 120 * SECOND),
            new Step.Pulse(0, 5, 60 * SECOND, 21, 900 * SECOND)));

    @Test
    void nothing_unsafe_happens_that_an_order_could_have_prevented() {
        Campaign campaign = new Campaign(List.of(new Scene("one-cell-spi", SpiBench.RIG, HALF_AN_HOUR)), 2, 2);

        List<Outcome> outcomes = campaign.run(campaign.nights(), 1, IntStream.rangeClosed(1, CASES).boxed().toList(), _ -> { });

        Report.of(outcomes, campaign.stopped(outcomes)).lines().forEach(System.out::println);
        assertThat(outcomes).filteredOn(Outcome::unsafe).extracting(Outcome::words).isEmpty();
        assertThat(outcomes).filteredOn(o -> o.thrown().isPresent()).extracting(Outcome::words).isEmpty();
    }
}
