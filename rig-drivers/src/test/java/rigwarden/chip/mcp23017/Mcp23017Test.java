package rigwarden.chip.mcp23017;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.ScriptedExpander;
import rigwarden.scripted.Wire;
import rigwarden.warden.Failure;

class Mcp23017Test {
    private static final int AT = 0x20;
    private static final int A0 = 1 << 8;
    private static final int B3 = 1 << 3;

    private final Wire wire = new Wire();
    private final ScriptedExpander part = new ScriptedExpander(wire, AT);
    private Mcp23017 chip;

    @BeforeEach
    void open() throws BusFailure {
        chip = new Mcp23017(Chip.at(Scripted.context(wire), 1, AT), A0 | B3, 0);
        chip.configure();
        part.settle();
    }

    private Failure why() {
        return catchThrowableOfType(BusFailure.class, chip::read).why();
    }

    @Test
    void pinsAreBitsOfAPairWithPortAFirst() {
        assertThat(Mcp23017Codec.bit(0)).isEqualTo(0x0100);
        assertThat(Mcp23017Codec.bit(7)).isEqualTo(0x8000);
        assertThat(Mcp23017Codec.bit(8)).isEqualTo(0x0001);
        assertThat(Mcp23017Codec.bit(15)).isEqualTo(0x0080);
        assertThatThrownBy(() -> Mcp23017Codec.bit(16)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void latchesAreLowBeforeAnyPinBecomesAnOutput() {
        // published (DS20001952C, register map, BANK = 0): OLAT at 14h, IODIR at 00h
        assertThat(wire.log.indexOf("write 20 14")).isBetween(0, wire.log.indexOf("write 20 0") - 1);
        assertThat(wire.bytesOf(AT, 0x00)).isEqualTo(0xFEF7);
        assertThat(wire.bytesOf(AT, 0x14)).isZero();
    }

    @Test
    void aWriteReachesItsPinsOnlyAndIsReadBack() throws BusFailure {
        chip.write(A0 | 0x8000);
        part.settle();

        assertThat(wire.bytesOf(AT, 0x14)).isEqualTo(A0);
        assertThat(chip.latch()).isEqualTo(A0);
        assertThat(chip.read() & A0).isEqualTo(A0);
    }

    @Test
    void inputsAreReadInFiveReadsAndAWriteThatDoesNothing() throws BusFailure {
        part.inputs(0x4001);
        wire.log.clear();

        assertThat(chip.read()).isEqualTo(0x4001);

        assertThat(wire.count("read")).isEqualTo(5);
        assertThat(wire.log).filteredOn(line -> line.startsWith("write")).containsExactly("write 20 6");
    }

    @Test
    void aWriteThatIsNotKeptIsAFailure() {
        wire.keep(AT, 0x14);

        assertThat(catchThrowableOfType(BusFailure.class, () -> chip.write(A0)).why()).isEqualTo(Failure.CONFIGURATION_LOST);
    }

    @Test
    void aBrownOutIsToldOnceAndLeavesEveryOutputLow() throws BusFailure {
        chip.write(A0);
        part.brownOut();

        assertThat(why()).isEqualTo(Failure.CONFIGURATION_LOST);

        part.settle();
        assertThat(chip.latch()).isZero();
        assertThat(wire.bytesOf(AT, 0x14)).isZero();
        assertThat(wire.bytesOf(AT, 0x00)).isEqualTo(0xFEF7);
        assertThat(chip.read()).isZero();
    }

    @ParameterizedTest
    @ValueSource(ints = {0x00, 0x02, 0x0A, 0x0C, 0x14})
    void oneTurnedBitIsFound(int register) {
        wire.put(AT, register, 0x10, 0x10);

        assertThat(why()).isEqualTo(Failure.CONFIGURATION_LOST);
    }

    @Test
    void aChipThatTakesNoWritesIsNonsense() {
        wire.keep(AT, 0x06);

        assertThat(why()).isEqualTo(Failure.NONSENSE);
    }

    @Test
    void aPinThatDoesNotFollowItsLatchIsNonsense() throws BusFailure {
        chip.write(A0);
        part.settle();
        part.holdLow(A0);

        assertThat(why()).isEqualTo(Failure.NONSENSE);
    }

    @Test
    void aSilentChipIsNamed() {
        wire.silence(AT);

        assertThat(why()).isEqualTo(Failure.NO_ANSWER);
        assertThat(catchThrowableOfType(BusFailure.class, () -> chip.write(0)).why()).isEqualTo(Failure.NO_ANSWER);
    }
}
