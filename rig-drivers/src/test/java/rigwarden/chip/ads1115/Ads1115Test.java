package rigwarden.chip.ads1115;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.Wire;
import rigwarden.warden.Failure;

class Ads1115Test {
    private final Wire wire = new Wire();
    private Ads1115 chip;

    @BeforeEach
    void open() throws BusFailure {
        chip = new Ads1115(Chip.at(Scripted.context(wire), 1, 0x48), Ads1115Config.CELL_TAPS);
    }

    @Test
    void startWordsAreMadeOfTheirFields() {
        // published (SBAS444E, section 8.1.3): the fields; single shot, ± 4.096 V, comparator off, AIN0 to AIN3
        Ads1115Config config = new Ads1115Config(FullScale.V_4_096, DataRate.SPS_128);
        assertThat(config.startWord(0)).isEqualTo(0xC383);
        assertThat(config.startWord(1)).isEqualTo(0xD383);
        assertThat(config.startWord(2)).isEqualTo(0xE383);
        assertThat(config.startWord(3)).isEqualTo(0xF383);
        assertThat(Ads1115Config.CELL_TAPS.startWord(0)).isEqualTo(0xC3A3);
    }

    @Test
    void aCodeIsItsShareOfTheRange() {
        // published (SBAS444E, full-scale range table): 125 µV and 187.5 µV a code; 25600 codes are 3.2 V
        assertThat(FullScale.V_4_096.voltsPerCode()).isCloseTo(125e-6, within(1e-18));
        assertThat(FullScale.V_6_144.voltsPerCode()).isCloseTo(187.5e-6, within(1e-18));
        assertThat(FullScale.V_0_256.voltsPerCode()).isCloseTo(7.8125e-6, within(1e-18));
        assertThat(0x6400 * FullScale.V_4_096.voltsPerCode()).isCloseTo(3.2, within(1e-12));
    }

    @Test
    void theSlowestChipIsDoneInTheTimeThatIsWaited() {
        // published (SBAS444E, electrical characteristics): data rate within 10 %, so 4 ms may be 4.444 ms
        assertThat(DataRate.SPS_250.longestNanos()).isBetween(4_444_444L, 4_500_000L);
    }

    @Test
    void codesAreSignedAndExactAtTheirEnds() throws BusFailure {
        int[][] bytes = {{0, 0}, {0, 1}, {0xFF, 0xFF}, {0x7F, 0xFF}, {0x80, 0}, {0xFF, 0xF0}};
        int[] codes = {0, 1, -1, 32767, -32768, -16};
        for (int i = 0; i < codes.length; i++) {
            chip.start(2);
            wire.put(0x48, 0, bytes[i]);
            assertThat(chip.finish(2)).isEqualTo(codes[i]);
        }
    }

    @Test
    void oneInputTakesThreeTransactions() throws BusFailure {
        wire.put(0x48, 0, 0x64, 0);
        chip.start(1);
        chip.finish(1);

        assertThat(wire.log).containsExactly("write 48 1", "read 48 1", "read 48 0");
    }

    @Test
    void aRunningConversionIsNotReady() throws BusFailure {
        chip.start(1);
        wire.put(0x48, 1, 0x53, 0xA3);

        assertThat(why(1)).isEqualTo(Failure.NOT_READY);
    }

    @Test
    void anotherInputOrTheResetWordIsALostConfiguration() throws BusFailure {
        chip.start(1);
        wire.put(0x48, 1, 0xC3, 0xA3);
        assertThat(why(1)).isEqualTo(Failure.CONFIGURATION_LOST);
        wire.put(0x48, 1, 0x85, 0x83);
        assertThat(why(1)).isEqualTo(Failure.CONFIGURATION_LOST);
    }

    @Test
    void theConfigurationIsWrittenWithoutAStartAndReadBack() throws BusFailure {
        wire.idle(0x48, 1);
        chip.configure();

        assertThat(wire.log).containsExactly("write 48 1", "read 48 1");
        wire.put(0x48, 1, 0x85, 0x83);
        wire.keep(0x48, 1);
        assertThat(catchThrowableOfType(BusFailure.class, chip::configure).why())
                .isEqualTo(Failure.CONFIGURATION_LOST);
    }

    private Failure why(int input) {
        return catchThrowableOfType(BusFailure.class, () -> chip.finish(input)).why();
    }

    @Test
    void aThresholdThatNobodyWroteTellsAChipOfItsKind() throws BusFailure {
        // from memory (SBAS444E, section 8.1.4): Lo_thresh reads 8000h after power-up
        wire.put(0x48, 2, 0x80, 0);
        chip.reference();
        wire.put(0x48, 2, 0, 0);
        assertThat(catchThrowableOfType(BusFailure.class, chip::reference).why()).isEqualTo(Failure.NONSENSE);
    }
}
