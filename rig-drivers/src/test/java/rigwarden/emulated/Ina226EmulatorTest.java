package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;
import static rigwarden.emulated.Bench.read;
import static rigwarden.emulated.Bench.unsigned16;
import static rigwarden.emulated.Bench.write16;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.pack.Chance;

class Ina226EmulatorTest {
    private final Bench bench = new Bench();
    private final Ina226Emulator chip = chip(Ina226Emulator.Errors.NONE);

    // published (TI SBOS547B, table 7-1)
    @Test
    void registersHoldTheirPowerOnValues() {
        assertThat(unsigned16(chip, 0)).isEqualTo(0x4127);
        for (int register = 1; register <= 7; register++) {
            assertThat(unsigned16(chip, register)).as("register %d", register).isZero();
        }
        assertThat(unsigned16(chip, 0xFE)).isEqualTo(0x5449);
        assertThat(unsigned16(chip, 0xFF)).isEqualTo(0x2260);
    }

    // published (TI SBOS547, June 2011, table 1): 10 A through 2 mΩ at 11.98 V; 12B8h is 119.8 W exactly, the sheet prints 119.82
    @Test
    void theWorkedExampleOfTheSheetComesOut() {
        write16(chip, 5, 0x0A00);
        bench.shuntVolts = 0.020;
        bench.busVolts = 11.98;
        bench.commonModeVolts = 12;

        bench.pass(0.01);

        assertThat(unsigned16(chip, 1)).isEqualTo(0x1F40);
        assertThat(unsigned16(chip, 2)).isEqualTo(0x2570);
        assertThat(unsigned16(chip, 4)).isEqualTo(0x2710);
        assertThat(unsigned16(chip, 3)).isEqualTo(0x12B8);
    }

    // published (TI SBOS547: 2.5 µV a step, two's complement); −80 mV is 8300h from memory
    @ParameterizedTest
    @CsvSource({"-0.080, 0x8300", "0.0819175, 0x7FFF", "-0.08192, 0x8000", "0.5, 0x7FFF", "-0.5, 0x8000", "2.5e-6, 0x0001",
        "-2.5e-6, 0xFFFF"})
    void theShuntVoltageHasASignAndEnds(double volts, String code) {
        bench.shuntVolts = volts;
        bench.commonModeVolts = 3;

        bench.pass(0.01);

        assertThat(unsigned16(chip, 1)).isEqualTo(Integer.decode(code));
    }

    // published (TI SBOS547: current and power are zero without a calibration)
    @Test
    void withoutACalibrationThereIsNeitherCurrentNorPower() {
        bench.shuntVolts = 0.02;
        bench.busVolts = 12;

        bench.pass(0.01);

        assertThat(unsigned16(chip, 1)).isEqualTo(8000);
        assertThat(unsigned16(chip, 3)).isZero();
        assertThat(unsigned16(chip, 4)).isZero();
    }

    // published (TI SBOS547, tables of averages and times; cycle is AVG (VBUSCT + VSHCT)): 2.2 ms, 35.2 ms, 16.884 s and others
    @ParameterizedTest
    @CsvSource({"0x4127, 0.0022", "0x4527, 0.0352", "0x4FFF, 16.883712", "0x4007, 0.00028", "0x4125, 0.0011",
        "0x41DE, 0.008244", "0x496F, 0.541696"})
    void theReadyFlagComesAtTheEndOfACycle(String config, double seconds) {
        write16(chip, 0, Integer.decode(config));

        bench.pass(seconds - 1e-6);
        assertThat(unsigned16(chip, 6)).isZero();
        bench.pass(2e-6);

        assertThat(unsigned16(chip, 6)).isEqualTo(1 << 3);
    }

