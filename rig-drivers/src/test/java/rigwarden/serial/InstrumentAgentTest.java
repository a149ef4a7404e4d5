package rigwarden.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Commands;
import rigwarden.rig.Instrument;
import rigwarden.warden.Failure;
import rigwarden.warden.Setpoint;

class InstrumentAgentTest {
    private static final long STEP = 100_000_000;
    private static final Instrument SOURCE = new Instrument("tty", 115_200, 60, 32, 0, 5 * STEP, 0.005, 0.005, Commands.SOURCE);
    private static final Order ON = new Order.On(new Setpoint(10.25, 28.8));

    private final ScriptedLine line = new ScriptedLine();
    private InstrumentAgent agent;
    private long now;

    @BeforeEach
    void make() {
        agent = new InstrumentAgent(SOURCE, 29.2, line, AgentState.at(0));
    }

    private void steps(int count) {
        for (int i = 0; i < count; i++) {
            agent.step(now);
            now += STEP;
        }
    }

    @Test
    void theOwnLimitIsSetAndReadBackBeforeTheOutputIsSwitchedOn() {
        agent.order(ON);
        steps(8);

        assertThat(line.sent).startsWith("OUTP 0", "SOUR:VOLT:PROT 29.200", "SOUR:VOLT:PROT?", "SYST:ERR?",
                "SOUR:VOLT 28.800;:SOUR:CURR 10.250;:OUTP 1", "SYST:ERR?", "MEAS:VOLT?;CURR?;:OUTP?;:SYST:ERR?");
    }

    @Test
    void ordersAreSaidAsTheRigFileSaysThem() {
        Commands said = new Commands("", "SOURce:CURRent {amps};:SOURce:VOLTage {volts}", "OUTPut:STATe ON", "OUTPut:STATe OFF",
                "SOURce:VOLTage:PROTection {limit}", "SOURce:VOLTage:PROTection?", "MEAS:VOLT?;CURR?;:OUTP?;:SYST:ERR?", "SYST:ERR?");
        agent = new InstrumentAgent(with(said), 29.2, line, AgentState.at(0));
        line.answers.put("SOURce:VOLTage:PROTection?", "29.200");
        agent.order(ON);
        steps(8);

        assertThat(line.sent).startsWith("OUTPut:STATe OFF", "SOURce:VOLTage:PROTection 29.200",
                "SOURce:VOLTage:PROTection?", "SYST:ERR?", "SOURce:CURRent 10.250;:SOURce:VOLTage 28.800;:OUTPut:STATe ON");
    }

    @Test
    void anInstrumentWithTheNameOfTheRigFileIsUsedAndAnyOtherIsNeverSwitchedOn() {
        Commands named = new Commands("HUTWORKS,S60,", Commands.SOURCE.set(), Commands.SOURCE.on(), Commands.SOURCE.off(),
                Commands.SOURCE.limit(), Commands.SOURCE.askLimit(), Commands.SOURCE.poll(),
                Commands.SOURCE.askError());
        for (String answer : List.of("HUTWORKS,S60,0,0", "HUTWORKS,S30,0,0", "HUT")) {
            line.sent.clear();
            line.answers.put("*IDN?", answer);
            agent = new InstrumentAgent(with(named), 29.2, line, AgentState.at(now));
            agent.order(ON);
            steps(40);

            assertThat(line.sent.stream().anyMatch(text -> text.contains("OUTP 1"))).as(answer)
                    .isEqualTo(answer.startsWith("HUTWORKS,S60,"));
        }
    }

    private static Instrument with(Commands commands) {
        return new Instrument("tty", 115_200, 60, 32, 0, 5 * STEP, 0.005, 0.005, commands);
    }

    @Test
    void anOrderThatNobodyRenewsBecomesOff() {
        agent.order(ON, now + 10 * STEP);
        steps(10);
        assertThat(line.sent).anyMatch(text -> text.endsWith("OUTP 1"));
        line.sent.clear();

        steps(5);

        assertThat(line.sent).contains("OUTP 0");
    }

    @Test
    void aLimitThatReadsBackOtherwiseNeverLetsTheOutputOn() {
        line.answering = false;
        agent.order(ON);
        for (int i = 0; i < 100; i++) {
            if (!line.sent.isEmpty() && line.sent.getLast().equals("SOUR:VOLT:PROT?") && line.waiting.isEmpty()) {
                line.put("32.0\n");
            }
            steps(1);
        }

        assertThat(line.sent).noneMatch(text -> text.contains("OUTP 1"));
        assertThat(agent.heard()).isInstanceOf(Heard.Silent.class);
    }

