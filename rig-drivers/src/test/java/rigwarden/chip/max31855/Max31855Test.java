package rigwarden.chip.max31855;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.util.HexFormat;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.bus.BusFailure;
import rigwarden.bus.SpiNode;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.Wire;
import rigwarden.warden.Failure;

class Max31855Test {
    private final Wire wire = new Wire();
    private int frame;
    private Max31855 chip;

    @BeforeEach
    void open() throws BusFailure {
        wire.onSelects.put(1, _ -> ByteBuffer.allocate(4).putInt(frame).array());
        chip = new Max31855(SpiNode.at(Scripted.context(wire), 0, 1, 0, 1_000_000).chip(), Couple.K);
    }

    private Failure why(int bits) {
        frame = bits;
        return catchThrowableOfType(BusFailure.class, chip::read).why();
    }

    /** Published (19-5793 rev 5, page 10, tables 4 and 5), all sixteen rows. */
    @ParameterizedTest
    @CsvSource({"1600, 6400, 127, 7F00", "1000, 3E80, 100.5625, 6490", "100.75, 064C, 25, 1900", "25, 0190, 0, 0000",
        "0, 0000, -0.0625, FFF0", "-0.25, FFFC, -1, FF00", "-1, FFF0, -20, EC00", "-250, F060, -55, C900"})
    void bothTemperaturesAreThoseOfTheCodeTables(double hot, String high, double cold, String low) {
        int bits = Max31855Codec.frame(HexFormat.of().parseHex(high + low));

        assertThat(Max31855Codec.code(bits) * Max31855Codec.CELSIUS_PER_CODE).isEqualTo(hot);
        assertThat(Max31855Codec.coldCode(bits) * Max31855Codec.COLD_CELSIUS_PER_CODE).isEqualTo(cold);
    }

    @Test
    void aWholeFrameIsTakenApart() {
        // computed from the same tables; the last is a frame seen in the field, 21.00 °C and 23.5625 °C
        assertThat(Max31855Codec.code(0xFFFCFFF0)).isEqualTo(-1);
        assertThat(Max31855Codec.coldCode(0xFFFCFFF0)).isEqualTo(-1);
        assertThat(Max31855Codec.code(0xF060C900)).isEqualTo(-1000);
        assertThat(Max31855Codec.coldCode(0xF060C900)).isEqualTo(-880);
        assertThat(Max31855Codec.code(0x01501790)).isEqualTo(84);
        assertThat(Max31855Codec.coldCode(0x01501790)).isEqualTo(377);
    }

    @Test
    void aReadingIsOneTransactionAndOneOfTheColdJunctionIsItself() throws BusFailure {
        frame = 0x01901900;

        assertThat(chip.read() * 0.0625).isEqualTo(25);
        assertThat(wire.log).containsExactly("spi 1 00000000");
    }

    /** Published (NIST Monograph 175, tables 7.3.1 and 9.3.1), computed to six decimals. */
    @ParameterizedTest
    @CsvSource({"-50, -1.889383, -1.819036", "-10, -0.391854, -0.383050", "0, 0, 0", "25, 1.000242, 0.991977",
        "45, 1.817128, 1.822687", "60, 2.436472, 2.468151", "100, 4.096230, 4.278519", "150, 6.138344, 6.704087"})
    void couplesGiveTheVoltagesOfTheirTables(double celsius, double k, double t) {
        assertThat(Couple.K.millivolts(celsius)).isCloseTo(k, within(6e-7));
        assertThat(Couple.T.millivolts(celsius)).isCloseTo(t, within(6e-7));
    }

    @Test
    void theStraightLineOfTheChipIsTakenOut() {
        // 25 °C cold; a couple at 60 °C gives E(60) − E(25), which the chip divides by its own slope
        double saidT = 25 + (2.468151 - 0.991977) / 0.05218;
        double saidK = 25 + (2.436472 - 1.000242) / 0.041276;

        assertThat(saidT).isCloseTo(53.3, within(0.05));
        assertThat(Couple.T.celsius(saidT, 25)).isCloseTo(60, within(1e-4));
        assertThat(Couple.K.celsius(saidK, 25)).isCloseTo(60, within(1e-4));
        assertThat(Couple.K.celsius(-10, -10)).isCloseTo(-10, within(1e-4));
    }

    @Test
    void faultsAreNamed() {
        assertThat(why(0x00011901)).isEqualTo(Failure.OPEN);
        assertThat(why(0x00011902)).isEqualTo(Failure.SHORTED);
        assertThat(why(0x00011904)).isEqualTo(Failure.SHORTED);
    }

    @Test
    void aStuckBusAndFramesThatCannotBeAreTold() {
        assertThat(why(0)).isEqualTo(Failure.NO_ANSWER);
        assertThat(why(-1)).isEqualTo(Failure.NO_ANSWER);
        for (int bits : new int[] {0x01921900, 0x01901908, 0x01911900, 0x01901901}) {
            assertThat(why(bits)).isEqualTo(Failure.NONSENSE);
        }
        frame = 0;
        assertThat(catchThrowableOfType(BusFailure.class, chip::reference).why()).isEqualTo(Failure.NO_ANSWER);
    }

    @Test
    void anOpenProbeIsAChipAllTheSame() throws BusFailure {
        frame = 0x00011901;

        chip.reference();

        assertThat(wire.log).hasSize(1);
    }
}
