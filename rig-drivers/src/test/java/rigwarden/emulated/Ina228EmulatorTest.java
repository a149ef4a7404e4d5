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

class Ina228EmulatorTest {
    private final Bench bench = new Bench();
    private final Ina228Emulator chip = chip(Ina228Emulator.Errors.NONE);

    // published (TI SLYS021A, register map, as in five public drivers); DEVICE_ID and limits from memory (the same)
    @ParameterizedTest
    @CsvSource({
        "0x00, 0x0000", "0x01, 0xFB68", "0x02, 0x1000", "0x03, 0x0000", "0x06, 0x0000", "0x0B, 0x0001", "0x0C, 0x7FFF",
        "0x0D, 0x8000", "0x0E, 0x7FFF", "0x0F, 0x0000", "0x10, 0x7FFF", "0x11, 0xFFFF", "0x3E, 0x5449", "0x3F, 0x2281"
    })
    void registersHoldTheirResetValuesAfterPowerUp(String register, String word) {
        assertThat(unsigned16(chip, Integer.decode(register))).isEqualTo(Integer.decode(word));
    }

    // published (TI SLYS021A, section 8.2, Tables 8-3 and 8-4: 10 A, 16.2 mOhm, 48 V, 6 A, 1 h)
    @Test
    void theWorkedExampleOfTheDatasheetComesOut() {
        bench.shuntVolts = 0.0972;
        bench.busVolts = 48;
        write16(chip, 0x02, 4050);

        bench.pass(1);

        assertThat(read(chip, 0x04, 3) >> 4).isEqualTo(311040);
        assertThat(read(chip, 0x05, 3) >> 4).isEqualTo(245760);
        assertThat(read(chip, 0x06, 2)).isEqualTo(3200);
        assertThat(read(chip, 0x07, 3) >> 4).isEqualTo(314572);
        // the table prints 4718604, 2.5 ppm above 288 W; codes cut to integers on the way allow 4718580
        assertThat(read(chip, 0x08, 3)).isBetween(4718580L, 4718604L);
        write16(chip, 0x00, 0x4000);
        bench.pass(3600);
        assertThat(read(chip, 0x0A, 5)).isCloseTo(1132462080L, within(2000L));
        assertThat(read(chip, 0x09, 5)).isCloseTo(1061683200L, within(2000L));
    }

    // published (TI SLYS021A, section 8.2, negative example): B4100h in 20 bits is -97.2 mV
    @Test
    void aNegativeShuntVoltageIsLeftAlignedInTwosComplement() {
        bench.shuntVolts = -0.0972;

        bench.pass(1);

        assertThat(read(chip, 0x04, 3) & 0xFFFFFF).isEqualTo(0xB41000);
    }

    // published (TI SLYS022A, Table 8-1), computed: 250 uOhm, 100 A
    @Test
    void theFineRangeIsFourTimesFinerAndNeedsFourTimesTheCalibration() {
        bench.shuntVolts = 0.025;
        write16(chip, 0x02, 2048);
        bench.pass(1);
        assertThat(read(chip, 0x04, 3) >> 4).isEqualTo(80000);
        assertThat(read(chip, 0x07, 3) >> 4).isEqualTo(160000);

        write16(chip, 0x00, 0x0010);
        write16(chip, 0x02, 4096);
        bench.pass(1);

        assertThat(read(chip, 0x04, 3) >> 4).isEqualTo(320000);
        assertThat(read(chip, 0x07, 3) >> 4).isEqualTo(320000);
    }

    // published (TI SLYS022A, Table 8-1): 163.84 mV and 85 V are full scale
    @Test
    void inputsClipAtFullScale() {
        bench.shuntVolts = 0.2;
        bench.busVolts = 90;
        write16(chip, 0x02, 2048);

        bench.pass(1);

        assertThat(read(chip, 0x04, 3) >> 4).isEqualTo(524287);
        assertThat(read(chip, 0x05, 3) >> 4).isEqualTo(435200);
        assertThat(read(chip, 0x07, 3) >> 4).isEqualTo(524287);
        assertThat(unsigned16(chip, 0x0B) & 1 << 9).as("MATHOF").isNotZero();
    }

    // published (TI SLYS021A, ADC_CONFIG): FB68h is three conversions of 1052 us without averaging, 3156 us
    @Test
    void nothingIsReadBeforeTheFirstCycleHasEnded() {
        bench.shuntVolts = 0.0972;

        bench.pass(3155e-6);
        assertThat(read(chip, 0x04, 3)).isZero();
        assertThat(unsigned16(chip, 0x0B)).isEqualTo(0x0001);

        bench.pass(1e-6);
        assertThat(read(chip, 0x04, 3) >> 4).isEqualTo(311040);
    }

    // from memory (TI SLYS021A, DIAG_ALRT): CNVRF is bit 1 and cleared by reading
    @Test
    void readyIsSetByEachCycleAndClearedByReadingIt() {
        bench.pass(3156e-6);

        assertThat(unsigned16(chip, 0x0B)).isEqualTo(0x0003);
        assertThat(unsigned16(chip, 0x0B)).isEqualTo(0x0001);
        bench.pass(3156e-6);
        assertThat(unsigned16(chip, 0x0B)).isEqualTo(0x0003);
    }

    // published (TI SLYS021A, ADC_CONFIG; MODE Ah, shunt only, from memory): VSHCT 7 4120 us, AVG 3 64, a
    // cycle of 263.68 ms
    @Test
    void aSlowClockMakesTheCycleLonger() {
        Ina228Emulator slow = chip(new Ina228Emulator.Errors(0, 0, 0, -0.005, 0));
        write16(slow, 0x01, 0xA1C3);

        bench.pass(0.26368);
        assertThat(unsigned16(slow, 0x0B)).isEqualTo(0x0001);

        bench.pass(0.26368 / 0.995 - 0.26368 + 1e-6);
        assertThat(unsigned16(slow, 0x0B)).isEqualTo(0x0003);
    }

