package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static rigwarden.emulated.Bench.read;
import static rigwarden.emulated.Bench.write8;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.emulated.Mcp23017Emulator.Outside;

class Mcp23017EmulatorTest {
    private static final int IOCON = 0x0A;
    private static final int GPIO_A = 0x12;

    private final Outside[] outside = new Outside[16];
    private final List<String> told = new ArrayList<>();
    private final Mcp23017Emulator chip;

    Mcp23017EmulatorTest() {
        Arrays.fill(outside, Outside.OPEN);
        chip = new Mcp23017Emulator(wiring());
    }

    // published (Microchip DS20001952C, register map): IODIR FFh, all others 00h
    @Test
    void afterPowerOnAllPinsAreInputs() {
        byte[] all = new byte[22];

        chip.written(new byte[] {0}, 0, 1);
        int count = chip.read(all, 0, 22);

        assertThat(count).isEqualTo(22);
        assertThat(all).startsWith(0xFF, 0xFF).endsWith(new byte[20]);
        assertThat(told).isEmpty();
    }

    // published (DS20001952C: OLAT 14h/15h before IODIR 00h/01h, so that no pin is driven low in between)
    @Test
    void aPinIsDrivenOnlyOnceItIsAnOutputAndThenAsLatched() {
        write8(chip, 0x14, 0x01);
        assertThat(told).isEmpty();

        write8(chip, 0x00, 0xFC);
        write8(chip, 0x14, 0x02);

        assertThat(told).containsExactly("0 high", "1 low", "0 low", "1 high");
    }

    // published (DS20001952C: GPIO reads the port, a write of it goes to OLAT)
    @Test
    void gpioShowsThePinAndNotWhatWasWritten() {
        write8(chip, 0x00, 0x00);
        write8(chip, GPIO_A, 0x05);
        outside[0] = Outside.LOW;
        outside[1] = Outside.HIGH;

        assertThat(read(chip, 0x14, 1)).isEqualTo(0x05);
        assertThat(read(chip, GPIO_A, 1)).isEqualTo(0x06);
    }

    // published (DS20001952C, GPPU and IPOL); pull-up strength from memory
    @Test
    void anOpenInputStandsAtItsPullUpAndPolarityTurnsInputsOnly() {
        write8(chip, 0x0C, 0x07);
        outside[1] = Outside.PULLED_DOWN;
        outside[2] = Outside.LOW;
        assertThat(read(chip, GPIO_A, 1)).isEqualTo(0x01);

        write8(chip, 0x02, 0x0F);
        write8(chip, 0x00, 0xF7);
        write8(chip, 0x14, 0x08);

        assertThat(read(chip, GPIO_A, 1)).isEqualTo(0x0E);
    }

    // published (DS20001952C, table of BANK = 1: port A at 00h to 0Ah, port B at 10h to 1Ah, same order)
    @Test
    void withBanksThePortsAreApart() {
        write8(chip, IOCON, 0x80);

        write8(chip, 0x1A, 0xA5);
        write8(chip, 0x10, 0x00);

        assertThat(read(chip, 0x05, 1) & 0xFF).isEqualTo(0x80);
        assertThat(read(chip, 0x15, 1) & 0xFF).isEqualTo(0x80);
        assertThat(read(chip, 0x19, 1) & 0xFF).isEqualTo(0xA5);
        assertThat(read(chip, 0x09, 1) & 0xFF).isZero();
        assertThat(chip.written(new byte[] {0x0B}, 0, 1)).isEqualTo(-1);
        assertThat(chip.written(new byte[] {0x1B}, 0, 1)).isEqualTo(-1);
        write8(chip, 0x05, 0x00);
        assertThat(read(chip, 0x15, 1) & 0xFF).isEqualTo(0xA5);
    }

    // from memory (DS20001952C, sequential operation): the pointer runs on and begins again
    @Test
    void aFrameOfSeveralBytesRunsThroughTheRegisters() {
        int count = chip.written(new byte[] {0x14, 0x12, 0x34, 0x0F}, 0, 4);

        byte[] three = new byte[3];
        chip.written(new byte[] {0x14}, 0, 1);
        chip.read(three, 0, 3);
        assertThat(count).isEqualTo(4);
        assertThat(three).containsExactly(0x12, 0x34, 0x0F);
    }

