package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rigwarden.emulated.SpiBench.frame;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.pack.Chance;

class Ads1220EmulatorTest {
    private static final double REFERENCE = 2.048;
    private static final String READ = "10 00 00 00";

    private final SpiBench bench = new SpiBench();
    private final Ads1220Emulator chip = awake(Ads1220Emulator.Errors.none(5));

    // from memory (TI SBAS501C, registers): all zero, RREG is 20h with first register and count less one
    @Test
    void registersAreZeroAfterPowerUpAndKeepWhatIsWritten() {
        assertThat(frame(chip, "23 00 00 00 00")).endsWith("00 00 00 00");

        frame(chip, "43 81 D4 51 02");

        assertThat(frame(chip, "23 00 00 00 00")).endsWith("81 D4 51 02");
        assertThat(frame(chip, "25 00 00")).endsWith("D4 51");
        frame(chip, "48 91");
        assertThat(frame(chip, "28 00")).endsWith("91");
    }

    // published (TI SBAS501C, data format: 7FFFFFh at and above full scale less one step, 800000h at and below minus full
    // scale; one step is 244.14 nV at gain 1), AIN0 against AIN1 without the amplifier
    @ParameterizedTest
    @CsvSource({
        "2.5, 2.5, 00 00 00", "2.500000244140625, 2.5, 00 00 01", "2.5, 2.500000244140625, FF FF FF", "3.524, 2.5, 40 00 00",
        "2.5, 3.524, C0 00 00", "4.6, 2.5, 7F FF FF", "2.5, 4.6, 80 00 00", "2.5, 4.548, 80 00 00"
    })
    void theCodeIsTwosComplementOfTwentyFourBits(double plus, double minus, String code) {
        bench.pins[0] = plus;
        bench.pins[1] = minus;
        frame(chip, "40 01");

        assertThat(single(chip)).isEqualTo(code);
    }

    // published (SBAS683B, section 8.6, config 0): multiplexer; 16384 steps a volt here
    @ParameterizedTest
    @CsvSource({
        "01, -0.1", "11, -0.3", "21, -0.6", "31, -0.2", "41, -0.5", "51, -0.3", "61, 0.1", "71, 0.3", "81, 1.0", "91, 1.1",
        "A1, 1.3", "B1, 1.6", "C1, 0.512", "D1, 1.25", "E1, 0"
    })
    void theMultiplexerPicksInputsPairsAndMonitors(String inputs, double volts) {
        bench.pins[0] = 1.0;
        bench.pins[1] = 1.1;
        bench.pins[2] = 1.3;
        bench.pins[3] = 1.6;
        frame(chip, "40" + inputs);

        assertThat(code(single(chip)) * REFERENCE / 0x1p23).isCloseTo(volts, within(0.3e-6));
    }

    // published (SBAS501C: LSB = 2 VREF / gain / 2^24)
    @ParameterizedTest
    @CsvSource({"0, 1", "2, 2", "4, 4", "6, 8", "8, 16", "A, 32", "C, 64", "E, 128"})
    void theGainMakesTheStepsSmaller(String gainBits, int gain) {
        bench.pins[0] = 2.505;
        bench.pins[1] = 2.495;
        frame(chip, "40 0" + gainBits);

        assertThat(code(single(chip))).isEqualTo((int) Math.round(0.010 * gain / REFERENCE * 0x1p23));
    }

    // from memory (SBAS501C, amplifier): outputs stay 0.2 V from the supply's ends; with 5 V and a common mode of 2.5 V half the
    // difference times the gain reaches 2.3 V
    @Test
    void theAmplifierClipsWhereItsOutputsEnd() {
        bench.pins[0] = 4.1;
        bench.pins[1] = 3.9;
        frame(chip, "40 06");

        String clipped = single(chip);

        assertThat(code(clipped) * REFERENCE / 8 / 0x1p23).isCloseTo((4.8 - 3.2) / 8, within(1e-6));
    }

    // from memory (SBAS501C): an input against ground needs the amplifier bypassed
    @Test
    void anInputAgainstGroundReadsWrongThroughTheAmplifierAndRightWithoutIt() {
        bench.pins[2] = 1.0;
        frame(chip, "40 A0");
        double through = code(single(chip)) * REFERENCE / 0x1p23;
        frame(chip, "40 A1");

        double without = code(single(chip)) * REFERENCE / 0x1p23;

        assertThat(through).isLessThan(0.9);
        assertThat(without).isCloseTo(1.0, within(1e-6));
    }

