package rigwarden.chip.max31856;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class Max31856CodecTest {
    private static byte[] bytes(String hex) {
        return HexFormat.of().parseHex(hex);
    }

    /** The rows are the data sheet's (linearised temperature data format) from memory; the codes are computed. */
    @ParameterizedTest
    @CsvSource({"1600, 640000", "1000, 3E8000", "100.9375, 064F00", "25, 019000", "0.0625, 000100", "0, 000000",
        "-0.0625, FFFF00", "-0.25, FFFC00", "-1, FFF000", "-250, F06000", "0.0078125, 000020", "-0.0078125, FFFFE0"})
    void temperaturesAreThoseOfTheCodeTable(double celsius, String hex) {
        assertThat(Max31856Codec.code(bytes(hex), 0) * Max31856Codec.CELSIUS_PER_CODE).isEqualTo(celsius);
    }

    /** Likewise, cold-junction temperature data format. */
    @ParameterizedTest
    @CsvSource({"127.984375, 7FFC", "127, 7F00", "125, 7D00", "64, 4000", "25, 1900", "0.5, 0080", "0.015625, 0004",
        "0, 0000", "-0.5, FF80", "-25, E700", "-55, C900"})
    void coldJunctionsAreThoseOfTheCodeTable(double celsius, String hex) {
        assertThat(Max31856Codec.coldCode(bytes(hex), 0) * Max31856Codec.COLD_CELSIUS_PER_CODE).isEqualTo(celsius);
    }

    /** Published (MAX31856, cold-junction offset register): signed, 0.0625 K, four codes of the register it is added to. */
    @ParameterizedTest
    @CsvSource({"0, 00", "0.0625, 01", "-0.0625, FF", "1, 10", "-1, F0", "7.9375, 7F", "-8, 80"})
    void anOffsetIsSignedAndOfItsOwnStep(double kelvin, String hex) {
        assertThat(Max31856Codec.coldOffsetByte(kelvin)).isEqualTo(bytes(hex)[0] & 0xFF);
        assertThat(Max31856Codec.COLD_OFFSET_PER_CODE).isEqualTo(4 * Max31856Codec.COLD_CELSIUS_PER_CODE);
    }

    @Test
    void anOffsetThatTheRegisterCannotHoldIsRefused() {
        for (double kelvin : new double[] {8, -8.0625, 0.03, Double.NaN}) {
            assertThatThrownBy(() -> Max31856Codec.coldOffsetByte(kelvin)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void controlBytesAreMadeOfTheirFields() {
        // published (MAX31856, CR0 and CR1): open detection 01 in bits 5…4, 1 in bit 0 for 50 Hz; no averaging, type T 0111
        Max31856Config config = Max31856Config.cellProbe(MainsFilter.HZ_50, 0);

        assertThat(config.controlByte()).isEqualTo(0x11);
        assertThat(config.typeByte()).isEqualTo(0x07);
        assertThat(Max31856Config.cellProbe(MainsFilter.HZ_60, 0).controlByte()).isEqualTo(0x10);
        assertThat(Thermocouple.K.code()).isEqualTo(3);
    }
}
