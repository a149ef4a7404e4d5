package rigwarden.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import com.pi4j.context.Context;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.Wire;
import rigwarden.warden.Failure;

class SpiChipTest {
    private final Wire wire = new Wire();
    private final Context context = Scripted.context(wire);

    private SpiNode node(int bus, int select) throws BusFailure {
        return SpiNode.at(context, bus, select, 1, 1_000_000);
    }

    private static byte[] counting(byte[] sent) {
        byte[] answer = new byte[sent.length];
        for (int i = 0; i < answer.length; i++) {
            answer[i] = (byte) (0xF0 + i);
        }
        return answer;
    }

    @Test
    void aReadSendsItsCommandAndGivesTheBytesThatCameAfterIt() throws BusFailure {
        wire.onSelects.put(0, SpiChipTest::counting);
        SpiChip chip = node(0, 0).chip();

        assertThat(chip.read(0x0C, 3)).containsExactly(0xF1, 0xF2, 0xF3);
        assertThat(chip.listen(2)).containsExactly(0xF0, 0xF1);
        chip.write(0x80, 0x12, 0xFF);

        assertThat(wire.log).containsExactly("spi 0 0c000000", "spi 0 0000", "spi 0 8012ff");
    }

    @Test
    void aSelectLineIsLowForTheWholeTransactionAndHighBeforeAndAfterIt() throws BusFailure {
        SpiNode node = node(0, 1);
        SpiChip one = node.chip(context, 17);
        SpiChip other = node.chip(context, 27);
        wire.onLines.put(17, SpiChipTest::counting);
        wire.onLines.put(27, sent -> new byte[sent.length]);
        wire.log.clear();

        one.listen(1);
        assertThat(other.listen(1)).containsExactly(0);

        assertThat(wire.log).containsExactly("line 17 low", "spi 1 00", "line 17 high", "line 27 low", "spi 1 00",
                "line 27 high");
    }

    @Test
    void aFailedTransferIsAFailureAndLetsTheSelectGo() throws BusFailure {
        SpiChip chip = node(0, 0).chip(context, 17);
        wire.onLines.put(17, SpiChipTest::counting);
        chip.listen(4);
        for (int count : new int[] {-1, 0, 3}) {
            wire.badTransfers.add(count);

            BusFailure failure = catchThrowableOfType(BusFailure.class, () -> chip.listen(4));

            assertThat(failure.why()).isEqualTo(Failure.NO_ANSWER);
            assertThat(failure).hasMessageContaining(count + " of 4 bytes").hasMessageContaining("line 17");
            assertThat(wire.levels.get(17)).isTrue();
        }
        assertThat(chip.listen(4)).hasSize(4);
    }

    @Test
    void aTransferThatSaysItTookPlaceAndLeftTheBufferIsNotYesterdaysReading() throws BusFailure {
        SpiChip chip = node(0, 0).chip();
        wire.onSelects.put(0, SpiChipTest::counting);
        chip.listen(4);
        for (int i = 0; i < 2; i++) {
            wire.badTransfers.add(4);

            assertThat(catchThrowableOfType(BusFailure.class, () -> chip.listen(4)))
                    .hasMessageContaining("left its buffer");
        }
    }

    @Test
    void anAnswerThatHappensToBeThePatternCostsOneReadingOnly() throws BusFailure {
        byte[] pattern = {0x5A, (byte) 0xA5, 0x3C, (byte) 0xC3};
        wire.onSelects.put(0, sent -> Arrays.copyOf(pattern, sent.length));
        SpiChip chip = node(0, 0).chip();
        assertThat(catchThrowableOfType(BusFailure.class, () -> chip.listen(4))).isNotNull();

        assertThat(chip.listen(4)).isEqualTo(pattern);
    }

    @Test
    void aSelectThatCannotBeLetGoSilencesItsNodeUntilItIs() throws BusFailure {
        SpiNode node = node(0, 0);
        SpiChip one = node.chip(context, 17);
        SpiChip other = node.chip(context, 27);
        wire.onLines.put(17, sent -> {
            wire.brokenLines.add(17);
            return counting(sent);
        });
        wire.onLines.put(27, SpiChipTest::counting);
        assertThat(catchThrowableOfType(BusFailure.class, () -> one.listen(1))).hasMessageContaining("cannot be let go");

        assertThat(catchThrowableOfType(BusFailure.class, () -> other.listen(1))).hasMessageContaining("cannot be let go");
        wire.brokenLines.clear();

        assertThat(other.listen(1)).containsExactly(0xF0);
    }

    @Test
    void aSelectIsKnownOnceWhateverTheBus() throws BusFailure {
        node(0, 0);

        assertThat(catchThrowableOfType(BusFailure.class, () -> node(1, 0))).hasMessageContaining("SPI bus 1, select 0");
    }
}