    // published (TI SLYS021A, electrical characteristics): oscillator within 0.5 %; the accumulators run on it
    @Test
    void chargeIsCountedOnTheChipsClock() {
        Ina228Emulator fast = chip(new Ina228Emulator.Errors(0, 0, 0, 0.005, 0));
        bench.shuntVolts = -0.025;
        write16(fast, 0x02, 2048);

        bench.pass(3600);

        assertThat(read(fast, 0x0A, 5) * 625e-6).isCloseTo(-100 * 3600 * 1.005, within(1.0));
        assertThat(read(fast, 0x07, 3) >> 4).as("current is free of the clock").isEqualTo(-160000);
    }

    // from memory (TI SLYS021A, CONFIG): RSTACC clears both sums, RST everything, both read back as 0
    @Test
    void theSumsAndTheRegistersCanBeReset() {
        bench.shuntVolts = 0.025;
        write16(chip, 0x02, 2048);
        bench.pass(10);
        assertThat(read(chip, 0x0A, 5)).isPositive();

        write16(chip, 0x00, 0x4010);
        assertThat(read(chip, 0x0A, 5)).isZero();
        assertThat(unsigned16(chip, 0x00)).isEqualTo(0x0010);

        write16(chip, 0x00, 0x8000);
        assertThat(unsigned16(chip, 0x00)).isZero();
        assertThat(unsigned16(chip, 0x02)).isEqualTo(0x1000);
        assertThat(read(chip, 0x04, 3)).isZero();
    }

    // computed from the published scale: 2^39 codes of 625 uA s at 327.68 A are 2^20 s
    @Test
    void chargeWrapsAtFortyBitsAndSaysSo() {
        bench.shuntVolts = 0.08;
        write16(chip, 0x02, 2048);

        bench.pass((1 << 20) * 327.68 / 320 + 1);

        assertThat(unsigned16(chip, 0x0B) & 1 << 10).as("CHARGEOF").isNotZero();
        assertThat(read(chip, 0x0A, 5)).isNegative();
    }

    // common practice (no source): averaging of n conversions divides white noise by the root of n
    @Test
    void noiseFallsWithTheRootOfTheAverages() {
        Ina228Emulator noisy = chip(new Ina228Emulator.Errors(0, 0, 0, 0, 10e-6));
        double single = spread(noisy, 0xA000);
        double averaged = spread(noisy, 0xA002);

        assertThat(single).isCloseTo(32, within(2.0));
        assertThat(averaged).isCloseTo(8, within(0.5));
    }

    @Test
    void gainAndOffsetShiftTheShuntAndTheBus() {
        Ina228Emulator off = chip(new Ina228Emulator.Errors(0.01, -1e-5, 0.002, 0, 0));
        bench.shuntVolts = 0.1;
        bench.busVolts = 3.2;

        bench.pass(1);

        assertThat((read(off, 0x04, 3) >> 4) * 312.5e-9).isCloseTo(0.10099, within(2e-7));
        assertThat((read(off, 0x05, 3) >> 4) * 195.3125e-6).isCloseTo(3.2064, within(1e-4));
    }

    // from memory (TI SLYS021A, ADC_CONFIG): MODE 2h converts the shunt once
    @Test
    void aTriggeredChipConvertsOnceAndDoesNotCountCharge() {
        bench.shuntVolts = 0.025;
        write16(chip, 0x01, 0x2000);
        bench.pass(1);
        assertThat(unsigned16(chip, 0x0B)).isEqualTo(0x0003);

        bench.pass(1);

        assertThat(unsigned16(chip, 0x0B)).isEqualTo(0x0001);
        assertThat(read(chip, 0x0A, 5)).isZero();
    }

    @Test
    void aCopyGoesOnExactlyAsTheOriginal() {
        Ina228Emulator noisy = chip(new Ina228Emulator.Errors(0.001, 1e-6, 0, 0.003, 5e-6));
        bench.shuntVolts = 0.02;
        bench.pass(5);
        assertThat(read(noisy, 0x07, 3)).isPositive();

        Ina228Emulator copy = noisy.copy(bench);
        bench.pass(7);

        assertThat(read(copy, 0x07, 3)).isEqualTo(read(noisy, 0x07, 3));
        assertThat(read(copy, 0x0A, 5)).isEqualTo(read(noisy, 0x0A, 5));
        assertThat(read(copy, 0x09, 5)).isEqualTo(read(noisy, 0x09, 5));
    }

    @Test
    void whatTheDatasheetDoesNotListIsNotAcknowledged() {
        assertThat(chip.written(new byte[] {0x12}, 0, 1)).isEqualTo(-1);
        assertThat(write16(chip, 0x3E, 0)).isEqualTo(-1);
        assertThat(chip.written(new byte[] {0x02, 0x10}, 0, 2)).isEqualTo(-1);
    }

    private double spread(Ina228Emulator noisy, int adcConfig) {
        write16(noisy, 0x01, adcConfig);
        int count = 2000;
        double squares = 0;
        for (int i = 0; i < count; i++) {
            bench.pass(0.01);
            double code = read(noisy, 0x04, 3) >> 4;
            squares += code * code;
        }
        return Math.sqrt(squares / count);
    }

    private Ina228Emulator chip(Ina228Emulator.Errors errors) {
        return new Ina228Emulator(bench, errors, Chance.of(7, "shunt", "noise"));
    }
}
