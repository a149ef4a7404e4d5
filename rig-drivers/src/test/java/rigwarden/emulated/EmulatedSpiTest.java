package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.pi4j.io.exception.IOAlreadyExistsException;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.io.spi.Spi;
import com.pi4j.io.spi.SpiBus;
import com.pi4j.io.spi.SpiMode;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rigwarden.pack.Chance;

/**
 * How the official SPI plugin of Pi4J 3.0.3 answers and fails. Mark of every case: published (class files of
 * pi4j-plugin-linuxfs 3.0.3, read with javap), where it does not say otherwise.
 */
class EmulatedSpiTest {
    private static final int LINE = 22;
    private static final int OTHER_LINE = 23;

    private final SpiBench bench = new SpiBench();
    private final SpiBench warmer = new SpiBench();
    private final FaultySpiTarget probe = new FaultySpiTarget(probe(bench));
    private final EmulatedBoard board = new EmulatedBoard().putSpi(0, 0, probe);

    @AfterEach
    void close() {
        board.close();
    }

    @Test
    void aTransferGoesBothWaysAtOnceAndIsOneMessage() {
        Spi spi = device("probe", 0, 0, SpiMode.MODE_1);
        byte[] frame = {0x00, 0, 0, 0};

        int count = spi.transfer(frame);

        assertThat(count).isEqualTo(4);
        assertThat(frame).containsExactly(0xFF, 0x00, 0x03, 0xFF);
        assertThat(board.traffic().spiMessages).isOne();
        assertThat(board.traffic().all()).isOne();
    }

    @Test
    void aPartOfAnArrayIsTransferredWhereItWasAskedFor() {
        Spi spi = device("probe", 0, 0, SpiMode.MODE_1);
        byte[] into = {9, 9, 9, 9};

        int count = spi.transfer(new byte[] {7, 0x01, 0, 7}, 1, into, 2, 2);

        assertThat(count).isEqualTo(2);
        assertThat(into).containsExactly(9, 9, 0xFF, 0x03);
    }

    @Test
    void aTransferThatFailsIsMinusOneWithYesterdaysBuffer() {
        Spi spi = device("probe", 0, 0, SpiMode.MODE_1);
        board.upset(new WireUpsets(Chance.of(1, "bus", "lost"), 1));
        byte[] frame = {0x01, 0x55, 0x55};
        int failed = 0;

        for (int i = 0; i < 50; i++) {
            byte[] copy = frame.clone();
            if (spi.transfer(copy) == -1) {
                failed++;
                assertThat(copy).isEqualTo(frame);
            }
        }

        assertThat(failed).isBetween(10, 40);
    }

    @Test
    void aMessageLongerThanTheKernelsBufferFails() {
        Spi spi = device("probe", 0, 0, SpiMode.MODE_1);

        assertThat(spi.transfer(new byte[4096])).isEqualTo(4096);
        assertThat(spi.transfer(new byte[4097])).isEqualTo(-1);
    }

    // published (class files); from memory (kernel): without a send buffer zeros are sent
    @Test
    void aSingleByteIsReadWithItsSign() {
        board.putSpi(0, 1, new Constant(0xFE));
        Spi spi = device("constant", 0, 1, SpiMode.MODE_0);

        assertThat(spi.read()).isEqualTo(-2);
    }

    @Test
    void aModeIsOnlyAddedToTheBitsThatTheNodeHasAlready() {
        Spi wrong = device("wrong", 0, 0, SpiMode.MODE_2);
        wrong.close();
        board.context().registry().remove("wrong");

        Spi spi = device("probe", 0, 0, SpiMode.MODE_1);
        assertThat(spi.transfer(new byte[] {0, 0})).isEqualTo(2);
        assertThat(board.spiBus(0).orElseThrow().mode(0)).isEqualTo(3);
    }

    @Test
    void inAModeThatTheChipDoesNotSpeakAllBitsAreOneLate() {
        board.putSpi(1, 0, new Constant(0x12));
        device("left at mode 3", 1, 0, SpiMode.MODE_3).close();
        board.context().registry().remove("left at mode 3");
        Spi spi = device("constant", 1, 0, SpiMode.MODE_0);
        byte[] frame = new byte[2];

        spi.transfer(frame);

        assertThat(frame).containsExactly(0x09, 0x09);
    }

    @Test
    void aWriteSendsTheWholeRestAndAnswersWhatWasAskedFor() {
        Spi spi = device("probe", 0, 0, SpiMode.MODE_1);

        int count = spi.write(new byte[] {9, (byte) 0x83, 0x11, 0x22}, 1, 2);

        assertThat(count).isEqualTo(2);
        device("nobody", 0, 1, SpiMode.MODE_1).transfer(new byte[1]);
        assertThat(SpiBench.frame(probe, "03 00 00")).endsWith("11 22");
    }

