package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import rigwarden.pack.Chance;

class SpiErrorsTest {
    private static final long LATE_NANOS = 500_000_000;

    private final VirtualClock clock = new VirtualClock(0);
    private final Echo first = new Echo(0x10);
    private final Echo second = new Echo(0x20);
    private final EmulatedSpiBus bus = bus(first, second);

    @Test
    void corruptionTurnsBitsOnTheWayOutOrOnTheWayBack() {
        err(bus, WireError.CORRUPTION);
        boolean outwards = false;
        boolean back = false;

        for (int i = 0; i < 20; i++) {
            first.heard.clear();
            String answer = ask(bus, "01 02");
            outwards |= !first.heard.equals(List.of("01 02"));
            back |= first.heard.equals(List.of("01 02")) && !answer.equals("10 10");
        }

        assertThat(outwards).isTrue();
        assertThat(back).isTrue();
    }

    @Test
    void aRepetitionSaysAgainWhatWasSaidFirst() {
        err(bus, WireError.REPETITION);
        assertThat(ask(bus, "01")).isEqualTo("10");
        first.word = 0x11;

        assertThat(ask(bus, "01")).isEqualTo("10");
        assertThat(ask(bus, "02")).isEqualTo("11");
    }

    @Test
    void messagesInTheWrongOrderAreAnsweredByWhatIsOld() {
        err(bus, WireError.WRONG_SEQUENCE);

        ask(bus, "01");
        assertThat(first.heard).isEmpty();
        ask(bus, "02");

        assertThat(first.heard).containsExactly("02", "01");
        assertThat(ask(bus, "01")).isEqualTo("10");
    }

    @Test
    void aLostMessageIsHeardByNobodyAndSometimesReported() {
        err(bus, WireError.LOSS);
        int reported = 0;

        for (int i = 0; i < 40; i++) {
            reported += bus.message(0, new byte[] {1}, new byte[1], false) ? 0 : 1;
        }

        assertThat(first.heard).isEmpty();
        assertThat(reported).isBetween(8, 32);
    }

    @Test
    void aDelayedMessageArrivesLaterWithTheAnswerOfThen() {
        err(bus, WireError.DELAY);
        assertThat(ask(bus, "01")).isEqualTo("00");
        assertThat(first.heard).isEmpty();

        clock.sleepUntil(LATE_NANOS);
        assertThat(ask(bus, "01")).isEqualTo("10");

        assertThat(first.heard).containsExactly("01");
    }

    @Test
    void anInsertionIsHeardBesideWhatWasSent() {
        err(bus, WireError.INSERTION);

        assertThat(ask(bus, "01")).isEqualTo("10");

        assertThat(first.heard).hasSize(2).endsWith("01");
    }

    @Test
    void aMasqueradeIsTheAnswerOfAnotherChip() {
        err(bus, WireError.MASQUERADE);

        assertThat(ask(bus, "01")).isEqualTo("20");

        assertThat(first.heard).containsExactly("01");
    }

    @Test
    void aChipThatIsAloneMasqueradesAsAnotherOfItsRegisters() {
        EmulatedSpiBus alone = new EmulatedSpiBus();
        alone.put(SpiSeat.atSelect(0, first));
        err(alone, WireError.MASQUERADE);

        ask(alone, "01 00");

        assertThat(first.heard).containsExactly("01 00", "02 00");
    }

    @Test
    void aMessageToTheWrongChipIsHeardThere() {
        err(bus, WireError.ADDRESSING);

        assertThat(ask(bus, "01")).isEqualTo("20");

        assertThat(first.heard).isEmpty();
        assertThat(second.heard).containsExactly("01");
    }

    @ParameterizedTest
    @EnumSource(WireError.class)
    void aShareOfNothingChangesNothing(WireError error) {
        bus.meddle(wire -> new SpiErrors(wire, clock, bus.selects(), error, 0, LATE_NANOS, Chance.of(4, "bus", "errs")));

        assertThat(ask(bus, "01 02")).isEqualTo("10 10");
        assertThat(first.heard).containsExactly("01 02");
    }

    @ParameterizedTest
    @EnumSource(WireError.class)
    void aCopyErrsOnExactlyAsTheOriginal(WireError error) {
        bus.meddle(wire -> new SpiErrors(wire, clock, bus.selects(), error, 0.5, LATE_NANOS, Chance.of(4, "bus", "errs")));
        bus.meddle(wire -> new MangledSpiWire(wire, 0.1, Chance.of(4, "bus", "mangled")));
        asked(bus);
        EmulatedSpiBus copy = bus(new Echo(0x10), new Echo(0x20));
        VirtualClock newClock = new VirtualClock(clock.nanos());

        copy.meddleLike(bus, newClock);

        assertThat(asked(copy)).isEqualTo(asked(bus));
    }

    @Test
    void aMangledWireChangesBytesInBothDirections() {
        bus.meddle(wire -> new MangledSpiWire(wire, 1, Chance.of(4, "bus", "mangled")));

        assertThat(ask(bus, "01 02 03 04")).isNotEqualTo("10 10 10 10");
        assertThat(first.heard).hasSize(1).doesNotContain("01 02 03 04");
    }

    private void err(EmulatedSpiBus on, WireError error) {
        on.meddle(wire -> new SpiErrors(wire, clock, on.selects(), error, 1, LATE_NANOS, Chance.of(4, "bus", "errs")));
    }

    private static EmulatedSpiBus bus(Echo first, Echo second) {
        EmulatedSpiBus made = new EmulatedSpiBus();
        made.put(SpiSeat.atSelect(0, first));
        made.put(SpiSeat.atSelect(1, second));
        return made;
    }

    private static String ask(EmulatedSpiBus of, String sent) {
        byte[] bytes = HexFormat.ofDelimiter(" ").parseHex(sent);
        byte[] got = new byte[bytes.length];
        boolean done = of.message(0, bytes, got, false);
        return done ? HexFormat.ofDelimiter(" ").formatHex(got) : "failed";
    }

    private static List<String> asked(EmulatedSpiBus of) {
        List<String> answers = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            answers.add(ask(of, i % 2 == 0 ? "01 02" : "03 04"));
        }
        return answers;
    }

    /** Says one byte and remembers each frame that it heard. */
    private static final class Echo implements SpiTarget {
        private final List<String> heard = new ArrayList<>();
        private int word;

        Echo(int word) {
            this.word = word;
        }

        @Override
        public boolean understands(int mode) {
            return mode == 0;
        }

        @Override
        public void selected(boolean active) {}

        @Override
        public int exchanged(byte[] sent, byte[] driven, int length) {
            heard.add(HexFormat.ofDelimiter(" ").formatHex(sent));
            for (int i = 0; i < length; i++) {
                driven[i] = (byte) word;
            }
            return length;
        }
    }
}