    // from memory (SBAS501C, gains from 8 on use the amplifier whatever the bypass bit says)
    @Test
    void theBypassBitIsIgnoredFromGainEightOn() {
        bench.pins[0] = 0.1;
        frame(chip, "40 87");

        assertThat(code(single(chip)) * REFERENCE / 8 / 0x1p23).isLessThan(0.09);
    }

    // published (SBAS501C, section 8.3.13: 0.03125 °C a step, 14 bits, left in the word)
    @ParameterizedTest
    @CsvSource({"50, 19 00 00", "-25, F3 80 00", "0.03125, 00 04 00", "0, 00 00 00"})
    void theOwnTemperatureHasFourteenBits(double celsius, String code) {
        bench.dieCelsius = celsius;
        frame(chip, "44 02");

        assertThat(single(chip)).isEqualTo(code);
    }

    // from memory (SBAS501C, table of conversion times, periods of 4.096 MHz)
    @ParameterizedTest
    @CsvSource({"00, 204850", "20, 91218", "40, 46226", "60, 23762", "80, 12562", "A0, 6994", "C0, 4242", "10, 102434",
        "D0, 2130"})
    void aSingleShotIsReadyAfterItsTime(String rates, int periods) {
        frame(chip, "44" + rates);
        frame(chip, "08");

        bench.pass(periods / 4.096e6 - 1e-6);
        assertThat(chip.readyPinHigh()).isTrue();
        bench.pass(2e-6);
        assertThat(chip.readyPinHigh()).isFalse();
        frame(chip, READ);
        bench.pass(10);

        assertThat(chip.readyPinHigh()).isTrue();
    }

    // from memory (SBAS501C): DRDY rises with the next clock, whatever is clocked
    @Test
    void theReadyPinRisesWithAnyClock() {
        frame(chip, "08");
        bench.pass(0.06);
        assertThat(chip.readyPinHigh()).isFalse();

        frame(chip, "20 00");

        assertThat(chip.readyPinHigh()).isTrue();
    }

    // from memory (SBAS501C): a fresh result goes out without an order, once; RDATA gives it again
    @Test
    void aFreshResultCanBeClockedOutDirectlyOnceAndByItsOrderAlways() {
        bench.pins[0] = 3.524;
        bench.pins[1] = 2.5;
        frame(chip, "40 01");
        frame(chip, "4C 02");
        frame(chip, "08");
        bench.pass(0.06);

        assertThat(frame(chip, "00 00 00")).isEqualTo("40 00 00");
        assertThat(frame(chip, "00 00 00")).isEqualTo("FF FF FF");
        assertThat(frame(chip, READ)).endsWith("40 00 00");
        frame(chip, "4C 00");
        assertThat(frame(chip, "00 00 00")).isEqualTo("00 00 00");
    }

    // from memory (SBAS501C): a continuous chip begins with START and goes on by itself
    @Test
    void aContinuousChipFollowsItsInputAfterItsStart() {
        frame(chip, "41 01 04");
        bench.pass(1);
        assertThat(chip.readyPinHigh()).isTrue();
        bench.pins[0] = 1;
        frame(chip, "08");
        bench.pass(0.051);
        assertThat(frame(chip, READ)).endsWith("3E 80 00");
        bench.pins[0] = 0.5;

        assertThat(frame(chip, READ)).endsWith("3E 80 00");
        bench.pass(0.05);
        assertThat(frame(chip, READ)).endsWith("1F 40 00");
        frame(chip, "02");
        bench.pass(1);
        assertThat(chip.readyPinHigh()).isFalse();
        bench.pins[0] = 1;
        bench.pass(1);
        assertThat(frame(chip, READ)).as("it has powered down").endsWith("1F 40 00");
    }

    // from memory (SBAS501C): a write to a register while a conversion is under way begins it anew; the old result stays until then
    @Test
    void aChangeOfTheInputGivesTheOldResultUntilAWholeConversionHasPassed() {
        bench.pins[0] = 1;
        bench.pins[1] = 0.5;
        frame(chip, "41 81 04");
        frame(chip, "08");
        bench.pass(0.090);

        frame(chip, "40 91");
        bench.pass(0.045);
        assertThat(chip.readyPinHigh()).isTrue();
        assertThat(frame(chip, READ)).endsWith("3E 80 00");
        bench.pass(0.006);

        assertThat(frame(chip, READ)).endsWith("1F 40 00");
    }

