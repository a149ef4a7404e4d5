package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static rigwarden.emulated.SpiBench.frame;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.pack.Chance;

class Max31856EmulatorTest {
    private static final String HOT = "0C 00 00 00";
    private static final String COLD = "0A 00 00";
    private static final String STATUS = "0F 00";

    private final SpiBench bench = new SpiBench();
    private final Max31856Emulator chip = chip(Max31856Emulator.Errors.NONE);

    // published (addresses: Linux driver of the chip); from memory (Maxim 19-7534, table of registers): defaults
    @Test
    void registersHoldTheirFactoryDefaults() {
        String all = frame(chip, "00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00 00");

        assertThat(all).isEqualTo("FF 00 03 FF 7F C0 7F FF 80 00 00 00 00 00 00 00 00");
    }

    // published (check values 2.6: rows of the sheet's table from memory, codes computed); type K
    @ParameterizedTest
    @CsvSource({
        "1000.0000, 3E 80 00", "100.9375, 06 4F 00", "25.0000, 01 90 00", "0.0625, 00 01 00", "0.0000, 00 00 00",
        "-0.0625, FF FF 00", "-0.2500, FF FC 00", "-1.0000, FF F0 00"
    })
    void theTemperatureIsANineteenBitCodeOfA128thOfAKelvin(double celsius, String code) {
        bench.tip(Couple.K, celsius);
        frame(chip, "80 80");

        bench.pass(1);

        assertThat(frame(chip, HOT)).isEqualTo("FF " + code);
    }

    // published (check values 2.6, codes of the cold junction computed)
    @ParameterizedTest
    @CsvSource({
        "127.984375, 7F FC", "127, 7F 00", "125, 7D 00", "64, 40 00", "25, 19 00", "0.5, 00 80", "0.015625, 00 04",
        "0, 00 00", "-0.5, FF 80", "-25, E7 00", "-55, C9 00"
    })
    void theColdJunctionIsAFourteenBitCodeOfA64thOfAKelvin(double celsius, String code) {
        bench.coldCelsius = celsius;
        frame(chip, "80 80");

        bench.pass(1);

        assertThat(frame(chip, COLD)).isEqualTo("FF " + code);
    }

    // published (Linux driver: CJTO is signed, 0.0625 K a step, and CJT has it in already)
    @Test
    void theOffsetIsSignedAndInTheColdJunctionAndInTheTemperature() {
        bench.tip(Couple.K, 25);
        frame(chip, "89 F0");
        frame(chip, "80 80");

        bench.pass(1);

        assertThat(frame(chip, COLD)).isEqualTo("FF 18 00");
        assertThat(Integer.parseInt(frame(chip, HOT).substring(3, 8).replace(" ", ""), 16) / 16.0).isBetween(23.9, 24.1);
    }

    // from memory (sheet, electrical characteristics): single or first 143 ms at 60 Hz, 169 ms at 50 Hz; 33.33 ms and 40 ms
    // for each further sample; open tests 40, 60 and 140 ms; 25 ms less without the cold junction
    @ParameterizedTest
    @CsvSource({"40, 03, 0.143", "41, 03, 0.169", "40, 43, 0.64295", "41, 23, 0.289", "50, 03, 0.183", "60, 03, 0.203",
        "70, 03, 0.283", "48, 03, 0.118", "78, 03, 0.2314"})
    void aSingleConversionTakesItsTimeAndThenTakesItsBitAway(String control, String settings, double seconds) {
        bench.tip(Couple.K, 50);
        frame(chip, "81 " + settings);
        frame(chip, "80 " + control);

        bench.pass(seconds - 0.001);
        assertThat(chip.readyPinHigh()).isTrue();
        assertThat(frame(chip, "00 00")).isEqualTo("FF " + control);
        bench.pass(0.002);

        assertThat(chip.readyPinHigh()).isFalse();
        int left = Integer.parseInt(control, 16) & ~0x40;
        assertThat(frame(chip, "00 00")).isEqualTo(String.format("FF %02X", left));
    }

