package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rigwarden.emulated.Bench.read;
import static rigwarden.emulated.Bench.unsigned16;
import static rigwarden.emulated.Bench.write16;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.pack.Chance;

class Ads1115EmulatorTest {
    private final Bench bench = new Bench();
    private final Ads1115Emulator chip = chip(Ads1115Emulator.Errors.none(5.0));

    // published (TI SBAS444E, section 8.1, registers)
    @Test
    void registersHoldTheirResetValuesAfterPowerUp() {
        assertThat(unsigned16(chip, 0)).isZero();
        assertThat(unsigned16(chip, 1)).isEqualTo(0x8583);
        assertThat(unsigned16(chip, 2)).isEqualTo(0x8000);
        assertThat(unsigned16(chip, 3)).isEqualTo(0x7FFF);
    }

    // published (TI SBAS444E, section on data format and Table of PGA); computed: config words C383h and so on
    @ParameterizedTest
    @CsvSource({
        "0xC383, 3.200, 25600", "0xC383, 3.584, 28672", "0xC383, 0.000125, 1", "0xC383, 0, 0", "0xC383, 4.3, 32767",
        "0xC183, 3.0, 16000", "0xC583, 1.0, 16000", "0xC783, 0.5, 16000", "0xC983, 0.25, 16000", "0xCB83, 0.125, 16000"
    })
    void aSingleShotReadsTheFirstInputInEachRange(String config, double volts, int code) {
        bench.pins[0] = volts;
        write16(chip, 1, Integer.decode(config));

        bench.pass(1);

        assertThat(read(chip, 0, 2)).isEqualTo(code);
    }

    // published (TI SBAS444E, section 8.1.3, MUX); computed: C383h, D383h, E383h, F383h
    @ParameterizedTest
    @CsvSource({"0xC383, 8000", "0xD383, 9000", "0xE383, 10000", "0xF383, 12000", "0x8383, -1000", "0x9383, -4000",
        "0xA383, -3000", "0xB383, -2000"})
    void theMultiplexerPicksInputsAndPairs(String config, int code) {
        bench.pins[0] = 1.0;
        bench.pins[1] = 1.125;
        bench.pins[2] = 1.25;
        bench.pins[3] = 1.5;
        write16(chip, 1, Integer.decode(config));

        bench.pass(1);

        assertThat(read(chip, 0, 2)).isEqualTo(code);
    }

    // published (TI SBAS444E, section on data format): <= -FS is 8000h
    @Test
    void aDifferenceClipsAtNegativeFullScale() {
        bench.pins[1] = 4.5;
        write16(chip, 1, 0x8383);

        bench.pass(1);

        assertThat(unsigned16(chip, 0)).isEqualTo(0x8000);
    }

    // published (TI SBAS444E, input limits): inputs within GND and VDD
    @Test
    void anInputAboveTheSupplyReadsTheSupplyWhateverTheRange() {
        Ads1115Emulator low = chip(Ads1115Emulator.Errors.none(3.3));
        bench.pins[0] = 3.65;
        write16(low, 1, 0xC383);

        bench.pass(1);

        assertThat(read(low, 0, 2)).isEqualTo(26400);
    }

    // published (TI SBAS444E): conversion time is 1/DR, here 1/128 s; from memory: OS reads 0 while converting
    @Test
    void aSingleShotIsBusyForOneConversionAndShowsItsSampleAfterIt() {
        bench.pins[0] = 2.0;
        write16(chip, 1, 0xC383);
        bench.pins[0] = 1.0;

        bench.pass(0.0078);
        assertThat(unsigned16(chip, 1)).isEqualTo(0x4383);
        assertThat(read(chip, 0, 2)).isZero();

        bench.pass(0.0001);
        assertThat(unsigned16(chip, 1)).isEqualTo(0xC383);
        assertThat(read(chip, 0, 2)).isEqualTo(16000);
    }

    // published (TI SBAS444E): data rate within 10 %
    @Test
    void aSlowSpecimenTakesTenPerCentLonger() {
        Ads1115Emulator slow = chip(new Ads1115Emulator.Errors(new double[8], new double[4], 0.1, 5, 0));
        write16(slow, 1, 0xC383);

        bench.pass(1.0 / 128 * 1.099);
        assertThat(unsigned16(slow, 1) & 0x8000).isZero();

        bench.pass(1.0 / 128 * 0.002);
        assertThat(unsigned16(slow, 1) & 0x8000).isNotZero();
    }

    // published (TI SBAS444E, MODE); computed: 4483h is continuous, first input, 2.048 V, 128 a second
    @Test
    void aContinuousChipFollowsItsInput() {
        bench.pins[0] = 1.0;
        write16(chip, 1, 0x4483);
        bench.pass(0.01);
        assertThat(read(chip, 0, 2)).isEqualTo(16000);

        bench.pins[0] = 0.5;
        assertThat(read(chip, 0, 2)).as("no new conversion yet").isEqualTo(16000);
        bench.pass(0.008);

        assertThat(read(chip, 0, 2)).isEqualTo(8000);
        assertThat(unsigned16(chip, 1)).isEqualTo(0x4483);
    }

    @Test
    void gainOffsetAndNoiseAreThoseOfTheSpecimen() {
        double[] gains = {0, 0.0015, 0, 0, 0, 0, 0, 0};
        double[] offsets = {0, 0, -0.001, 0};
        Ads1115Emulator off = chip(new Ads1115Emulator.Errors(gains, offsets, 0, 5, 0));
        bench.pins[2] = 3.0;
        write16(off, 1, 0xE383);

        bench.pass(1);

        assertThat(read(off, 0, 2) * 125e-6).isCloseTo(2.999 * 1.0015, within(0.07e-3));
    }

    @Test
    void aCopyGoesOnExactlyAsTheOriginalInTheMiddleOfAConversion() {
        Ads1115Emulator noisy = chip(new Ads1115Emulator.Errors(new double[8], new double[4], 0.02, 5, 1e-3));
        bench.pins[0] = 2;
        write16(noisy, 1, 0xC383);
        bench.pass(0.004);

        Ads1115Emulator copy = noisy.copy(bench);
        bench.pass(0.005);

        assertThat(read(copy, 0, 2)).isEqualTo(read(noisy, 0, 2)).isNotZero();
        write16(copy, 1, 0xC383);
        write16(noisy, 1, 0xC383);
        bench.pass(0.01);
        assertThat(read(copy, 0, 2)).isEqualTo(read(noisy, 0, 2));
    }

    @Test
    void whatTheDatasheetDoesNotListIsNotAcknowledged() {
        assertThat(chip.written(new byte[] {4}, 0, 1)).isEqualTo(-1);
        assertThat(write16(chip, 0, 1)).isEqualTo(-1);
    }

    private Ads1115Emulator chip(Ads1115Emulator.Errors errors) {
        return new Ads1115Emulator(bench, errors, Chance.of(3, "tap", "noise"));
    }
}