    @Test
    void anAnswerIsPublishedWithTheTimeOfItsQuestionInEveryChunkSize() {
        line.poll = "28.5;10.25;0;0,\"No error\"\n";
        for (int piece = 1; piece <= line.poll.length() + 1; piece++) {
            line.piece = piece;
            long asked = now;
            agent = new InstrumentAgent(SOURCE, 29.2, line, ready(now));
            for (int i = 0; i < 60; i++) {
                agent.step(now);
                now += 1_000_000;
            }

            assertThat(agent.heard()).as("pieces of " + piece)
                    .isEqualTo(new Heard.Answer(28.5, 10.25, false, asked));
            line.sent.clear();
        }
    }

    private static AgentState ready(long nanos) {
        return new AgentState(AgentState.Phase.READY, nanos, nanos, nanos, true, true, Order.OFF, false, Order.OFF, false, false, false, 0,
                new Heard.Silent(Failure.NOT_READ, nanos));
    }

    @Test
    void setPointsAreSentOnChangeOnly() {
        agent.order(ON);
        steps(20);
        agent.order(new Order.On(new Setpoint(10.25, 28.8)));
        steps(3);
        agent.order(new Order.On(new Setpoint(5, 28.8)));
        steps(3);

        assertThat(line.sent.stream().filter(text -> text.startsWith("SOUR:VOLT 2")))
                .containsExactly("SOUR:VOLT 28.800;:SOUR:CURR 10.250;:OUTP 1", "SOUR:VOLT 28.800;:SOUR:CURR 5.000");
    }

    @Test
    void offOvertakesAnOrderThatFollowsIt() {
        agent.order(ON);
        steps(10);
        line.sent.clear();
        agent.order(Order.OFF);
        agent.order(ON);
        steps(1);

        assertThat(line.sent).startsWith("OUTP 0", "SYST:ERR?", "SOUR:VOLT:PROT 29.200", "SOUR:VOLT:PROT?", "SYST:ERR?",
                "SOUR:VOLT 28.800;:SOUR:CURR 10.250;:OUTP 1");
    }

    @Test
    void anInstrumentThatWasWithoutPowerBehindAnOpenPortIsLimitedBeforeItIsSwitchedOnAgain() {
        agent.order(ON);
        steps(10);
        line.answering = false;
        steps(20);
        agent.order(Order.OFF);
        line.limit = 32;
        line.poll = "3.3;0;0;0,\"No error\"\n";
        line.answering = true;
        steps(20);
        line.sent.clear();
        agent.order(ON);
        steps(1);

        assertThat(line.opened).isEqualTo(1);
        assertThat(line.sent).containsSubsequence("SOUR:VOLT:PROT 29.200", "SOUR:VOLT:PROT?", "SOUR:VOLT 28.800;:SOUR:CURR 10.250;:OUTP 1");
        assertThat(line.limit).isEqualTo(29.2);
    }

    @Test
    void afterAnOffTheLimitIsReadBackOnceMoreBeforeTheNextOn() {
        agent.order(ON);
        steps(10);
        agent.order(Order.OFF);
        steps(10);
        line.answers.put("SOUR:VOLT:PROT?", "32.000");
        line.sent.clear();
        agent.order(ON);
        steps(30);

        assertThat(line.sent).noneMatch(text -> text.contains("OUTP 1"));
        assertThat(agent.heard()).isInstanceOf(Heard.Silent.class);
    }

    @Test
    void offIsSentWhileAnAnswerIsAwaited() {
        agent.order(ON);
        steps(10);
        line.answering = false;
        steps(5);
        line.sent.clear();
        agent.order(Order.OFF);
        steps(1);

        assertThat(line.sent).startsWith("OUTP 0");
    }

    @Test
    void aLateAnswerIsThrownAwayAndNotMatchedToTheNextQuestion() {
        steps(10);
        line.answering = false;
        for (int i = 0; i < 20 && !(agent.heard() instanceof Heard.Silent); i++) {
            steps(1);
        }
        assertThat(agent.heard()).isInstanceOf(Heard.Silent.class);
        line.put("1.0;1.0;0;0,\"No error\"\n");
        steps(1);

        assertThat(agent.heard()).isInstanceOf(Heard.Silent.class);
        assertThat(line.waiting).isEmpty();
        line.answering = true;
        steps(10);
        assertThat(agent.heard()).isInstanceOfSatisfying(Heard.Answer.class,
                answer -> assertThat(answer.volts()).isEqualTo(28.5));
    }

    @Test
    void twoLinesForOneQuestionAreNonsense() {
        line.poll = "1;1;0;0,\"No error\"\n2;2;0;0,\"No error\"\n";
        steps(6);

        assertThat(agent.heard()).isInstanceOfSatisfying(Heard.Silent.class,
                silent -> assertThat(silent.why()).isEqualTo(Failure.NONSENSE));
    }