    // from memory (sheet): DRDY rises when the last of the three bytes is read
    @Test
    void theReadyPinTellsWhetherTheDataAreNewerThanTheLastRead() {
        frame(chip, "80 80");
        bench.pass(0.144);
        assertThat(chip.readyPinHigh()).isFalse();

        frame(chip, "0C 00 00");
        assertThat(chip.readyPinHigh()).isFalse();
        frame(chip, HOT);
        assertThat(chip.readyPinHigh()).isTrue();
        bench.pass(0.080);
        assertThat(chip.readyPinHigh()).isTrue();
        bench.pass(0.003);

        assertThat(chip.readyPinHigh()).isFalse();
    }

    // from memory (sheet): by itself it converts every 82 ms at 60 Hz, 98 ms at 50 Hz; nothing before it is told to
    @Test
    void aChipThatWasNeverStartedReadsZeroForEver() {
        bench.tip(Couple.K, 80);

        bench.pass(100);

        assertThat(frame(chip, HOT)).isEqualTo("FF 00 00 00");
        assertThat(frame(chip, STATUS)).isEqualTo("FF 00");
    }

    // published (NIST Monograph 175, types T and K at 50 °C from 0 °C)
    @Test
    void theWrongTypeReadsWrong() {
        bench.coldCelsius = 0;
        bench.tip(Couple.T, 50);
        frame(chip, "81 02");
        frame(chip, "80 80");

        bench.pass(1);

        double celsius = Integer.parseInt(frame(chip, HOT).substring(3, 8).replace(" ", ""), 16) / 16.0;
        assertThat(celsius).isBetween(39.3, 39.8);
    }

    // from memory (sheet, SR and OCFAULT): bit 0 is seen only where the circuit is tested
    @Test
    void anOpenProbeThatIsNotTestedForReadsTheColdJunctionWithoutAWord() {
        bench.tip(Couple.K, 80);
        bench.open = true;
        frame(chip, "80 80");

        bench.pass(1);

        assertThat(frame(chip, HOT)).isEqualTo("FF 01 90 00");
        assertThat(frame(chip, STATUS)).isEqualTo("FF 00");
    }

    // from memory (sheet): in automatic mode the circuit is tested once in sixteen conversions
    @Test
    void anOpenProbeIsSeenWithinSixteenConversions() {
        frame(chip, "80 90");
        bench.pass(0.5);
        assertThat(frame(chip, STATUS)).isEqualTo("FF 00");
        bench.open = true;

        bench.pass(0.3);
        assertThat(frame(chip, STATUS)).isEqualTo("FF 00");
        bench.pass(1.2);

        assertThat(frame(chip, STATUS)).isEqualTo("FF 01");
    }

    // from memory (sheet, CR0 bits 2 and 1, MASK): the interrupt mode keeps a fault until it is cleared, MASK hides it from
    // the pin only
    @Test
    void aLatchedFaultStaysUntilItIsClearedAndThePinShowsOnlyWhatIsNotMasked() {
        frame(chip, "80 84");
        bench.outsideSupply = true;
        assertThat(frame(chip, STATUS)).isEqualTo("FF 02");
        bench.outsideSupply = false;
        assertThat(frame(chip, STATUS)).isEqualTo("FF 02");
        assertThat(chip.faultPinHigh()).isTrue();

        frame(chip, "82 FD");
        assertThat(chip.faultPinHigh()).isFalse();
        frame(chip, "80 86");

        assertThat(frame(chip, STATUS)).isEqualTo("FF 00");
        assertThat(frame(chip, "00 00")).isEqualTo("FF 84");
        assertThat(chip.faultPinHigh()).isTrue();
    }

    // from memory (sheet): comparator mode follows; while an input is outside the supply nothing is converted
    @Test
    void anInputOutsideTheSupplyStopsTheConversions() {
        bench.tip(Couple.K, 40);
        frame(chip, "80 80");
        bench.pass(1);
        String before = frame(chip, HOT);
        bench.tip(Couple.K, 90);
        bench.outsideSupply = true;

        bench.pass(1);

        assertThat(frame(chip, STATUS)).isEqualTo("FF 02");
        assertThat(frame(chip, HOT)).isEqualTo(before);
        assertThat(chip.readyPinHigh()).isTrue();
        bench.outsideSupply = false;
        bench.pass(0.1);
        assertThat(frame(chip, STATUS)).isEqualTo("FF 00");
    }

