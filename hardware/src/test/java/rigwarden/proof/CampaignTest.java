package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.campaign.Scene;
import rigwarden.campaign.Campaign;
import rigwarden.campaign.Case;
import rigwarden.campaign.Harm;
import rigwarden.campaign.Injection;
import rigwarden.campaign.Night;
import rigwarden.campaign.Origin;
import rigwarden.campaign.Outcome;
import rigwarden.campaign.Outcome.Noticed;
import rigwarden.campaign.Report;
import rigwarden.campaign.WrittenCases;
import rigwarden.rigfile.CaseFile;
import rigwarden.rigfile.FaultWords;
import rigwarden.rigfile.Read;
import rigwarden.proof.LeaveOneOut.Without;
import rigwarden.rigfile.WrittenCase;

/** A sample of the fault campaign on both reference rigs, and the written cases; ten thousand are in {@link CampaignOfThousands}. */
class CampaignTest {
    private static final int CASES = 300;
    private static final long SEED = 1;
    private static final Scene ONE = new Scene("one-cell", Bench.rig(), Bench.night());
    private static final Scene EIGHT = new Scene("eight-cells", Bench.packRig(), Bench.packNight());
    private static final Campaign CAMPAIGN = new Campaign(List.of(ONE, EIGHT), 1, Runtime.getRuntime().availableProcessors());
    private static List<Night> nights;

    @BeforeAll
    static void rehearse_both_nights_without_a_fault() {
        nights = CAMPAIGN.nights();
    }

    private static List<Integer> upTo(int cases) {
        return IntStream.rangeClosed(1, cases).boxed().toList();
    }

    private static List<Outcome> written(int scene, String file) {
        return written(CAMPAIGN, nights.get(scene), file);
    }

    /** Runs the cases of a kept file. */
    static List<Outcome> written(Campaign campaign, Night night, String file) {
        return written(campaign, night, Path.of("cases", file));
    }

    private static List<Outcome> written(Campaign campaign, Night night, Path file) {
        Scene of = night.scene();
        Read<List<WrittenCase>> read = CaseFile.read(file, WrittenCases.words(of), of.program().steps().size());
        assertThat(read).isInstanceOf(Read.Sound.class);
        return campaign.run(List.of(night), ((Read.Sound<List<WrittenCase>>) read).value());
    }

    @Test
    void in_a_sample_of_cases_nothing_unsafe_happens_that_an_order_could_have_prevented() {
        List<Outcome> outcomes = CAMPAIGN.run(nights, SEED, upTo(CASES), _ -> { });

        Report.of(outcomes, CAMPAIGN.stopped(outcomes)).lines().forEach(System.out::println);
        assertThat(outcomes).hasSize(CASES);
        assertThat(outcomes).filteredOn(Outcome::unsafe).extracting(Outcome::words).isEmpty();
        assertThat(outcomes).filteredOn(o -> o.thrown().isPresent()).extracting(Outcome::words).isEmpty();
        LeaveOneOut left = LeaveOneOut.of(CAMPAIGN, outcomes, 2);
        left.lines().forEach(System.out::println);
        assertThat(left.missed()).as("rules without which a case of this sample is unsafe, not tripped or tripped later").hasSizeGreaterThan(20);
        assertThat(outcomes).filteredOn(o -> o.noticed() == Noticed.TRIPPED).as("faults that matter are among them").hasSizeGreaterThan(CASES / 3);
    }

    @Test
    void half_of_the_cases_begin_at_a_turn_and_sizes_lie_on_both_sides_of_the_limit() {
        List<Case> cases = upTo(2000).stream().map(n -> Campaign.draw(nights, SEED, n)).toList();

        assertThat(share(cases, c -> c.night().turnsNear(c.strikes().getLast().scan(), 3))).isBetween(0.46, 0.6);
        assertThat(share(cases, c -> !c.single())).isBetween(0.26, 0.34);
        assertThat(share(cases, c -> c.endScan() - c.strikes().getFirst().scan() > 6000)).isBetween(0.01, 0.03);
        for (Injection.Band band : Injection.Band.values()) {
            assertThat(share(cases, c -> c.active().band() == band)).as("%s", band).isGreaterThan(0.1);
        }
        for (Origin origin : Origin.values()) {
            assertThat(share(cases, c -> c.active().kind().origin() == origin)).as("%s", origin).isGreaterThan(0.05);
        }
        assertThat(cases.stream().map(c -> c.active().kind().name()).distinct()).as("every kind of either scene")
                .containsAll(WrittenCases.words(ONE).stream().map(FaultWords::name).toList())
                .containsAll(WrittenCases.words(EIGHT).stream().map(FaultWords::name).toList());
    }

    private static double share(List<Case> cases, Predicate<Case> which) {
        return cases.stream().filter(which).count() / (double) cases.size();
    }

