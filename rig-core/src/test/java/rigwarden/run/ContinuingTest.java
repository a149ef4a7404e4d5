package rigwarden.run;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import rigwarden.program.Step;
import rigwarden.run.Answer.Condition;
import rigwarden.run.Continuing.Offered;
import rigwarden.run.LeftOff.Ending;
import rigwarden.warden.Swing;

/** Which of the safety page's conditions for going on is not met, one at a time. */
class ContinuingTest {
    private static final long MINUTE = 60_000_000_000L;
    private static final Map<String, String> VERSIONS = Map.of("rigwarden", "1", "java", "25");
    private static final PickUp PLACE = new PickUp(7, 3, MINUTE, Account.EMPTY, -1, 0, List.of(0.1), 0, 21,
            List.of(new Bracket(3.2, 3.3)), Swing.NONE);
    private static final LeftOff CUT = left(Ending.BROKEN_OFF, Optional.of(new Step.Discharge(1, 21, 2.5)));

    private static LeftOff left(Ending ending, Optional<Step> step) {
        return new LeftOff(7, Optional.empty(), ending, Optional.empty(), "aa", "bb", VERSIONS, false, false, step, false,
                step.map(_ -> PLACE));
    }

    private static LeftOff with(Optional<String> fault, Optional<String> decided, boolean recovers) {
        return new LeftOff(7, fault, Ending.BROKEN_OFF, decided, "aa", "bb", VERSIONS, false, false, CUT.step(), recovers, CUT.place());
    }

    private static LeftOff cleared() {
        return new LeftOff(7, Optional.empty(), Ending.TRIPPED, Optional.empty(), "aa", "bb", VERSIONS, true, false, CUT.step(),
                false, CUT.place());
    }

    private static Offered offered(double outageMinutes) {
        return new Offered("aa", "bb", VERSIONS, new Outage.Known(5, 5 + Math.round(outageMinutes * MINUTE)));
    }

    private static Optional<Condition> unmet(Answer answer) {
        return switch (answer) {
            case Answer.Allowed _ -> Optional.empty();
            case Answer.Unmet unmet -> Optional.of(unmet.condition());
        };
    }

    @Test
    void with_everything_the_same_and_a_short_outage_it_may_go_on_from_there() {
        assertThat(Continuing.answer(CUT, offered(30))).isEqualTo(new Answer.Allowed(PLACE.brokenAt(5)));
        assertThat(unmet(Continuing.answer(cleared(), offered(1)))).as("a trip that was cleared").isEmpty();
    }

    @Test
    void a_trip_that_nobody_cleared_is_not_made_good_by_pulling_the_plug_after_it() {
        LeftOff plug = new LeftOff(7, Optional.empty(), Ending.BROKEN_OFF, Optional.empty(), "aa", "bb", VERSIONS, false, true,
                CUT.step(), false, CUT.place());

        assertThat(unmet(Continuing.answer(plug, offered(1)))).contains(Condition.CAUSE);
    }

    @Test
    void only_a_charge_a_rest_and_a_discharge_go_on_and_none_before_a_recovery() {
        assertThat(Stream.of(new Step.Charge(0, 21, 3.6, 5.25), new Step.Rest(30 * MINUTE, 60 * MINUTE), new Step.Discharge(1, 21, 2.5))
                .map(step -> unmet(Continuing.answer(left(Ending.BROKEN_OFF, Optional.of(step)), offered(1))))).containsOnly(Optional.empty());
        assertThat(Stream.of(new Step.Park(0, 21, 0.4, 3.6), new Step.Pulse(1, 10, MINUTE, 20, MINUTE), new Step.Recover(0, 2.1, 2.8),
                        new Step.ProveStop(0, 5, Step.Element.RELAY))
                .map(step -> unmet(Continuing.answer(left(Ending.BROKEN_OFF, Optional.of(step)), offered(1))))).containsOnly(Optional.of(Condition.STEP));
        assertThat(unmet(Continuing.answer(with(Optional.empty(), Optional.empty(), true), offered(1)))).contains(Condition.STEP);
    }

    @Test
    void of_a_long_hash_the_beginning_is_shown_and_a_short_one_whole() {
        assertThat(otherRig("0123456789abcdef0123456789abcdef")).contains("SHA-256 aa").contains("0123").contains("…")
                .doesNotContain("0123456789abcdef0123456789abcdef");
        assertThat(otherRig("0123456789ab")).as("twelve are shown").contains("0123456789ab,").doesNotContain("…");
        assertThat(otherRig("0123456789abc")).contains("0123456789ab…");
    }

