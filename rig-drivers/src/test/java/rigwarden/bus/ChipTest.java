package rigwarden.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.Wire;
import rigwarden.warden.Failure;

class ChipTest {
    private final Wire wire = new Wire();
    private Chip chip;

    @BeforeEach
    void open() throws BusFailure {
        chip = Chip.at(Scripted.context(wire), 1, 0x40);
    }

    @Test
    void bytesAreUnsignedAndMostSignificantFirst() throws BusFailure {
        wire.put(0x40, 0x0A, 0xFF, 0xFE, 0x80, 0x00, 0x01);

        assertThat(chip.read(0x0A, 5)).isEqualTo(0xFF_FE80_0001L);
    }

    @Test
    void aWordIsWrittenInTheSameOrder() throws BusFailure {
        chip.writeWord(0x01, 0xB6DA);

        assertThat(wire.bytesOf(0x40, 0x01)).isEqualTo(0xB6DA);
    }

    @Test
    void aShortAnswerIsAFailureAndNotAnOldReading() throws BusFailure {
        wire.put(0x40, 0x01, 0x12, 0x34);
        chip.readWord(0x01);
        wire.shorten(0x40, 0x01);

        BusFailure failure = catchThrowableOfType(BusFailure.class, () -> chip.readWord(0x01));

        assertThat(failure.why()).isEqualTo(Failure.NO_ANSWER);
        assertThat(failure).hasMessageContaining("address 40h").hasMessageContaining("1 of 2 bytes");
    }

    @Test
    void aSilentChipIsAFailureOnReadAndOnWrite() {
        wire.silence(0x40);

        assertThat(catchThrowableOfType(BusFailure.class, () -> chip.readByte(0x01)).why())
                .isEqualTo(Failure.NO_ANSWER);
        assertThat(catchThrowableOfType(BusFailure.class, () -> chip.writeByte(0x01, 0)).why())
                .isEqualTo(Failure.NO_ANSWER);
    }
}
