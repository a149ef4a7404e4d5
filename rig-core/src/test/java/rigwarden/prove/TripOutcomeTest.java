package rigwarden.prove;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.TestRigs;
import rigwarden.warden.Rule;
import rigwarden.warden.Rules;
import rigwarden.warden.Severity;
import rigwarden.warden.Trip;

/** What a trip in a proof tells a person to look at. */
class TripOutcomeTest {
    private static final Rig PACK = TestRigs.eightCells();

    private static List<Rule> tripping() {
        return Stream.of(Rules.of(PACK), Rules.of(TestRigs.oneCell()), Rules.ofWishes()).flatMap(List::stream)
                .filter(rule -> rule.severity() != Severity.WARNS).distinct().toList();
    }

    private static Outcome outcome(int number) {
        Rule rule = tripping().stream().filter(r -> r.number() == number).findFirst().orElseThrow();
        return TripOutcome.of(new Trip(rule, PACK.channel(Role.CURRENT), 1, 2, 0, 1), "charger relay");
    }

    @Test
    void every_rule_that_can_trip_says_what_to_look_at_and_none_says_two_things() {
        Set<Integer> rules = tripping().stream().map(Rule::number).collect(Collectors.toSet());
        List<Integer> named = LookAt.ALL.stream().flatMap(look -> look.rules().stream()).toList();

        assertThat(named).doesNotHaveDuplicates().containsExactlyInAnyOrderElementsOf(rules);
    }

    @Test
    void a_trip_belongs_to_the_part_of_the_check_that_it_speaks_of() {
        assertThat(outcome(44)).matches(o -> o.kind().equals("heartbeat")).extracting(Outcome::words).asString().contains("a dead computer would hold", "rule 44");
        assertThat(outcome(17).kind()).isEqualTo("no load");
        assertThat(outcome(6).kind()).isEqualTo("joint");
        assertThat(outcome(57)).matches(o -> o.kind().equals("stop charger relay")).extracting(Outcome::words).asString().contains("each bolt, plug and contact");
    }
}