    @Test
    void a_case_ends_the_same_whatever_runs_beside_it() {
        List<Outcome> together = CAMPAIGN.run(nights, SEED, upTo(24), _ -> { });
        List<Outcome> alone = new Campaign(List.of(), 1, 1).run(nights, SEED, List.of(24, 7, 11), _ -> { });

        assertThat(alone).extracting(Outcome::words)
                .containsExactly(together.get(23).words(), together.get(6).words(), together.get(10).words());
    }

    @Test
    void written_cases_of_one_cell_are_seen_and_stay_safe() {
        List<Outcome> outcomes = written(0, "one-cell.toml");

        assertThat(outcomes).hasSize(3).noneMatch(Outcome::unsafe).noneMatch(o -> o.noticed() == Noticed.UNSEEN);
    }

    @Test
    void without_the_rules_that_are_hardly_ever_drawn_their_written_cases_are_not_tripped_or_later() {
        List<Outcome> outcomes = written(0, "one-cell-slow.toml");

        LeaveOneOut left = LeaveOneOut.of(CAMPAIGN, outcomes, 1);
        left.lines().forEach(System.out::println);
        assertThat(outcomes).noneMatch(Outcome::unsafe);
        assertThat(left.worst()).isEqualTo(Map.of(3, Without.LATER, 9, Without.UNNOTICED, 22, Without.UNNOTICED, 55, Without.UNNOTICED, 56, Without.UNNOTICED));
    }

    @Test
    void without_the_slow_rules_of_the_pack_their_written_cases_are_not_tripped() {
        List<Outcome> outcomes = written(1, "eight-cells-slow.toml");

        LeaveOneOut left = LeaveOneOut.of(CAMPAIGN, outcomes, 1);
        left.lines().forEach(System.out::println);
        assertThat(outcomes).noneMatch(Outcome::unsafe);
        assertThat(left.worst()).isEqualTo(Map.of(10, Without.UNNOTICED, 20, Without.UNNOTICED, 29, Without.UNNOTICED, 36, Without.LATER));
    }

    @Test
    void when_both_ways_off_are_gone_the_judge_calls_it_unsafe_although_the_warden_did_all_it_could() {
        List<Outcome> outcomes = written(1, "eight-cells.toml");

        assertThat(outcomes.getFirst().unsafe()).isFalse();
        assertThat(outcomes.getFirst().rule()).map(rule -> rule.number()).contains(6);
        Outcome both = outcomes.getLast();
        assertThat(both.noticed()).isEqualTo(Noticed.TRIPPED);
        assertThat(both.harms()).extracting(Harm::what).contains(Harm.What.NOT_OFF);
        assertThat(both.unsafe()).isTrue();
    }

    /** The cell is too hot half a minute after its fault, and the joint loosens ten seconds later: STOP then would show nothing. */
    @Test
    void a_fault_that_comes_when_something_is_unsafe_already_is_not_the_one_that_stop_is_pressed_with(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("late.toml"), """
                [[case]]
                name = "a cell shorts inside, then a joint loosens"
                minutes = 10

                [[case.fault]]
                fault = "cell heats"
                place = "cell 5"
                size = 90
                step = 7
                after_s = 1200

                [[case.fault]]
                fault = "joint loosens"
                place = "cell 3 positive"
                size = 2
                step = 7
                after_s = 1240
                """);
        Outcome both = written(CAMPAIGN, nights.get(1), file).getFirst();

        assertThat(both.struck()).isEqualTo(2);
        assertThat(both.beyondOrders()).isTrue();
        Outcome stopped = CAMPAIGN.stopped(List.of(both)).getFirst();
        assertThat(stopped.what().strikes()).containsExactly(both.what().strikes().getFirst());
        assertThat(stopped.harms()).extracting(Harm::what).containsExactly(Harm.What.HOT);
    }

    @Test
    void what_is_said_to_be_beyond_any_order_is_unsafe_with_stop_pressed_in_the_scan_of_the_fault_too() {
        List<Outcome> outcomes = written(1, "eight-cells.toml");

        List<Outcome> stopped = CAMPAIGN.stopped(outcomes);

        Outcome heats = outcomes.get(1);
        assertThat(heats.unsafe()).isFalse();
        assertThat(heats.beyondOrders()).isTrue();
        assertThat(stopped).extracting(o -> o.what().number()).as("neither the safe one nor the one with both ways off gone").containsExactly(heats.what().number());
        assertThat(stopped.getFirst().highestVolts()).as("the cells are without current from the fault on").isGreaterThan(heats.highestVolts() + 0.02);
        assertThat(stopped.getFirst().harms()).extracting(Harm::what).containsExactly(Harm.What.HOT);
        assertThat(stopped.getFirst().harms()).allMatch(Harm::off);
    }
}