    @Test
    void aWriteThatFailsIsZero() {
        Spi spi = device("probe", 0, 0, SpiMode.MODE_1);

        spi.close();

        assertThat(spi.write(new byte[] {(byte) 0x83, 1})).isZero();
        assertThat(spi.transfer(new byte[2])).isEqualTo(-1);
        assertThat(spi.read()).isEqualTo(-1);
    }

    // published (class files: cs_change is set; kernel's spi.h: the select then stays until the next message)
    @Test
    void afterAWriteTheSelectStaysActiveSoThatTheNextMessageGoesOnInTheSameFrame() {
        Spi spi = device("probe", 0, 0, SpiMode.MODE_1);
        spi.write(new byte[] {(byte) 0x83, 0x11});
        byte[] frame = {0x01, 0x00};

        spi.transfer(frame);

        assertThat(frame).containsExactly(0xFF, 0xFF);
        assertThat(SpiBench.frame(probe, "03 00 00 00")).endsWith("11 01 00");
    }

    // published (kernel's spi.h): a message to another device takes the select away
    @Test
    void aMessageToAnotherSelectEndsAFrameThatWasLeftOpen() {
        board.putSpi(0, 1, new Constant(0));
        Spi spi = device("probe", 0, 0, SpiMode.MODE_1);
        Spi other = device("constant", 0, 1, SpiMode.MODE_0);
        spi.write(new byte[] {(byte) 0x83, 0x11});
        other.transfer(new byte[1]);
        byte[] frame = {0x01, 0x00};

        spi.transfer(frame);

        assertThat(frame).containsExactly(0xFF, 0x03);
    }

    @Test
    void theSameSelectOnTwoBusesIsRefused() {
        board.putSpi(1, 0, new Constant(0));
        device("probe", 0, 0, SpiMode.MODE_1);

        assertThatThrownBy(() -> device("second", 1, 0, SpiMode.MODE_1)).isInstanceOf(IOAlreadyExistsException.class);
    }

    @Test
    void aNodeThatIsNotThereCannotBeOpened() {
        assertThatThrownBy(() -> device("far", 1, 0, SpiMode.MODE_0))
                .isInstanceOf(RuntimeException.class).hasMessage("Failed to open SPI device /dev/spidev1.0");
        assertThatThrownBy(() -> device("third", 0, 2, SpiMode.MODE_0))
                .isInstanceOf(RuntimeException.class).hasMessage("Failed to open SPI device /dev/spidev0.2");
    }

    @Test
    void isOpenNeverSaysYes() {
        assertThat(device("probe", 0, 0, SpiMode.MODE_1).isOpen()).isFalse();
    }

    @Test
    void flagsAndTheLowestBitFirstAreRefused() {
        assertThatThrownBy(() -> board.context().create(Spi.newConfigBuilder(board.context()).id("a")
                .address(0).flags(1L).build())).hasMessageContaining("flags");
        assertThatThrownBy(() -> board.context().create(Spi.newConfigBuilder(board.context()).id("b")
                .address(0).writeLsbFirst(1).build())).hasMessageContaining("SHIFT");
    }

    @Test
    void aSelectWithoutAChipReadsAsTheLineIsPulled() {
        Spi nobody = device("nobody", 0, 1, SpiMode.MODE_0);
        byte[] frame = {1, 1};

        nobody.transfer(frame);
        assertThat(frame).containsExactly(0, 0);
        board.pullSpi(0, true);
        nobody.transfer(frame);

        assertThat(frame).containsExactly(0xFF, 0xFF);
    }

    @Test
    void aChipThatDoesNotAnswerLooksLikeAZeroFrame() {
        probe.set(ChipFault.Plain.NO_ANSWER);
        Spi spi = device("probe", 0, 0, SpiMode.MODE_1);
        byte[] frame = {0, 0, 0, 0};

        assertThat(spi.transfer(frame)).isEqualTo(4);

        assertThat(frame).containsExactly(0, 0, 0, 0);
    }

    @Test
    void aFaultThatComesLaterSitsUnderTheSameSelectEvenInTheMiddleOfAFrame() {
        Max31856Emulator chip = probe(warmer);
        board.putSpiByLine(0, LINE, true, chip);
        Spi spi = device("bus", 0, 1, SpiMode.MODE_1);
        line("select", LINE, DigitalState.HIGH);
        spi.transfer(new byte[] {0x01});
        FaultySpiTarget faulty = new FaultySpiTarget(chip);

        board.spiBus(0).orElseThrow().replace(chip, faulty);
        byte[] healthy = {0};
        spi.transfer(healthy);
        faulty.set(ChipFault.Plain.ALL_ONES);
        byte[] ones = {0, 0};
        spi.transfer(ones);

        assertThat(healthy).containsExactly(0x03);
        assertThat(ones).containsExactly(0xFF, 0xFF);
    }

