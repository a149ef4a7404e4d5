package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static rigwarden.emulated.Bench.read;
import static rigwarden.emulated.Bench.unsigned16;
import static rigwarden.emulated.Bench.write16;

import org.junit.jupiter.api.Test;
import rigwarden.pack.Chance;

class FaultyTargetTest {
    private final Bench bench = new Bench();
    private final Ina228Emulator chip =
            new Ina228Emulator(bench, Ina228Emulator.Errors.NONE, Chance.of(1, "shunt", "noise"));
    private final FaultyTarget faulty = new FaultyTarget(chip);

    @Test
    void aHealthyChipIsLeftAlone() {
        assertThat(write16(faulty, 2, 2048)).isEqualTo(3);
        assertThat(unsigned16(faulty, 2)).isEqualTo(2048);
    }

    @Test
    void noAnswerAcknowledgesNeitherReadNorWrite() {
        faulty.set(ChipFault.Plain.NO_ANSWER);

        assertThat(write16(faulty, 2, 2048)).isEqualTo(-1);
        assertThat(faulty.read(new byte[2], 0, 2)).isEqualTo(-1);
        assertThat(unsigned16(chip, 2)).isEqualTo(0x1000);
    }

    @Test
    void aShortReadLacksItsLastByte() {
        faulty.set(ChipFault.Plain.SHORT_READ);

        faulty.written(new byte[] {4}, 0, 1);

        assertThat(faulty.read(new byte[3], 0, 3)).isEqualTo(2);
    }

    @Test
    void allOnesSwallowsWrites() {
        faulty.set(ChipFault.Plain.ALL_ONES);

        assertThat(write16(faulty, 2, 2048)).isEqualTo(3);
        assertThat(unsigned16(faulty, 2)).isEqualTo(0xFFFF);
        assertThat(unsigned16(chip, 2)).isEqualTo(0x1000);
    }

    @Test
    void aStuckChipRepeatsItsRegistersUntilItIsHealthyAgain() {
        bench.shuntVolts = 0.01;
        bench.pass(1);
        faulty.set(ChipFault.Plain.STUCK);
        long before = read(faulty, 4, 3);
        bench.shuntVolts = 0.02;
        bench.pass(1);

        assertThat(read(faulty, 4, 3)).isEqualTo(before).isEqualTo(32000L << 4);
        assertThat(unsigned16(faulty, 2)).isEqualTo(0x1000);
        assertThat(read(faulty, 4, 3)).isEqualTo(before);

        faulty.set(ChipFault.Plain.HEALTHY);
        assertThat(read(faulty, 4, 3)).isEqualTo(64000L << 4);
    }

    @Test
    void garbageIsRandomButRepeatable() {
        faulty.set(new ChipFault.Garbage(Chance.of(9, "shunt", "garbage")));
        FaultyTarget copy = faulty.copy(chip.copy(bench));

        long first = read(faulty, 4, 3);
        long second = read(faulty, 4, 3);

        assertThat(first).isNotEqualTo(second);
        assertThat(read(copy, 4, 3)).isEqualTo(first);
        assertThat(read(copy, 4, 3)).isEqualTo(second);
    }

    @Test
    void aBrownOutLosesTheConfigurationAndThenTheChipWorks() {
        write16(faulty, 2, 2048);
        bench.shuntVolts = 0.01;
        bench.pass(1);

        faulty.set(ChipFault.Plain.BROWN_OUT);

        assertThat(unsigned16(faulty, 2)).isEqualTo(0x1000);
        assertThat(read(faulty, 4, 3)).isZero();
        bench.pass(1);
        assertThat(read(faulty, 4, 3)).isEqualTo(32000L << 4);
    }
}
