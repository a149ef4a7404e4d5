package rigwarden.chip.mcp9601;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.Wire;
import rigwarden.warden.Failure;

class Mcp9601Test {
    private static final int AT = 0x60;

    private final Wire wire = new Wire();
    private Mcp9601 chip;

    @BeforeEach
    void open() throws BusFailure {
        wire.put(AT, 0x20, 0x41, 0x10);
        wire.put(AT, 0x04, 0);
        chip = new Mcp9601(Chip.at(Scripted.context(wire), 1, AT), Mcp9601Config.CELL_PROBE);
        chip.configure();
        wire.put(AT, 0x04, 0x40);
        wire.put(AT, 0x00, 0x01, 0x90);
        wire.log.clear();
    }

    private Failure why() {
        return catchThrowableOfType(BusFailure.class, chip::read).why();
    }

    @Test
    void typeTAndSixteenBitsAreWritten() {
        // from memory (DS20005426F, SENSOR and DEVICE CONFIGURATION): type T 010 in bits 6…4; 16 bit 01 in bits 6…5
        assertThat(wire.bytesOf(AT, 0x05)).isEqualTo(0x21);
        assertThat(wire.bytesOf(AT, 0x06)).isEqualTo(0x20);
    }

    @Test
    void temperaturesKeepTheirSign() {
        // published (DS20005426C, page 17): T = upper × 16 + lower / 16, minus 4096 if negative; the rest follows by it
        assertThat(Mcp9601Codec.code(0x0190) * Mcp9601Codec.CELSIUS_PER_CODE).isEqualTo(25);
        assertThat(Mcp9601Codec.code(0x0194) * Mcp9601Codec.CELSIUS_PER_CODE).isEqualTo(25.25);
        assertThat(Mcp9601Codec.code(0xFFF0) * Mcp9601Codec.CELSIUS_PER_CODE).isEqualTo(-1);
        assertThat(Mcp9601Codec.code(0xFE70) * Mcp9601Codec.CELSIUS_PER_CODE).isEqualTo(-25);
        assertThat(Mcp9601Codec.code(0x0640) * Mcp9601Codec.CELSIUS_PER_CODE).isEqualTo(100);
        assertThat(Mcp9601Codec.code(0)).isZero();
        assertThat(Mcp9601Codec.code(0x7FFF)).isEqualTo(32767);
        assertThat(Mcp9601Codec.code(0x8000)).isEqualTo(-32768);
    }

    @Test
    void aReadingTakesFourReadsAndOneWriteThatClearsTheFlag() throws BusFailure {
        assertThat(chip.read()).isEqualTo(0x190);

        assertThat(wire.count("read")).isEqualTo(4);
        assertThat(wire.count("write")).isEqualTo(1);
        assertThat(wire.bytesOf(AT, 0x04)).isZero();
        assertThat(why()).isEqualTo(Failure.NOT_READY);
    }

    @Test
    void openAndShortedProbesAreNamed() {
        wire.put(AT, 0x04, 0x50);
        assertThat(why()).isEqualTo(Failure.OPEN);
        wire.put(AT, 0x04, 0x60);
        assertThat(why()).isEqualTo(Failure.SHORTED);
    }

    @ParameterizedTest
    @ValueSource(ints = {0x05, 0x06})
    void aConfigurationThatIsNotAsWrittenCostsOneReadingAndIsWrittenAnew(int register) throws BusFailure {
        byte written = (byte) wire.bytesOf(AT, register);
        wire.put(AT, register, 0);

        assertThat(why()).isEqualTo(Failure.CONFIGURATION_LOST);

        assertThat((byte) wire.bytesOf(AT, register)).isEqualTo(written);
        wire.put(AT, 0x04, 0x40);
        assertThat(chip.read()).isEqualTo(0x190);
    }

    @ParameterizedTest
    @ValueSource(ints = {0x05, 0x06})
    void aConfigurationThatLooksOtherwiseOnceOnlyCostsNoReading(int register) throws BusFailure {
        int written = wire.bytesOf(AT, register);
        int[] looks = {0};
        wire.beforeRead = read -> {
            if (read == register) {
                wire.put(AT, register, looks[0]++ == 0 ? written ^ 1 : written);
            }
        };

        assertThat(chip.read()).isEqualTo(0x190);

        assertThat(looks[0]).isEqualTo(2);
    }

    @Test
    void aTemperatureThatNothingHereCanHaveIsLookedAtTwice() throws BusFailure {
        int[] looks = {0};
        wire.beforeRead = read -> {
            if (read == 0x00) {
                wire.put(AT, 0x00, looks[0]++ == 0 ? 0x11 : 0x01, 0x90);
            }
        };

        assertThat(chip.read()).isEqualTo(0x190);
        assertThat(looks[0]).isEqualTo(2);

        wire.beforeRead = _ -> wire.put(AT, 0x00, 0x11, 0x90);
        wire.put(AT, 0x04, 0x40);
        assertThat(chip.read()).as("it stays so").isEqualTo(0x1190);
    }

    @Test
    void aChipThatCannotSeeAnOpenProbeIsRefused() {
        wire.put(AT, 0x20, 0x40, 0x10);

        assertThat(catchThrowableOfType(BusFailure.class, chip::configure))
                .hasMessageContaining("4010h").hasMessageContaining("41xxh");
    }

    @Test
    void anotherChipAtItsPlaceIsFoundByWhatItSaysOfItself() throws BusFailure {
        chip.reference();
        wire.put(AT, 0x20, 0x40, 0x10);
        assertThat(catchThrowableOfType(BusFailure.class, chip::reference).why()).isEqualTo(Failure.NONSENSE);
    }
}