    @Test
    void aCopyOfABoardStandsInTheMiddleOfTheSameFrame() {
        Max31856Emulator chip = probe(warmer);
        board.putSpi(1, 0, chip);
        Spi spi = device("probe", 1, 0, SpiMode.MODE_1);
        spi.write(new byte[] {(byte) 0x83, 0x11});

        try (EmulatedBoard other = new EmulatedBoard().putSpi(0, 0, probe(bench)).putSpi(1, 0, chip.copy(warmer))) {
            other.meddleLike(board, new VirtualClock(0));
            Spi again = other.context().create(Spi.newConfigBuilder(other.context()).id("probe").bus(SpiBus.BUS_1).address(0)
                    .mode(SpiMode.MODE_0).build());
            again.transfer(new byte[] {0x22});
            byte[] frame = {0x03, 0, 0};
            again.transfer(frame);
            assertThat(frame).containsExactly(0xFF, 0x11, 0x22);
        }
    }

    @Test
    void aTurnedBitMayBeInWhatIsSentOrInWhatArrives() {
        Spi spi = device("probe", 0, 0, SpiMode.MODE_1);
        board.upset(new WireUpsets(Chance.of(3, "bus", "turned"), 1));
        int stored = 0;
        int shown = 0;

        for (int i = 0; i < 60; i++) {
            spi.transfer(new byte[] {(byte) 0x83, 0x11, 0x22});
            String kept = SpiBench.frame(probe, "03 00 00").substring(3).replace(" ", "");
            stored += Integer.bitCount(Integer.parseInt(kept, 16) ^ 0x1122) == 1 ? 1 : 0;
            byte[] frame = {0x01, 0};
            shown += spi.transfer(frame) == 2 && frame[1] != 0x03 ? 1 : 0;
        }

        assertThat(stored).isPositive();
        assertThat(shown).isPositive();
    }

    @Test
    void aChipSelectedByALineHearsOnlyWhileTheLineIsActive() {
        board.putSpiByLine(0, LINE, false, probe(warmer));
        Spi spi = device("bus", 0, 1, SpiMode.MODE_1);
        byte[] before = {0x01, 0};
        spi.transfer(before);

        DigitalOutput select = line("select", LINE, DigitalState.HIGH);
        select.low();
        byte[] during = {0x01, 0};
        spi.transfer(during);
        select.high();
        byte[] after = {0x01, 0};
        spi.transfer(after);

        assertThat(before).containsExactly(0, 0);
        assertThat(during).containsExactly(0xFF, 0x03);
        assertThat(after).containsExactly(0, 0);
    }

    @Test
    void oneFrameUnderALineMayBeSeveralMessages() {
        board.putSpiByLine(0, LINE, true, probe(warmer));
        Spi spi = device("bus", 0, 1, SpiMode.MODE_1);
        DigitalOutput select = line("select", LINE, DigitalState.LOW);

        select.high();
        spi.transfer(new byte[] {0x01});
        byte[] rest = {0, 0};
        spi.transfer(rest);

        assertThat(rest).containsExactly(0x03, 0xFF);
    }

    @Test
    void twoChipsThatAreSelectedAtOnceGarbleEachOther() {
        Max31856Emulator first = probe(bench);
        Max31856Emulator second = probe(warmer);
        warmer.coldCelsius = 43;
        board.putSpiByLine(0, LINE, false, first).putSpiByLine(0, OTHER_LINE, false, second);
        Spi spi = device("bus", 0, 1, SpiMode.MODE_1);
        DigitalOutput select = line("select", LINE, DigitalState.LOW);
        DigitalOutput other = line("other", OTHER_LINE, DigitalState.LOW);
        spi.transfer(new byte[] {(byte) 0x80, (byte) 0x80});
        select.high();
        other.high();
        bench.pass(1);
        warmer.pass(1);
        select.low();
        other.low();
        byte[] frame = {0x0A, 0, 0};

        spi.transfer(frame);

        assertThat(frame[1]).as("19h and 2Bh").isEqualTo((byte) (0x19 & 0x2B));
    }

    private Spi device(String id, int bus, int select, SpiMode mode) {
        return board.context().create(Spi.newConfigBuilder(board.context()).id(id).bus(SpiBus.getByNumber(bus))
                .address(select).mode(mode).build());
    }

    private DigitalOutput line(String id, int bcm, DigitalState initial) {
        return board.context().create(DigitalOutput.newConfigBuilder(board.context())
                .id(id).address(bcm).initial(initial).shutdown(DigitalState.HIGH).build());
    }

    private static Max31856Emulator probe(SpiBench bench) {
        return new Max31856Emulator(bench, Max31856Emulator.Errors.NONE, Chance.of(1, "probe", "noise"));
    }

    /** Says one byte for ever, in mode 0. */
    private record Constant(int word) implements SpiTarget {
        @Override
        public boolean understands(int mode) {
            return mode == 0;
        }

        @Override
        public void selected(boolean active) {}

        @Override
        public int exchanged(byte[] sent, byte[] driven, int length) {
            for (int i = 0; i < length; i++) {
                driven[i] = (byte) word;
            }
            return length;
        }
    }
}
