package rigwarden.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import rigwarden.emulated.EmulatedLine;
import rigwarden.emulated.FarEnd;
import rigwarden.emulated.LineFault;
import rigwarden.emulated.ModbusInstrument;
import rigwarden.emulated.ScpiInstrument;
import rigwarden.emulated.Terminals;
import rigwarden.emulated.VirtualClock;
import rigwarden.loop.Clock;
import rigwarden.rig.Commands;
import rigwarden.rig.Instrument;
import rigwarden.rig.Register;
import rigwarden.rig.RegisterMap;
import rigwarden.rig.Speech;
import rigwarden.warden.Setpoint;

/** The same agent before the same awkward instrument, once in words, once in registers of every type. */
class LineFaultsTest {
    private static final long STEP = 100_000_000;
    private static final long POLL = 5 * STEP;
    private static final double LIMIT = 3.65;
    private static final Order ON = new Order.On(new Setpoint(10.25, 3.5));

    private static final RegisterMap PLAIN = new RegisterMap(7, RegisterMap.Parity.EVEN,
            new Register(4, 0, Register.Type.U16, false, 0.001), new Register(4, 1, Register.Type.S16, false, 0.01),
            new Register(2, 0, Register.Type.BIT, false, 1), Optional.of(new Register(6, 256, Register.Type.U16, false, 0.001)),
            new Register(6, 257, Register.Type.S16, false, 0.01), new Register(5, 0, Register.Type.BIT, false, 1),
            new Register(6, 272, Register.Type.U16, false, 0.001), new Register(3, 272, Register.Type.U16, false, 0.001),
            Optional.of(new RegisterMap.LinkTime(new Register(6, 288, Register.Type.U16, false, 0.1),
                    new Register(3, 288, Register.Type.U16, false, 0.1), 2)));

    private static final RegisterMap WIDE = new RegisterMap(247, RegisterMap.Parity.NONE,
            new Register(3, 4096, Register.Type.F32, true, 1), new Register(3, 4098, Register.Type.S32, false, 0.001),
            new Register(1, 9, Register.Type.BIT, false, 1), Optional.of(new Register(16, 8192, Register.Type.U32, true, 0.001)),
            new Register(16, 8194, Register.Type.F32, false, 1), new Register(5, 9, Register.Type.BIT, false, 1),
            new Register(16, 8200, Register.Type.S32, true, 0.001), new Register(3, 8200, Register.Type.S32, true, 0.001),
            Optional.empty());

    private static final Map<String, Speech> SPEECHES = Map.of("words", Commands.SOURCE, "plain registers", PLAIN, "wide registers", WIDE);

    /** An ideal source on an ideal battery. */
    private static final class Post implements Terminals {
        boolean on;
        double volts;
        double amps;

        @Override
        public void order(boolean newOn, double newVolts, double newAmps) {
            on = newOn;
            volts = newVolts;
            amps = newAmps;
        }

        @Override
        public double volts() {
            return 3.3;
        }

        @Override
        public double amps() {
            return on ? amps : 0;
        }
    }

    private static final class Hand implements Clock {
        long now;

        @Override
        public long nanos() {
            return now;
        }

        @Override
        public void sleepUntil(long nanos) {
            throw new AssertionError("an agent waits on its line only");
        }
    }

    private static final class Place {
        final Post post = new Post();
        final Hand clock = new Hand();
        final FarEnd end;
        final EmulatedLine line;
        final InstrumentAgent agent;

        Place(Speech speech) {
            ScpiInstrument.Ratings ratings = new ScpiInstrument.Ratings(4, 60);
            end = speech instanceof RegisterMap map
                    ? new ModbusInstrument(map, post, ScpiInstrument.Errors.NONE, ratings, clock)
                    : ScpiInstrument.source(post, ScpiInstrument.Errors.NONE, ratings);
            line = new EmulatedLine(end);
            agent = new InstrumentAgent(new Instrument("tty", 115_200, 60, 4, 0, POLL, 0.01, 0.01, speech), LIMIT, line,
                    AgentState.at(0));
        }

        void steps(int count) {
            for (int i = 0; i < count; i++) {
                end.protect();
                agent.step(clock.now);
                clock.now += STEP;
            }
        }

        long age() {
            return agent.heard() instanceof Heard.Answer answer ? clock.now - answer.takenNanos() : Long.MAX_VALUE;
        }
    }

    static Stream<String> speeches() {
        return SPEECHES.keySet().stream().sorted();
    }

    @ParameterizedTest
    @MethodSource("speeches")
    void anOrderReachesTheTerminalsAndTheAnswerComesBack(String speech) {
        Place place = new Place(SPEECHES.get(speech));
        place.agent.order(ON);
        place.steps(12);

        assertThat(place.post.on).isTrue();
        assertThat(place.post.amps).isBetween(10.249, 10.25);
        assertThat(place.post.volts).isBetween(3.499, 3.5);
        assertThat(place.agent.heard()).isInstanceOfSatisfying(Heard.Answer.class, answer -> {
            assertThat(answer.volts()).isBetween(3.299, 3.301);
            assertThat(answer.amps()).isBetween(10.24, 10.26);
            assertThat(answer.on()).isTrue();
        });
    }