    @Test
    void anErrorInAPollHasTheSetPointSentAgainAndTwoInARowAreAFailure() {
        agent.order(ON);
        steps(10);
        line.sent.clear();
        line.poll = "28.5;10.25;1;-222,\"Data out of range\"\n";
        steps(5);
        Heard once = agent.heard();
        steps(5);

        assertThat(line.sent).contains("SOUR:VOLT 28.800;:SOUR:CURR 10.250");
        assertThat(once).isInstanceOf(Heard.Answer.class);
        assertThat(agent.heard()).isInstanceOfSatisfying(Heard.Silent.class,
                silent -> assertThat(silent.why()).isEqualTo(Failure.NONSENSE));
    }

    @Test
    void theQueueOfErrorsIsEmptiedAfterASettingAndSaidInTheInstrumentsOwnWords() {
        steps(10);
        line.errors.addAll(List.of("-222,\"Data out of range\"", "-113,\"Undefined header; CURR\""));
        agent.order(ON);
        steps(1);

        assertThat(agent.said()).hasValueSatisfying(said -> assertThat(said.words())
                .isEqualTo("-222 Data out of range; -113 Undefined header; CURR"));
        assertThat(agent.said()).isEmpty();
        assertThat(line.errors).isEmpty();
        assertThat(agent.heard()).isInstanceOf(Heard.Silent.class);
    }

    @Test
    void aLimitThatTheInstrumentComplainsOfNeverLetsTheOutputOn() {
        agent.order(ON);
        for (int i = 0; i < 60; i++) {
            if (line.errors.isEmpty()) {
                line.errors.add("-222,\"Data out of range\"");
            }
            steps(1);
        }

        assertThat(line.sent).contains("SOUR:VOLT:PROT 29.200").noneMatch(text -> text.contains("OUTP 1"));
    }

    @Test
    void anOrderToSwitchOnThatWasLostIsSaidOnceMoreAndNoThirdTime() {
        steps(10);
        line.poll = "3.3;0;0;0,\"No error\"\n";
        line.upset = "OUTP 1";
        for (int i = 0; i < 100; i++) {
            agent.order(ON);
            steps(1);
        }

        assertThat(line.sent.stream().filter(text -> text.endsWith("OUTP 1"))).hasSize(2);
    }

    @Test
    void anInstrumentThatWentOffByItselfStaysOff() {
        agent.order(ON);
        steps(10);
        line.sent.clear();
        line.poll = "3.3;0;0;-240,\"Hardware error\"\n";
        steps(40);

        assertThat(line.sent).noneMatch(text -> text.contains("OUTP 1"));
    }

    @Test
    void aSourceThatSaysOnAlthoughOrderedOffIsToldAgain() {
        steps(6);
        line.sent.clear();
        steps(10);

        assertThat(line.sent).contains("OUTP 0");
    }

    @Test
    void whatSaysOnAlthoughOrderedOffIsAskedAgainAtOnceAndThenAtItsPace() {
        steps(6);
        line.sent.clear();
        steps(10);

        assertThat(line.sent.stream().filter(text -> text.startsWith("MEAS"))).hasSize(2);
        line.poll = line.poll.replace(";1;", ";0;");
        steps(10);
        line.poll = line.poll.replace(";0;0", ";1;0");
        line.sent.clear();
        steps(5);
        assertThat(line.sent.stream().filter(text -> text.startsWith("MEAS"))).hasSize(2);
    }

    @Test
    void aLostPortIsReopenedAfterASecondAndStartsWithOffAndLimits() {
        steps(10);
        line.there = false;
        steps(10);
        int openedWhileGone = line.opened;
        assertThat(agent.heard()).isInstanceOf(Heard.Silent.class);
        line.sent.clear();
        line.there = true;
        steps(20);

        assertThat(openedWhileGone).isLessThanOrEqualTo(2);
        assertThat(line.sent).startsWith("OUTP 0", "SOUR:VOLT:PROT 29.200", "SOUR:VOLT:PROT?");
        assertThat(agent.heard()).isInstanceOf(Heard.Answer.class);
    }

    @Test
    void aSetPointBeyondTheRatingBecomesOff() {
        assertThat(agent.order(new Order.On(new Setpoint(61, 28)))).isFalse();
        steps(10);

        assertThat(line.sent).noneMatch(text -> text.contains("OUTP 1"));
    }

    @Test
    void aCopyGoesOnWhereTheOriginalStood() {
        agent.order(ON);
        steps(10);
        ScriptedLine other = new ScriptedLine();
        InstrumentAgent copy = new InstrumentAgent(SOURCE, 29.2, other, agent.state());
        for (int i = 0; i < 10; i++) {
            copy.step(now + i * STEP);
        }

        assertThat(other.sent).isNotEmpty().allMatch(text -> text.startsWith("MEAS"));
    }
}
