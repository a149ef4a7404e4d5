package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rigwarden.emulated.Bench.read;
import static rigwarden.emulated.Bench.unsigned16;
import static rigwarden.emulated.Bench.write8;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.pack.Chance;

class Mcp9601EmulatorTest {
    private static final int TYPE_T = 0x20;
    private final Bench bench = new Bench();
    private final Mcp9601Emulator chip = chip(Mcp9601Emulator.Errors.NONE);

    // published (Microchip DS20005426C, p.17 and timing diagram), vectors computed from its formula
    @ParameterizedTest
    @CsvSource({"25.0, 0x0190", "25.25, 0x0194", "-1.0, 0xFFF0", "-25.0, 0xFE70", "100.0, 0x0640"})
    void theHotJunctionIsSixteenthsOfAKelvinInTwosComplement(double celsius, String word) {
        write8(chip, 5, TYPE_T);
        bench.hotCelsius = celsius;

        bench.pass(1);

        assertThat(unsigned16(chip, 0)).isEqualTo(Integer.decode(word));
    }

    // published (DS20005426C, registers 01h and 02h)
    @Test
    void hotIsDeltaPlusCold() {
        write8(chip, 5, TYPE_T);
        bench.hotCelsius = 61.5;
        bench.coldCelsius = 22.25;

        bench.pass(1);

        assertThat(read(chip, 1, 2) * 0.0625).isEqualTo(39.25);
        assertThat(read(chip, 2, 2) * 0.0625).isEqualTo(22.25);
        assertThat(read(chip, 0, 2) * 0.0625).isEqualTo(61.5);
    }

    // from memory (DS20005426F): 41h is the MCP9601
    @Test
    void theIdentityIsThatOfTheChipThatSeesOpenProbes() {
        assertThat(unsigned16(chip, 0x20) >> 8).isEqualTo(0x41);
    }

    // from memory (DS20005426F): 18, 16, 14 and 12 bits take 320, 80, 20 and 5 ms; published (p.28): bit 6 of STATUS
    @ParameterizedTest
    @CsvSource({"0x00, 0.320", "0x20, 0.080", "0x40, 0.020", "0x60, 0.005"})
    void eachConversionSetsTheUpdateFlagUntilItIsWrittenToZero(String device, double seconds) {
        write8(chip, 6, Integer.decode(device));

        bench.pass(seconds * 0.99);
        assertThat(read(chip, 4, 1)).isZero();
        bench.pass(seconds * 0.02);
        assertThat(read(chip, 4, 1)).isEqualTo(0x40);
        write8(chip, 4, 0xBF);
        assertThat(read(chip, 4, 1)).isZero();
        bench.pass(seconds);

        assertThat(read(chip, 4, 1)).isEqualTo(0x40);
    }

    // from memory (DS20005426F): open circuit is bit 4 of STATUS; the last value stays
    @Test
    void anOpenProbeSetsItsFlagAndLeavesTheLastValue() {
        write8(chip, 5, TYPE_T);
        bench.hotCelsius = 48;
        bench.pass(1);
        assertThat(read(chip, 0, 2) * 0.0625).isEqualTo(48);
        bench.open = true;
        bench.hotCelsius = 25;
        bench.coldCelsius = 30;

        bench.pass(1);

        assertThat(read(chip, 4, 1) & 0x30).isEqualTo(0x10);
        assertThat(read(chip, 0, 2) * 0.0625).isEqualTo(48);
    }

    // from memory (DS20005426F): short circuit is bit 5 of STATUS
    @Test
    void aShortedProbeSetsItsFlagAndReadsTheColdJunction() {
        write8(chip, 5, TYPE_T);
        bench.hotCelsius = 60;
        bench.shorted = true;

        bench.pass(1);

        assertThat(read(chip, 4, 1) & 0x30).isEqualTo(0x20);
        assertThat(read(chip, 0, 2) * 0.0625).isEqualTo(25);
    }

    // from memory (DS20005426C, sensor configuration): k = 2 / (2^n + 1); n = 2 leaves 0.6 of a step after one
    // conversion
    @Test
    void theFilterWeighsEachConversion() {
        write8(chip, 5, TYPE_T | 2);
        bench.pass(0.321);
        assertThat(read(chip, 0, 2) * 0.0625).isEqualTo(25);
        bench.hotCelsius = 75;

        bench.pass(0.320);
        assertThat(read(chip, 0, 2) * 0.0625).isCloseTo(75 - 50 * 0.6, within(0.04));
        bench.pass(0.640);

        assertThat(read(chip, 0, 2) * 0.0625).isCloseTo(75 - 50 * 0.216, within(0.04));
    }

    // published (NIST Monograph 175, types T and J at 50 degC: 2.035722 and 2.585315 mV)
    @Test
    void theWrongTypeReadsWrong() {
        write8(chip, 5, 0x10);
        bench.coldCelsius = 0;
        bench.hotCelsius = 50;

        bench.pass(1);

        assertThat(read(chip, 0, 2) * 0.0625).isCloseTo(50 * 2.035722 / 2.585315, within(0.04));
    }

    // published (DS20005426C, device configuration): shutdown is mode 1
    @Test
    void aChipThatIsShutDownConvertsNothing() {
        write8(chip, 6, 1);

        bench.pass(10);

        assertThat(read(chip, 4, 1)).isZero();
    }

    // published (DS20005426C, device configuration and p.28): burst of 8 samples is mode 2, bit 7 of STATUS at its end
    @Test
    void aBurstEndsOnceWithItsFlag() {
        write8(chip, 6, 3 << 2 | 2);
        bench.pass(8 * 0.320 - 0.001);
        assertThat(read(chip, 4, 1)).isZero();

        bench.pass(0.002);

        assertThat(read(chip, 4, 1) & 0xFF).isEqualTo(0xC0);
        write8(chip, 4, 0);
        bench.pass(10);
        assertThat(read(chip, 4, 1)).isZero();
    }

    @Test
    void theErrorOfTheSpecimenIsInTheHotJunctionOnly() {
        Mcp9601Emulator off = chip(new Mcp9601Emulator.Errors(-1.5, 0));
        write8(off, 5, TYPE_T);

        bench.pass(1);

        assertThat(read(off, 0, 2) * 0.0625).isEqualTo(23.5);
        assertThat(read(off, 2, 2) * 0.0625).isEqualTo(25);
    }

    @Test
    void aCopyGoesOnExactlyAsTheOriginal() {
        Mcp9601Emulator noisy = chip(new Mcp9601Emulator.Errors(0.3, 0.5));
        write8(noisy, 5, TYPE_T | 3);
        bench.pass(1);
        assertThat(read(noisy, 0, 2)).isPositive();

        Mcp9601Emulator copy = noisy.copy(bench);
        bench.pass(1);

        assertThat(read(copy, 0, 2)).isEqualTo(read(noisy, 0, 2));
    }

    @Test
    void whatTheDatasheetDoesNotListIsNotAcknowledged() {
        assertThat(chip.written(new byte[] {7}, 0, 1)).isEqualTo(-1);
        assertThat(chip.written(new byte[] {0x14}, 0, 1)).isEqualTo(-1);
        assertThat(write8(chip, 0x20, 0)).isEqualTo(-1);
    }

    private Mcp9601Emulator chip(Mcp9601Emulator.Errors errors) {
        return new Mcp9601Emulator(bench, errors, Chance.of(5, "probe", "noise"));
    }
}
