package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rigwarden.emulated.SpiBench.frame;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.pack.Chance;

class Max31855EmulatorTest {
    /** V/K of the version for type K: table 1 of the sheet, from memory. */
    private static final double MICROVOLTS = 41.276;

    private final SpiBench bench = new SpiBench();
    private final Max31855Emulator chip = chip(Max31855Emulator.Errors.NONE);

    // published (Maxim 19-5793 rev 5, table 4: thermocouple temperature)
    @ParameterizedTest
    @CsvSource({
        "1600.00, 64 00", "1000.00, 3E 80", "100.75, 06 4C", "25.00, 01 90", "0.00, 00 00", "-0.25, FF FC",
        "-1.00, FF F0", "-250.00, F0 60"
    })
    void theThermocouplesBitsAreThoseOfTheSheetsTable(double celsius, String upperHalf) {
        bench.coldCelsius = 0;
        bench.emfMillivolts = celsius * MICROVOLTS * 1e-3;

        bench.pass(1);

        assertThat(frame(chip, "00 00 00 00")).isEqualTo(upperHalf + " 00 00");
    }

    // published (Maxim 19-5793 rev 5, table 5: reference junction temperature)
    @ParameterizedTest
    @CsvSource({
        "127.0000, 7F 00", "100.5625, 64 90", "25.0000, 19 00", "0.0000, 00 00", "-0.0625, FF F0", "-1.0000, FF 00",
        "-20.0000, EC 00", "-55.0000, C9 00"
    })
    void theJunctionsBitsAreThoseOfTheSheetsTable(double celsius, String lowerHalf) {
        bench.coldCelsius = celsius;

        bench.pass(1);

        assertThat(frame(chip, "00 00 00 00")).endsWith(lowerHalf);
    }

    // published (Maxim 19-5793 rev 5, table 2: D16 and D2 to D0), frames computed in the project's check values
    @Test
    void eachFaultHasItsBitAndTheCommonOne() {
        bench.open = true;
        bench.pass(1);
        assertThat(frame(chip, "00 00 00 00")).isEqualTo("00 01 19 01");

        bench.open = false;
        bench.shortedToGround = true;
        bench.pass(1);
        assertThat(frame(chip, "00 00 00 00")).isEqualTo("00 01 19 02");

        bench.shortedToGround = false;
        bench.shortedToSupply = true;
        bench.pass(1);
        assertThat(frame(chip, "00 00 00 00")).isEqualTo("00 01 19 04");
    }

    // published (sheet's formula V = Sk (Tr − Tamb)); Sk from memory. K at 100 °C from 25 °C gives 3.096 mV
    @Test
    void aProbeAtAHundredDegreesIsReadAsTheStraightLineHasIt() {
        bench.tip(Couple.K, 100);

        bench.pass(1);

        String read = frame(chip, "00 00 00 00");
        double celsius = (Integer.parseInt(read.substring(0, 5).replace(" ", ""), 16) >> 2) * 0.25;
        assertThat(celsius).isCloseTo(25 + 3096 / MICROVOLTS, within(0.13)).isCloseTo(100, within(0.3));
    }

    // from memory (sheet, electrical characteristics): 200 ms from power-up to the first result, 70 ms for each further
    @Test
    void theFrameIsEmptyUntilTheFirstConversionAndOldUntilTheNext() {
        chip.powerOnReset();
        bench.pass(0.199);
        assertThat(frame(chip, "00 00 00 00")).isEqualTo("00 00 00 00");
        bench.pass(0.002);
        assertThat(frame(chip, "00 00 00 00")).isEqualTo("01 90 19 00");
        bench.coldCelsius = 0;

        bench.pass(0.068);
        assertThat(frame(chip, "00 00 00 00")).isEqualTo("01 90 19 00");
        bench.pass(0.002);

        assertThat(frame(chip, "00 00 00 00")).isEqualTo("00 00 00 00");
    }

    @Test
    void aReadThatIsCutShortBeginsAgainWithTheFirstBit() {
        bench.pass(1);

        assertThat(frame(chip, "00 00")).isEqualTo("01 90");
        assertThat(frame(chip, "00 00 00 00 00")).isEqualTo("01 90 19 00 00");
    }

    @Test
    void aDipOfTheSupplyEmptiesTheFrame() {
        bench.pass(1);
        FaultySpiTarget faulty = new FaultySpiTarget(chip);

        faulty.set(ChipFault.Plain.BROWN_OUT);

        assertThat(frame(faulty, "00 00 00 00")).isEqualTo("00 00 00 00");
        bench.pass(0.201);
        assertThat(frame(faulty, "00 00 00 00")).isEqualTo("01 90 19 00");
    }

    @Test
    void theErrorOfTheOwnTemperatureIsInBothHalves() {
        Max31855Emulator off = chip(new Max31855Emulator.Errors(-1, 0.5, 0, 0));

        bench.pass(1);

        assertThat(frame(off, "00 00 00 00")).isEqualTo("01 88 19 80");
    }

    @Test
    void aCopyGoesOnExactlyAsTheOriginal() {
        Max31855Emulator noisy = chip(new Max31855Emulator.Errors(0, 0, 2, 0.3));
        bench.pass(1);
        String before = frame(noisy, "00 00 00 00");

        Max31855Emulator copy = noisy.copy(bench);
        assertThat(frame(copy, "00 00 00 00")).isEqualTo(before);
        bench.pass(1);

        assertThat(frame(copy, "00 00 00 00")).isEqualTo(frame(noisy, "00 00 00 00")).isNotEqualTo(before);
    }

    private Max31855Emulator chip(Max31855Emulator.Errors errors) {
        return new Max31855Emulator(Max31855Emulator.Version.K, bench, errors, Chance.of(7, "probe", "noise"));
    }
}