    // from memory (sheet, SR bits 7 to 2 and the limits' registers, 0.0625 K and 1 K a step)
    @Test
    void eachLimitHasItsBit() {
        frame(chip, "83 1E 0A 04 B0 03 20");
        frame(chip, "80 80");
        bench.tip(Couple.K, 76);
        bench.pass(1);
        assertThat(frame(chip, STATUS)).isEqualTo("FF 08");
        bench.tip(Couple.K, 49);
        bench.pass(1);
        assertThat(frame(chip, STATUS)).isEqualTo("FF 04");
        bench.coldCelsius = 31;
        bench.tip(Couple.K, 60);
        bench.pass(1);
        assertThat(frame(chip, STATUS)).isEqualTo("FF 20");
        bench.coldCelsius = 9;
        bench.tip(Couple.K, 60);

        bench.pass(1);

        assertThat(frame(chip, STATUS)).isEqualTo("FF 10");
    }

    // from memory (sheet, SR bits 7 and 6): −55 to 125 °C of its own, and the range of the type
    @Test
    void whatIsOutsideARangeIsMarked() {
        frame(chip, "81 07");
        frame(chip, "80 80");
        bench.emfMillivolts = 25;
        bench.pass(1);
        assertThat(frame(chip, STATUS)).isEqualTo("FF 40");
        assertThat(frame(chip, HOT)).isEqualTo("FF 19 00 00");
        bench.emfMillivolts = 0;
        bench.coldCelsius = 126;

        bench.pass(1);

        assertThat(frame(chip, STATUS)).isEqualTo("FF 80");
    }

    // from memory (sheet): CJTH and CJTL can be written only with the sensor off, results never
    @Test
    void theColdJunctionCanBeGivenByTheHostWhereItsSensorIsOff() {
        bench.tip(Couple.K, 25);
        frame(chip, "8A 20 00");
        frame(chip, "8C 11 11 11");
        assertThat(frame(chip, "0A 00 00 00 00 00")).isEqualTo("FF 00 00 00 00 00");
        frame(chip, "80 08");
        frame(chip, "8A 20 00");
        frame(chip, "80 48");

        bench.pass(1);

        assertThat(frame(chip, "0A 00 00 00 00 00")).isEqualTo("FF 20 00 02 00 00");
    }

    // from memory (sheet): a dip of the supply leaves the defaults, which do not convert
    @Test
    void aDipOfTheSupplyEndsTheConversions() {
        bench.tip(Couple.K, 60);
        frame(chip, "80 81 07");
        bench.pass(1);
        FaultySpiTarget faulty = new FaultySpiTarget(chip);

        faulty.set(ChipFault.Plain.BROWN_OUT);
        bench.pass(10);

        assertThat(frame(faulty, "00 00 00")).isEqualTo("FF 00 03");
        assertThat(frame(faulty, HOT)).isEqualTo("FF 00 00 00");
    }

    @Test
    void averagesMakeANoisyProbeQuieter() {
        double single = spread("03");
        double sixteen = spread("43");

        assertThat(sixteen / single).isBetween(0.2, 0.31);
    }

    @Test
    void aCopyGoesOnExactlyAsTheOriginalInTheMiddleOfAConversion() {
        Max31856Emulator noisy = chip(new Max31856Emulator.Errors(0.1, 0.2, 0.5, 0.05));
        frame(noisy, "80 C0");
        bench.pass(0.07);

        Max31856Emulator copy = noisy.copy(bench);
        bench.pass(5);

        assertThat(frame(copy, HOT)).isEqualTo(frame(noisy, HOT)).isNotEqualTo("FF 00 00 00");
    }

    private double spread(String settings) {
        Max31856Emulator noisy = chip(new Max31856Emulator.Errors(0, 0, 0.5, 0));
        bench.tip(Couple.K, 40);
        frame(noisy, "81 " + settings);
        frame(noisy, "80 80");
        double squares = 0;
        for (int i = 0; i < 400; i++) {
            bench.pass(1);
            int code = Integer.parseInt(frame(noisy, HOT).substring(3).replace(" ", ""), 16);
            squares += Math.pow((code >> 5) / 128.0 - 40, 2);
        }
        return Math.sqrt(squares / 400);
    }

    private Max31856Emulator chip(Max31856Emulator.Errors errors) {
        return new Max31856Emulator(bench, errors, Chance.of(5, "probe", "noise"));
    }
}
