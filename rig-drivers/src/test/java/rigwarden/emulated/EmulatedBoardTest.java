package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.pi4j.exception.Pi4JException;
import com.pi4j.io.exception.IOAlreadyExistsException;
import com.pi4j.io.gpio.digital.DigitalInput;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import com.pi4j.io.i2c.I2C;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import rigwarden.pack.Chance;

/**
 * How the official plugins of Pi4J 3.0.3 answer and fail. Mark of every case: published (class files of
 * pi4j-plugin-linuxfs and pi4j-plugin-gpiod 3.0.3, read with javap).
 */
class EmulatedBoardTest {
    private static final int SHUNT = 0x40;
    private static final int TAP = 0x48;

    private final Bench bench = new Bench();
    private final EmulatedBoard board = new EmulatedBoard()
            .put(1, SHUNT, new Ina228Emulator(bench, Ina228Emulator.Errors.NONE, Chance.of(1, "shunt", "noise")))
            .put(1, TAP, new Ads1115Emulator(bench, Ads1115Emulator.Errors.none(3.3), Chance.of(1, "tap", "noise")));

    @AfterEach
    void close() {
        board.close();
    }

    @Test
    void onlyOurFourProvidersAreInTheContext() {
        assertThat(board.context().providers().all().keySet())
                .containsExactlyInAnyOrder("emulated-i2c", "emulated-spi", "emulated-output", "emulated-input");
    }

    @Test
    void aRegisterReadIsOneTransactionAndAnswersTheLengthAskedFor() {
        I2C shunt = device("shunt", SHUNT);
        byte[] word = new byte[2];

        int count = shunt.readRegister(0x3E, word);

        assertThat(count).isEqualTo(2);
        assertThat(word).containsExactly(0x54, 0x49);
        assertThat(board.traffic().registerReads).isOne();
        assertThat(board.traffic().all()).isOne();
    }

    @Test
    void aRegisterWriteAnswersThePointerByteToo() {
        I2C tap = device("tap", TAP);

        int count = tap.writeRegister(1, new byte[] {(byte) 0x44, (byte) 0x83}, 0, 2);

        assertThat(count).isEqualTo(3);
        assertThat(board.traffic().registerWrites).isOne();
    }

    @Test
    void anAddressThatDoesNotAnswerIsAnUncheckedExceptionWithTheErrnoOnlyInItsText() {
        I2C nobody = device("nobody", 0x41);

        assertThatThrownBy(() -> nobody.readRegister(0, new byte[2]))
                .isInstanceOf(Pi4JException.class)
                .hasMessage("Failed to execute action for device 65 on bus 1")
                .hasRootCauseInstanceOf(java.io.IOException.class)
                .hasRootCauseMessage("Remote I/O error");
        assertThatThrownBy(() -> nobody.write(new byte[2])).hasRootCauseMessage("Remote I/O error");
        assertThatThrownBy(nobody::read).hasRootCauseMessage("Remote I/O error");
        assertThat(board.traffic().i2c()).isEqualTo(3);
    }

    @Test
    void anUndocumentedRegisterIsNotAcknowledged() {
        I2C shunt = device("shunt", SHUNT);

        assertThatThrownBy(() -> shunt.readRegister(0x12, new byte[2])).isInstanceOf(Pi4JException.class);
        assertThatThrownBy(() -> shunt.writeRegister(0x04, new byte[2])).isInstanceOf(Pi4JException.class);
    }

    @Test
    void aSingleByteReadIsUnsigned() {
        I2C tap = device("tap", TAP);
        tap.write(new byte[] {2});

        assertThat(tap.read()).isEqualTo(0x80);
        assertThat(tap.readRegister(2)).isEqualTo(0x80);
    }

    @Test
    void aWriteOfPartOfAnArrayKeepsToOffsetAndLength() {
        I2C tap = device("tap", TAP);
        byte[] word = new byte[2];

        int count = tap.write(new byte[] {9, 3, 0x12, 0x34, 9}, 1, 3);

        assertThat(count).isEqualTo(3);
        tap.readRegister(3, word);
        assertThat(word).containsExactly(0x12, 0x34);
    }

    @Test
    void aShortReadOfARegisterIsFilledWithOnesAndLooksComplete() {
        FaultyTarget faulty = new FaultyTarget(
                new Ina228Emulator(bench, Ina228Emulator.Errors.NONE, Chance.of(1, "second", "noise")));
        board.put(1, 0x44, faulty);
        I2C second = device("second", 0x44);
        byte[] word = new byte[2];

        faulty.set(ChipFault.Plain.SHORT_READ);

        assertThat(second.readRegister(0x3E, word)).isEqualTo(2);
        assertThat(word).containsExactly(0x54, 0xFF);
        assertThat(second.read(word)).isEqualTo(1);
    }

    @Test
    void afterAFailedSelectARawWriteReachesThePreviousChip() {
        I2C tap = device("tap", TAP);
        I2C shunt = device("shunt", SHUNT);
        byte[] word = new byte[2];
        tap.readRegister(2, word);
        board.kernelHolds(1, SHUNT, true);

        assertThatThrownBy(() -> shunt.write(new byte[] {2, 0x0F, (byte) 0xD2}))
                .hasRootCauseMessage("Device or resource busy");
        int count = shunt.write(new byte[] {2, 0x0F, (byte) 0xD2});

        assertThat(count).isEqualTo(3);
        tap.readRegister(2, word);
        assertThat(word).containsExactly(0x0F, 0xD2);
    }