    @Test
    void whatHangsOnTheInputsMaySettleSlowly() {
        Ads1220Emulator slow = awake(new Ads1220Emulator.Errors(0, 0, 0, 0, 5, 0, 0.02));
        bench.pins[0] = 1;
        frame(slow, "41 81 C0");
        bench.pass(1);
        frame(slow, "40 91");

        frame(slow, "08");
        bench.pass(0.02);

        assertThat(code(frame(slow, READ).substring(3)) * REFERENCE / 0x1p23).isCloseTo(Math.exp(-1), within(1e-3));
    }

    // from memory (SBAS501C, config 2 bits 7 and 6): outer reference, and the supply
    @ParameterizedTest
    @CsvSource({"00, 2.048", "40, 2.5", "80, 1.25", "C0, 5"})
    void theReferenceIsTheOneThatIsChosen(String choice, double volts) {
        bench.references[0] = 2.5;
        bench.references[1] = 1.25;
        bench.pins[0] = 1;
        frame(chip, "40 81");
        frame(chip, "48" + choice);

        assertThat(code(single(chip))).isEqualTo((int) Math.round(0x1p23 / volts));
    }

    // from memory (SBAS501C): RESET puts all back, converts once, and hears nothing for 50 µs and 32 clocks
    @Test
    void afterAResetItIsDeafForAMoment() {
        frame(chip, "43 81 D4 51 02");

        frame(chip, "06");
        frame(chip, "40 81");
        assertThat(frame(chip, "20 00")).endsWith("00");
        bench.pass(60e-6);
        frame(chip, "40 81");

        assertThat(frame(chip, "23 00 00 00 00")).endsWith("81 00 00 00");
        bench.pass(0.06);
        assertThat(chip.readyPinHigh()).isFalse();
    }

    @Test
    void aFrozenChipRepeatsItsResultAndLosesOrders() {
        bench.pins[0] = 1;
        frame(chip, "41 81 04");
        frame(chip, "08");
        bench.pass(0.06);
        FaultySpiTarget faulty = new FaultySpiTarget(chip);
        faulty.set(ChipFault.Plain.STUCK);
        assertThat(frame(faulty, READ)).endsWith("3E 80 00");
        bench.pins[0] = 0.5;

        frame(faulty, "40 91");
        bench.pass(1);

        assertThat(frame(faulty, READ)).endsWith("3E 80 00");
        faulty.set(ChipFault.Plain.HEALTHY);
        assertThat(frame(faulty, READ)).endsWith("1F 40 00");
        assertThat(frame(faulty, "20 00")).endsWith("81");
    }

    @Test
    void gainOffsetAndReferenceAreThoseOfTheSpecimen() {
        Ads1220Emulator off = awake(new Ads1220Emulator.Errors(0.001, 1e-3, -0.002, 0, 5, 0, 0));
        bench.pins[0] = 1;
        frame(off, "40 81");

        assertThat(code(single(off)) * REFERENCE / 0x1p23).isCloseTo((1.001 + 0.001) / 0.998, within(1e-6));
    }

    @Test
    void aCopyGoesOnExactlyAsTheOriginalInTheMiddleOfAConversion() {
        Ads1220Emulator noisy = awake(new Ads1220Emulator.Errors(0, 0, 0, 0.01, 5, 1e-4, 0));
        bench.pins[0] = 1;
        frame(noisy, "41 81 04");
        frame(noisy, "08");
        bench.pass(0.07);

        Ads1220Emulator copy = noisy.copy(bench);
        bench.pass(0.05);

        assertThat(frame(copy, READ)).isEqualTo(frame(noisy, READ));
        assertThat(code(frame(copy, READ).substring(3))).isNotEqualTo((int) Math.round(0x1p23 / REFERENCE));
    }

    private Ads1220Emulator awake(Ads1220Emulator.Errors errors) {
        Ads1220Emulator made = new Ads1220Emulator(bench, errors, Chance.of(6, "tap", "noise"));
        bench.pass(1);
        frame(made, READ);
        return made;
    }

    private String single(Ads1220Emulator of) {
        frame(of, "08");
        bench.pass(0.06);
        return frame(of, READ).substring(3);
    }

    private static int code(String threeBytes) {
        return Integer.parseInt(threeBytes.replace(" ", ""), 16) << 8 >> 8;
    }
}
