package rigwarden.chip.ina228;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class Ina228CodecTest {
    @Test
    void theDataSheetsExampleGivesItsCalibrationWordAndCurrent() {
        // published (SLYS021A, section 8.2, tables 8-3 and 8-4): 10 A, 16.2 mΩ, 4050, 314572 codes for 6 A, 21600 C
        Ina228Codec codec = new Ina228Codec(10, 0.0162, AdcRange.WIDE);

        assertThat(codec.ampsPerCode()).isCloseTo(19.0734863e-6, within(1e-13));
        assertThat(codec.shuntCalibration()).isEqualTo(4050);
        assertThat(Ina228Codec.currentCode(0x4CCCC0)).isEqualTo(314572);
        assertThat(314572 * codec.ampsPerCode()).isCloseTo(6, within(2e-5));
        assertThat(1132462080L * codec.ampsPerCode()).isCloseTo(21600, within(1e-3));
    }

    @Test
    void theDataSheetsBusCodeIsItsVoltage() {
        // published (SLYS021A, section 8.2, table 8-4): 245760 codes of 195.3125 µV are 48 V
        assertThat(Ina228Codec.busCode(0x3C0000)).isEqualTo(245760);
        assertThat(245760 * 195.3125e-6).isCloseTo(48, within(1e-9));
    }

    @Test
    void theDataSheetsNegativeExampleKeepsItsSign() {
        // published (SLYS021A, section 8.2): the 20 bit code B4100h is −311040
        assertThat(Ina228Codec.currentCode(0xB41000)).isEqualTo(-311040);
    }

    @Test
    void codesAreExactAtZeroAtOneStepAndAtBothEnds() {
        assertThat(Ina228Codec.currentCode(0)).isZero();
        assertThat(Ina228Codec.currentCode(0x000010)).isEqualTo(1);
        assertThat(Ina228Codec.currentCode(0xFFFFF0)).isEqualTo(-1);
        assertThat(Ina228Codec.currentCode(0x7FFFF0)).isEqualTo(524287);
        assertThat(Ina228Codec.currentCode(0x800000)).isEqualTo(-524288);
        assertThat(Ina228Codec.chargeCode(0)).isZero();
        assertThat(Ina228Codec.chargeCode(1)).isEqualTo(1);
        assertThat(Ina228Codec.chargeCode(0xFF_FFFF_FFFFL)).isEqualTo(-1);
        assertThat(Ina228Codec.chargeCode(0x7F_FFFF_FFFFL)).isEqualTo((1L << 39) - 1);
        assertThat(Ina228Codec.chargeCode(0x80_0000_0000L)).isEqualTo(-(1L << 39));
    }

    @Test
    void aLargeCellsShuntUsesTheWholeRange() {
        // from memory (SLYS021A, SHUNT_CAL = 13107.2e6 × LSB × R): 625 µA × 0.5 mΩ gives 4096
        assertThat(new Ina228Codec(327.68, 0.0005, AdcRange.WIDE).shuntCalibration()).isEqualTo(4096);
        assertThat(new Ina228Codec(327.68, 0.00025, AdcRange.WIDE).shuntCalibration()).isEqualTo(2048);
        assertThat(new Ina228Codec(163.84, 0.00025, AdcRange.NARROW).shuntCalibration()).isEqualTo(4096);
    }

    @Test
    void aFullScaleBeyondTheRangeIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Ina228Codec(328, 0.0005, AdcRange.WIDE))
                .withMessageContaining("0.16384");
        assertThatIllegalArgumentException().isThrownBy(() -> new Ina228Codec(0, 0.0005, AdcRange.WIDE));
        assertThatIllegalArgumentException().isThrownBy(() -> new Ina228Codec(Double.NaN, 1, AdcRange.WIDE));
    }

    @Test
    void theConfigurationWordIsMadeOfItsFields() {
        // from memory (SLYS021A, ADC_CONFIG): MODE Bh, three times code 5 (1052 µs), AVG code 2 (16)
        assertThat(Ina228Config.LARGE_CELLS.adcWord()).isEqualTo(0xBB6A);
        assertThat(Ina228Config.LARGE_CELLS.configWord()).isZero();
        assertThat(Ina228Config.LARGE_CELLS.cycleNanos()).isEqualTo(33_664_000);
    }
}