    @Test
    void afterAFailedSelectARegisterReadStillReachesItsOwnChip() {
        I2C tap = device("tap", TAP);
        I2C shunt = device("shunt", SHUNT);
        byte[] word = new byte[2];
        tap.readRegister(2, word);
        board.kernelHolds(1, SHUNT, true);

        assertThatThrownBy(() -> shunt.readRegister(0x3E, word)).hasRootCauseMessage("Device or resource busy");
        shunt.readRegister(0x3E, word);

        assertThat(word).containsExactly(0x54, 0x49);
    }

    @Test
    void theSameIdCannotBeCreatedTwiceAndCloseDoesNotFreeIt() {
        I2C first = device("shunt", SHUNT);

        first.close();

        assertThatThrownBy(() -> device("shunt", SHUNT)).isInstanceOf(IOAlreadyExistsException.class);
        board.context().registry().remove("shunt");
        assertThat(device("shunt", SHUNT).readRegister(0x3E)).isEqualTo(0x54);
    }

    @Test
    void theSameAddressUnderAnotherIdIsNotRefused() {
        I2C first = device("shunt", SHUNT);

        I2C second = device("shunt again", SHUNT);

        assertThat(second.readRegister(0x3E)).isEqualTo(first.readRegister(0x3E));
    }

    @Test
    void aBusThatIsNotThereCannotBeOpened() {
        assertThatThrownBy(() -> board.context().create(
                I2C.newConfigBuilder(board.context()).id("far").bus(7).device(SHUNT).build()))
                .isInstanceOf(Pi4JException.class)
                .hasMessageContaining("/dev/i2c-7");
    }

    @Test
    void theWordExchangeDoesNoTransfer() {
        I2C shunt = device("shunt", SHUNT);

        assertThat(shunt.writeReadRegisterWord(2, 0x0FD2)).isZero();
        assertThat(board.traffic().all()).isZero();
    }

    @Test
    void anOutputIsClaimedWithItsInitialLevelAndTellsEachWrite() {
        List<Boolean> levels = new ArrayList<>();
        board.output(17, levels::add);

        DigitalOutput coil = output(17, DigitalState.HIGH, DigitalState.LOW);
        coil.low();
        coil.low();

        assertThat(levels).containsExactly(true, true, false, false);
        assertThat(board.traffic().gpioWrites).isEqualTo(3);
    }

    @Test
    void anOutputStateIsTheLastLevelWrittenAndNeverAReadBack() {
        DigitalOutput coil = output(17, DigitalState.LOW, DigitalState.LOW);

        coil.high();

        assertThat(coil.state()).isEqualTo(DigitalState.HIGH);
        assertThat(board.traffic().gpioReads).isZero();
    }

    @Test
    void theSameLineCannotBeClaimedTwice() {
        output(17, DigitalState.LOW, DigitalState.LOW);

        assertThatThrownBy(() -> board.context().create(DigitalOutput.newConfigBuilder(board.context())
                .id("other").address(17).build())).isInstanceOf(IOAlreadyExistsException.class);
    }

    @Test
    void closingTheBoardDrivesOutputsToTheirShutdownLevel() {
        List<Boolean> levels = new ArrayList<>();
        board.output(17, levels::add);
        output(17, DigitalState.HIGH, DigitalState.LOW);

        board.close();

        assertThat(levels.getLast()).isFalse();
    }

    @Test
    void anInputReadsItsLineWhenAskedAndItsPullWhenNothingIsWired() {
        boolean[] pressed = {true};
        board.input(5, () -> pressed[0]);
        DigitalInput key = board.context().create(
                DigitalInput.newConfigBuilder(board.context()).id("key").address(5).build());
        DigitalInput loose = board.context().create(DigitalInput.newConfigBuilder(board.context())
                .id("loose").address(6).pull(com.pi4j.io.gpio.digital.PullResistance.PULL_UP).build());

        assertThat(key.isHigh()).isTrue();
        pressed[0] = false;
        assertThat(key.isHigh()).isFalse();
        assertThat(loose.isHigh()).isTrue();
        assertThat(board.traffic().gpioReads).isEqualTo(3);
    }

    @Test
    void aRegisterReadCostsLittle() {
        I2C shunt = device("shunt", SHUNT);
        byte[] word = new byte[3];
        int rounds = 5_000_000;

        for (int warm = 0; warm < 3; warm++) {
            long start = System.nanoTime();
            for (int i = 0; i < rounds; i++) {
                bench.nanos += 20;
                shunt.readRegister(7, word);
            }
            System.out.printf("register read: %.1f ns%n", (System.nanoTime() - start) / (double) rounds);
        }

        assertThat(board.traffic().registerReads).isEqualTo(3L * rounds);
    }

    private I2C device(String id, int address) {
        return board.context().create(
                I2C.newConfigBuilder(board.context()).id(id).bus(1).device(address).build());
    }

    private DigitalOutput output(int bcm, DigitalState initial, DigitalState shutdown) {
        return board.context().create(DigitalOutput.newConfigBuilder(board.context())
                .id("line" + bcm).address(bcm).initial(initial).shutdown(shutdown).build());
    }
}
