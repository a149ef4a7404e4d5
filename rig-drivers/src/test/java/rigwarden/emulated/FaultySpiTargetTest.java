package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static rigwarden.emulated.SpiBench.frame;

import org.junit.jupiter.api.Test;
import rigwarden.pack.Chance;

class FaultySpiTargetTest {
    private static final String LIMITS = "03 00 00 00";

    private final SpiBench bench = new SpiBench();
    private final Max31856Emulator chip =
            new Max31856Emulator(bench, Max31856Emulator.Errors.NONE, Chance.of(1, "probe", "noise"));
    private final FaultySpiTarget faulty = new FaultySpiTarget(chip);

    @Test
    void aHealthyChipIsLeftAlone() {
        frame(faulty, "83 12");

        assertThat(frame(faulty, LIMITS)).isEqualTo("FF 12 C0 7F");
    }

    @Test
    void noAnswerLeavesTheLineAloneAndHearsNothing() {
        faulty.set(ChipFault.Plain.NO_ANSWER);
        faulty.selected(true);

        assertThat(faulty.exchanged(new byte[] {(byte) 0x83, 0x12}, new byte[2], 2)).isZero();

        faulty.selected(false);
        assertThat(frame(chip, LIMITS)).isEqualTo("FF 7F C0 7F");
    }

    @Test
    void aShortReadLacksTheLastByteOfAMessage() {
        faulty.set(ChipFault.Plain.SHORT_READ);
        faulty.selected(true);
        byte[] driven = new byte[4];

        assertThat(faulty.exchanged(new byte[] {3, 0, 0, 0}, driven, 4)).isEqualTo(3);

        assertThat(driven).containsExactly(0xFF, 0x7F, 0xC0, 0xFF);
    }

    @Test
    void allOnesSwallowsWrites() {
        faulty.set(ChipFault.Plain.ALL_ONES);

        frame(faulty, "83 12");

        assertThat(frame(faulty, LIMITS)).isEqualTo("FF FF FF FF");
        assertThat(frame(chip, LIMITS)).isEqualTo("FF 7F C0 7F");
    }

    @Test
    void aFrozenChipRepeatsWhatItSaidAndLosesWrites() {
        bench.tip(Couple.K, 25);
        frame(faulty, "80 80");
        bench.pass(1);
        faulty.set(ChipFault.Plain.STUCK);
        assertThat(frame(faulty, "0C 00 00 00")).isEqualTo("FF 01 90 00");
        bench.tip(Couple.K, 80);

        frame(faulty, "83 12");
        bench.pass(1);

        assertThat(frame(faulty, "0C 00 00 00")).isEqualTo("FF 01 90 00");
        assertThat(frame(faulty, LIMITS)).isEqualTo("FF 7F C0 7F");
        faulty.set(ChipFault.Plain.HEALTHY);
        assertThat(frame(faulty, "0C 00 00 00")).isEqualTo("FF 05 00 00");
    }

    @Test
    void garbageIsRandomButRepeatable() {
        faulty.set(new ChipFault.Garbage(Chance.of(9, "probe", "garbage")));
        FaultySpiTarget copy = faulty.copy(chip.copy(bench));

        String first = frame(faulty, LIMITS);

        assertThat(frame(copy, LIMITS)).isEqualTo(first);
        assertThat(frame(faulty, LIMITS)).isNotEqualTo(first);
    }
}