    // published (TI SBOS547, CVRF: cleared by reading 06h or writing 00h)
    @Test
    void theReadyFlagIsTakenAwayByReadingItAndByConfiguring() {
        bench.pass(0.0023);
        assertThat(unsigned16(chip, 6)).isEqualTo(8);
        assertThat(unsigned16(chip, 6)).isZero();
        bench.pass(0.0022);
        write16(chip, 0, 0x4127);
        assertThat(unsigned16(chip, 6)).isZero();
        bench.pass(0.0022);

        assertThat(unsigned16(chip, 6)).isEqualTo(8);
    }

    // published (TI SBOS547, MODE 3: both, triggered; MODE 0: power-down)
    @Test
    void aTriggeredChipConvertsOnceAndOneThatIsPoweredDownNever() {
        bench.busVolts = 10;
        write16(chip, 0, 0x4123);
        bench.pass(0.0023);
        assertThat(unsigned16(chip, 2)).isEqualTo(8000);
        assertThat(unsigned16(chip, 6)).isEqualTo(8);
        bench.busVolts = 20;
        bench.pass(1);
        assertThat(unsigned16(chip, 2)).isEqualTo(8000);
        write16(chip, 0, 0x4120);

        bench.pass(1);

        assertThat(unsigned16(chip, 6)).isZero();
        assertThat(unsigned16(chip, 2)).isEqualTo(8000);
    }

    // published (TI SBOS547, bit 15 of 00h; bit 14 always reads 1)
    @Test
    void aResetByItsBitIsAPowerOnReset() {
        write16(chip, 0, 0x0FFF);
        assertThat(unsigned16(chip, 0)).isEqualTo(0x4FFF);
        write16(chip, 5, 0x0A00);
        write16(chip, 7, 0x1234);

        write16(chip, 0, 0x8000);

        assertThat(unsigned16(chip, 0)).isEqualTo(0x4127);
        assertThat(unsigned16(chip, 5)).isZero();
        assertThat(unsigned16(chip, 7)).isZero();
    }

    // from memory (TI SBOS547, alert functions): shunt over, and the flag AFF that follows or latches
    @Test
    void anAlertFollowsItsLimitOrStaysUntilItIsRead() {
        write16(chip, 7, 4000);
        write16(chip, 6, 0x8000);
        bench.shuntVolts = 0.0101;
        bench.pass(0.0023);
        assertThat(chip.alertPinHigh()).isFalse();
        assertThat(unsigned16(chip, 6)).isEqualTo(0x8018);
        bench.shuntVolts = 0.0099;
        bench.pass(0.0023);
        assertThat(chip.alertPinHigh()).isTrue();
        write16(chip, 6, 0x8001);
        bench.shuntVolts = 0.0101;
        bench.pass(0.0023);
        assertThat(unsigned16(chip, 1)).isEqualTo(4040);
        bench.shuntVolts = 0;

        bench.pass(0.0023);

        assertThat(chip.alertPinHigh()).isFalse();
        assertThat(unsigned16(chip, 6)).isEqualTo(0x8019);
        assertThat(chip.alertPinHigh()).isTrue();
    }

    // from memory (TI SBOS547, alert functions)
    @ParameterizedTest
    @CsvSource({"0x4000, 0xF060, -0.0101, 5, -0.0099, 5", "0x2000, 8000, 0, 10.01, 0, 10", "0x1000, 8000, 0, 9.99, 0, 10",
        "0x0800, 399, 0.02, 1, 0.019, 1"})
    void eachComparisonSeesItsOwnSide(String function, String limit, double badShunt, double badBus, double shunt, double bus) {
        write16(chip, 5, 0x0A00);
        write16(chip, 7, Integer.decode(limit));
        write16(chip, 6, Integer.decode(function));
        bench.commonModeVolts = 3;
        bench.shuntVolts = shunt;
        bench.busVolts = bus;
        bench.pass(0.003);
        assertThat(chip.alertPinHigh()).isTrue();

        bench.shuntVolts = badShunt;
        bench.busVolts = badBus;
        bench.pass(0.003);

        assertThat(chip.alertPinHigh()).isFalse();
    }