    // from memory (DS20001952C, byte mode): SEQOP keeps the pointer; unbanked it swings between the ports
    @ParameterizedTest
    @CsvSource({"0x20, 0x12, 0x12 0x34 0x12 0x34", "0xA0, 0x09, 0x12 0x12 0x12 0x12"})
    void inByteModeThePointerStaysWithItsRegister(String control, String address, String expected) {
        chip.written(new byte[] {0x00, 0, 0}, 0, 3);
        chip.written(new byte[] {0x14, 0x12, 0x34}, 0, 3);
        write8(chip, IOCON, Integer.decode(control));
        byte[] four = new byte[4];

        chip.written(new byte[] {Integer.decode(address).byteValue()}, 0, 1);
        chip.read(four, 0, 4);

        assertThat(String.format("0x%02X 0x%02X 0x%02X 0x%02X", four[0], four[1], four[2], four[3])).isEqualTo(expected);
    }

    // from memory (DS20001952C, interrupts): a change is flagged, captured, and gone after GPIO is read
    @Test
    void aChangeOfAnInputInterruptsUntilItsPortIsRead() {
        write8(chip, 0x04, 0x10);
        outside[4] = Outside.HIGH;
        assertThat(chip.interruptPinHigh(0)).isFalse();
        outside[4] = Outside.LOW;

        assertThat(read(chip, 0x0E, 1)).isEqualTo(0x10);
        assertThat(read(chip, 0x10, 1)).isEqualTo(0x10);
        assertThat(read(chip, 0x0E, 1)).isZero();
        assertThat(chip.interruptPinHigh(0)).isTrue();
    }

    // from memory (DS20001952C, INTCON and DEFVAL, IOCON MIRROR and INTPOL)
    @Test
    void aPinThatIsNotAtItsDefaultInterruptsForAsLongAsThatIsSo() {
        write8(chip, IOCON, 0x42);
        write8(chip, 0x07, 0x01);
        write8(chip, 0x09, 0x01);
        write8(chip, 0x05, 0x01);
        assertThat(chip.interruptPinHigh(0)).isTrue();
        read(chip, 0x13, 1);
        assertThat(chip.interruptPinHigh(1)).isTrue();
        outside[8] = Outside.HIGH;

        read(chip, 0x13, 1);

        assertThat(chip.interruptPinHigh(0)).isFalse();
    }

    // published (DS20001952C, section on power-on reset): a dip of the supply makes every pin an input
    @Test
    void aDipOfTheSupplyLetsGoOfEveryPin() {
        FaultyTarget faulty = new FaultyTarget(chip);
        write8(faulty, 0x14, 0x81);
        write8(faulty, 0x00, 0x7E);
        told.clear();

        faulty.set(ChipFault.Plain.BROWN_OUT);

        assertThat(told).containsExactly("0 let go", "7 let go");
        assertThat(read(faulty, 0x00, 1) & 0xFF).isEqualTo(0xFF);
        assertThat(read(faulty, 0x14, 1)).isZero();
    }

    @Test
    void aStuckChipTakesWritesAndDrivesWhatItDrove() {
        FaultyTarget faulty = new FaultyTarget(chip);
        write8(faulty, 0x14, 0x01);
        write8(faulty, 0x00, 0xFE);
        told.clear();

        faulty.set(ChipFault.Plain.STUCK);
        int count = write8(faulty, 0x14, 0x00);

        assertThat(count).isEqualTo(2);
        assertThat(told).isEmpty();
        assertThat(read(faulty, 0x14, 1)).isEqualTo(0x01);
    }

    @Test
    void aCopyGoesOnByItselfFromTheSameState() {
        write8(chip, 0x14, 0x03);
        write8(chip, 0x00, 0xFC);
        told.clear();

        Mcp23017Emulator copy = chip.copy(wiring());
        write8(copy, 0x14, 0x01);

        assertThat(told).containsExactly("1 low");
        assertThat(read(chip, 0x14, 1)).isEqualTo(0x03);
        assertThat(read(copy, GPIO_A, 1)).isEqualTo(0x01);
    }

    @Test
    void whatTheSheetDoesNotListIsNotAcknowledged() {
        assertThat(chip.written(new byte[] {0x16}, 0, 1)).isEqualTo(-1);
    }

    private Mcp23017Emulator.Wiring wiring() {
        return new Mcp23017Emulator.Wiring() {
            @Override
            public Outside outside(int pin) {
                return outside[pin];
            }

            @Override
            public void driven(int pin, boolean output, boolean high) {
                told.add(pin + (output ? high ? " high" : " low" : " let go"));
            }
        };
    }
}