    @ParameterizedTest
    @MethodSource("speeches")
    void itsOwnLimitIsInForceBeforeItIsOn(String speech) {
        Place place = new Place(SPEECHES.get(speech));
        place.line.set(LineFault.DEAF_BUT_ALIVE);
        place.agent.order(ON);
        place.steps(60);
        boolean onWhileDeaf = place.post.on;
        place.line.set(LineFault.HEALTHY);
        place.steps(20);

        assertThat(onWhileDeaf).isFalse();
        assertThat(place.post.on).isTrue();
    }

    @ParameterizedTest
    @EnumSource(value = LineFault.class, names = {"SILENT", "GARBLED", "HALF_ANSWER", "UNPLUGGED"})
    void aBadLinkIsSilenceWithinAPollAndAHalfAndOverWhenTheLinkIsGood(LineFault fault) {
        for (String speech : speeches().toList()) {
            Place place = new Place(SPEECHES.get(speech));
            place.agent.order(ON);
            place.steps(12);
            place.line.set(fault);
            place.steps(8);
            Heard during = place.agent.heard();
            place.line.set(LineFault.HEALTHY);
            place.steps(30);

            assertThat(during).as(speech).isInstanceOf(Heard.Silent.class);
            assertThat(place.age()).as(speech).isLessThanOrEqualTo(2 * POLL);
        }
    }

    @ParameterizedTest
    @EnumSource(value = LineFault.class, names = {"GARBLED", "HALF_ANSWER"})
    void anOffStillArrivesWhereOnlyTheAnswersAreBad(LineFault fault) {
        for (String speech : speeches().toList()) {
            Place place = new Place(SPEECHES.get(speech));
            place.agent.order(ON);
            place.steps(12);
            place.line.set(fault);
            place.steps(3);
            place.agent.order(Order.OFF);
            place.steps(6);

            assertThat(place.post.on).as(speech).isFalse();
        }
    }

    @ParameterizedTest
    @MethodSource("speeches")
    void whoeverKeepsHisLastOutputIsOffByHisOwnTimeIfHeHasOne(String speech) {
        Place place = new Place(SPEECHES.get(speech));
        place.agent.order(ON);
        place.steps(12);
        place.line.set(LineFault.UNPLUGGED);
        place.steps(14);
        boolean kept = place.post.on;
        place.steps(12);

        assertThat(kept).isTrue();
        assertThat(place.post.on).isEqualTo(SPEECHES.get(speech) != PLAIN);
    }

    @ParameterizedTest
    @MethodSource("speeches")
    void aReopenedPortBeginsWithOffAndLimitsAgain(String speech) {
        Place place = new Place(SPEECHES.get(speech));
        place.agent.order(ON);
        place.steps(12);
        place.line.set(LineFault.UNPLUGGED);
        place.steps(5);
        place.agent.order(Order.OFF);
        place.steps(10);
        place.line.set(LineFault.HEALTHY);
        place.steps(25);

        assertThat(place.post.on).isFalse();
        assertThat(place.agent.heard()).isInstanceOfSatisfying(Heard.Answer.class, answer -> assertThat(answer.on()).isFalse());
    }

    @ParameterizedTest
    @MethodSource("speeches")
    void offOvertakesWhateverIsOpen(String speech) {
        for (int wait = 0; wait < 12; wait++) {
            Place place = new Place(SPEECHES.get(speech));
            place.agent.order(ON);
            place.steps(12 + wait);
            place.agent.order(Order.OFF);
            place.agent.order(ON);
            place.agent.order(Order.OFF);
            place.steps(1);

            assertThat(place.post.on).as(speech + " after " + wait).isFalse();
        }
    }

    @ParameterizedTest
    @MethodSource("speeches")
    void aCopyGoesOnWithTheCopiedInstrument(String speech) {
        Place place = new Place(SPEECHES.get(speech));
        place.agent.order(ON);
        place.steps(12);
        Post post = new Post();
        FarEnd end = place.end.copy(post, new VirtualClock(place.clock.now));
        InstrumentAgent copy = new InstrumentAgent(new Instrument("tty", 115_200, 60, 4, 0, POLL, 0.01, 0.01,
                SPEECHES.get(speech)), LIMIT, place.line.copy(end, () -> {}), place.agent.state());
        copy.order(Order.OFF);
        copy.step(place.clock.now);

        assertThat(place.post.on).isTrue();
        assertThat(List.of(post.on, copy.state().carried())).containsExactly(false, Order.OFF);
    }
}