    private static String otherRig(String hash) {
        LeftOff other = new LeftOff(7, Optional.empty(), Ending.BROKEN_OFF, Optional.empty(), hash, "bb", VERSIONS, false, false, CUT.step(), false,
                CUT.place());
        return words(other);
    }

    private static String words(LeftOff left) {
        return ((Answer.Unmet) Continuing.answer(left, offered(1))).words();
    }

    @Test
    void a_refusal_says_how_the_run_ended_and_what_of_its_step_does_not_go_on() {
        Optional<Step> parks = Optional.of(new Step.Park(0, 21, 0.4, 3.6));
        Optional<Step> proves = Optional.of(new Step.ProveProtection(0, 5, 3.69));

        assertThat(words(left(Ending.OVER, CUT.step()))).contains("found it is over;");
        assertThat(words(left(Ending.RUNNING, CUT.step()))).contains("found it is still running;");
        assertThat(words(left(Ending.BROKEN_OFF, parks))).contains("found park;");
        assertThat(words(left(Ending.BROKEN_OFF, proves))).contains("found prove protection;");
        assertThat(words(with(Optional.empty(), Optional.empty(), true))).contains("found discharge, with a recovery of low cells to come;");
    }

    @TestFactory
    Stream<DynamicTest> each_condition_is_named_when_it_is_not_met() {
        return Stream.of(
                row(Condition.FILE, with(Optional.of("a page is torn"), Optional.empty(), false), now -> now),
                row(Condition.ENDING, left(Ending.OVER, CUT.step()), now -> now),
                row(Condition.ENDING, left(Ending.RUNNING, CUT.step()), now -> now),
                row(Condition.UNDECIDED, with(Optional.empty(), Optional.of("abandoned: enough"), false), now -> now),
                row(Condition.RIG, CUT, now -> new Offered("ab", now.programmeHash(), VERSIONS, now.outage())),
                row(Condition.PROGRAMME, CUT, now -> new Offered(now.rigHash(), "ba", VERSIONS, now.outage())),
                row(Condition.SOFTWARE, CUT, now -> new Offered("aa", "bb", Map.of("rigwarden", "2", "java", "25"), now.outage())),
                row(Condition.CAUSE, left(Ending.TRIPPED, CUT.step()), now -> now),
                row(Condition.STEP, left(Ending.BROKEN_OFF, Optional.empty()), now -> now),
                row(Condition.STEP, with(Optional.empty(), Optional.empty(), true), now -> now),
                row(Condition.OUTAGE, CUT, _ -> offered(30.01)),
                row(Condition.OUTAGE, CUT, _ -> offered(-0.01)),
                row(Condition.OUTAGE, CUT, now -> new Offered("aa", "bb", VERSIONS, new Outage.Unknown("the clock was not set"))));
    }

    private static DynamicTest row(Condition condition, LeftOff left, UnaryOperator<Offered> offered) {
        return DynamicTest.dynamicTest(condition.words(), () -> {
            Answer answer = Continuing.answer(left, offered.apply(offered(10)));

            assertThat(unmet(answer)).contains(condition);
            assertThat(((Answer.Unmet) answer).words()).startsWith(condition.words()).contains("found", "allowed");
        });
    }

    @TestFactory
    Stream<DynamicTest> of_the_kinds_of_steps_charge_rest_and_discharge_may_go_on_and_no_other() {
        return Stream.of(new Step.Charge(0, 21, 3.6, 5), new Step.Rest(1, 2), new Step.Discharge(1, 21, 2.5),
                new Step.Park(0, 21, 0.4, 3.6), new Step.HeatRun(1, 50, 2.5, 1), new Step.Pulse(1, 5, 1, 50, 1),
                new Step.Balance(0, 10, 3.6, 1, 1), new Step.ProveProtection(0, 5, 3.69), new Step.Recover(0, 5, 2.5))
                .map(step -> DynamicTest.dynamicTest(step.kind(), () -> {
                    Answer answer = Continuing.answer(left(Ending.BROKEN_OFF, Optional.of(step)), offered(10));

                    boolean may = List.of("charge", "rest", "discharge").contains(step.kind());
                    assertThat(unmet(answer)).isEqualTo(may ? Optional.empty() : Optional.of(Condition.STEP));
                }));
    }
}