    // published (project's check values, table of the alert register: OVF is bit 2); the overflow itself from memory
    @Test
    void aCurrentThatDoesNotFitIsMarked() {
        write16(chip, 5, 0x7FFF);
        bench.shuntVolts = 0.08;
        bench.commonModeVolts = 3;

        bench.pass(0.003);

        assertThat(unsigned16(chip, 6)).isEqualTo(0x0C);
        assertThat(unsigned16(chip, 4)).isEqualTo(0x7FFF);
    }

    // published (TI SBOS547: bus range 36 V); from memory: absolute maximum 40 V. 16 cells at 3.7 V are 59.2 V
    @ParameterizedTest
    @CsvSource({"59.2, 0", "40.1, 0", "-0.4, 0", "0, 40.1", "12, -1"})
    void aPinBeyondItsAbsoluteMaximumKillsTheChipForEver(double busVolts, double commonModeVolts) {
        FaultyTarget supplied = new FaultyTarget(chip);
        bench.busVolts = busVolts;
        bench.commonModeVolts = commonModeVolts;
        assertThat(chip.written(new byte[] {0}, 0, 1)).isEqualTo(-1);

        bench.busVolts = 12;
        bench.commonModeVolts = 12;
        supplied.set(ChipFault.Plain.BROWN_OUT);

        assertThat(write16(supplied, 0, 0x4127)).isEqualTo(-1);
        assertThat(supplied.read(new byte[2], 0, 2)).isEqualTo(-1);
        assertThat(chip.copy(bench).dead()).isTrue();
    }

    @Test
    void aBusOfThirtySixVoltsIsWithinReach() {
        bench.busVolts = 36;
        bench.commonModeVolts = 36;

        bench.pass(0.01);

        assertThat(unsigned16(chip, 2)).isEqualTo(28800);
    }

    @Test
    void aDipOfTheSupplyLosesCalibrationAndConfiguration() {
        FaultyTarget faulty = new FaultyTarget(chip);
        write16(faulty, 0, 0x4527);
        write16(faulty, 5, 0x0A00);

        faulty.set(ChipFault.Plain.BROWN_OUT);

        assertThat(unsigned16(faulty, 0)).isEqualTo(0x4127);
        assertThat(unsigned16(faulty, 5)).isZero();
    }

    @Test
    void gainAndOffsetAreThoseOfTheSpecimen() {
        Ina226Emulator off = chip(new Ina226Emulator.Errors(0.001, 10e-6, -0.001, 0, 0));
        bench.shuntVolts = 0.05;
        bench.busVolts = 25;
        bench.commonModeVolts = 25;

        bench.pass(0.01);

        assertThat(read(off, 1, 2)).isEqualTo(20024);
        assertThat(read(off, 2, 2)).isEqualTo(19980);
    }

    @Test
    void aCopyGoesOnExactlyAsTheOriginalInTheMiddleOfACycle() {
        Ina226Emulator noisy = chip(new Ina226Emulator.Errors(0, 0, 0, 0.01, 20e-6));
        write16(noisy, 0, 0x4527);
        bench.pass(0.05);
        assertThat(read(noisy, 1, 2)).isNotZero();

        Ina226Emulator copy = noisy.copy(bench);
        bench.pass(0.05);

        assertThat(read(copy, 1, 2)).isEqualTo(read(noisy, 1, 2));
    }

    @Test
    void whatTheSheetDoesNotListIsNotAcknowledged() {
        assertThat(chip.written(new byte[] {8}, 0, 1)).isEqualTo(-1);
        assertThat(write16(chip, 1, 1)).isEqualTo(-1);
        assertThat(write16(chip, 0xFE, 1)).isEqualTo(-1);
    }

    private Ina226Emulator chip(Ina226Emulator.Errors errors) {
        return new Ina226Emulator(bench, errors, Chance.of(2, "shunt", "noise"));
    }
}
