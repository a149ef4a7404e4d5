package rigwarden.chip.max31856;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rigwarden.bus.BusFailure;
import rigwarden.bus.SpiChip;
import rigwarden.bus.SpiNode;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.ScriptedMax31856;
import rigwarden.scripted.Wire;
import rigwarden.warden.Failure;

class Max31856Test {
    private static final Max31856Config CONFIG = Max31856Config.cellProbe(MainsFilter.HZ_50, -0.5);

    private final Wire wire = new Wire();
    private final ScriptedMax31856 part = new ScriptedMax31856();
    private SpiChip at;
    private Max31856 chip;

    @BeforeEach
    void open() throws BusFailure {
        wire.onSelects.put(0, part);
        at = SpiNode.at(Scripted.context(wire), 0, 0, 1, 1_000_000).chip();
        chip = new Max31856(at, CONFIG, Max31856State.FRESH);
        chip.configure();
        part.done(0x01, 0x90, 0x00, 0);
        wire.log.clear();
    }

    private Failure why() {
        return catchThrowableOfType(BusFailure.class, chip::read).why();
    }

    @Test
    void aReadingTakesOneBurstAndAnOrderThatIsSeenInTheRegister() throws BusFailure {
        assertThat(chip.read()).isEqualTo(25 * 128);

        assertThat(wire.log).containsExactly("spi 0 " + "00".repeat(17), "spi 0 8051", "spi 0 0000");
        assertThat(part.converts()).isTrue();
    }

    @Test
    void theConfigurationIsTypeTWithOpenDetectionAndTheOffset() {
        assertThat(part.registers[0] & 0xFF).isEqualTo(0x11);
        assertThat(part.registers[1]).isEqualTo((byte) 7);
        assertThat(part.registers[9]).isEqualTo((byte) 0xF8);
    }

    @Test
    void aConversionThatHasNotEndedGivesNoReadingAndIsOrderedAnewInTheEnd() throws BusFailure {
        chip.read();
        assertThat(why()).isEqualTo(Failure.NOT_READY);
        assertThat(why()).isEqualTo(Failure.NOT_READY);
        wire.log.clear();

        assertThat(why()).isEqualTo(Failure.NOT_READY);

        assertThat(wire.log).contains("spi 0 801107", "spi 0 8051");
        part.done(0x06, 0x4F, 0, 0);
        assertThat(chip.read() * Max31856Codec.CELSIUS_PER_CODE).isEqualTo(100.9375);
    }

    @Test
    void anOrderThatWasLostOnTheWireIsGivenOnceMore() throws BusFailure {
        part.deaf = 1;

        chip.read();

        assertThat(part.converts()).isTrue();
    }

    @Test
    void anOldTemperatureIsNeverTakenForANewOneWhenNoOrderArrived() throws BusFailure {
        part.deaf = 2;
        chip.read();
        assertThat(part.converts()).isFalse();

        assertThat(why()).isEqualTo(Failure.NOT_READY);

        assertThat(part.converts()).isTrue();
        part.done(0x01, 0x90, 0, 0);
        assertThat(chip.read()).isEqualTo(3200);
    }

    @Test
    void aBrownOutCostsReadingsUntilItsConfigurationIsBackAndNothingElse() throws BusFailure {
        part.brownOut();

        assertThat(why()).isEqualTo(Failure.CONFIGURATION_LOST);

        assertThat(part.registers[1]).isEqualTo((byte) 7);
        assertThat(why()).isEqualTo(Failure.NOT_READY);
        part.done(0x01, 0x90, 0, 0);
        assertThat(chip.read()).isEqualTo(3200);
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 9})
    void oneTurnedBitOfTheConfigurationCostsAReading(int register) {
        part.registers[register] ^= 2;

        assertThat(why()).isEqualTo(Failure.CONFIGURATION_LOST);
    }

    @Test
    void faultsOfTheProbeAreNamedAndTheNextConversionBeginsAllTheSame() throws BusFailure {
        int[] status = {0x01, 0x02, 0x40, 0x80};
        Failure[] named = {Failure.OPEN, Failure.NONSENSE, Failure.NONSENSE, Failure.NONSENSE};
        for (int i = 0; i < status.length; i++) {
            part.done(0x01, 0x90, 0, status[i]);
            assertThat(why()).isEqualTo(named[i]);
            assertThat(part.converts()).isTrue();
        }
        part.registers[10] = 0x19;
        part.done(0x01, 0x90, 0, 0x40);
        assertThat(catchThrowableOfType(BusFailure.class, chip::read)).hasMessageContaining("terminals at 25.0 °C");
        part.done(0x01, 0x90, 0, 0);
        assertThat(chip.read()).isEqualTo(3200);
    }

    @Test
    void aStuckBusAndAnotherChipAreTold() {
        wire.onSelects.put(0, sent -> new byte[sent.length]);
        assertThat(why()).isEqualTo(Failure.NO_ANSWER);
        wire.onSelects.put(0, sent -> {
            byte[] ones = new byte[sent.length];
            Arrays.fill(ones, (byte) 0xFF);
            return ones;
        });
        assertThat(why()).isEqualTo(Failure.NO_ANSWER);
        wire.onSelects.put(0, part);
        part.registers[3] = 0x12;

        assertThat(why()).isEqualTo(Failure.NONSENSE);
        assertThat(catchThrowableOfType(BusFailure.class, chip::reference).why()).isEqualTo(Failure.NONSENSE);
    }

    @Test
    void aChipThatDoesNotKeepItsConfigurationIsRefused() {
        part.deaf = 100;
        part.brownOut();

        assertThat(catchThrowableOfType(BusFailure.class, chip::configure).why()).isEqualTo(Failure.CONFIGURATION_LOST);
    }

    @Test
    void aCopyGoesOnWhereTheOtherStood() throws BusFailure {
        chip.read();
        part.done(0x06, 0x4F, 0, 0);

        assertThat(new Max31856(at, CONFIG, chip.state()).read()).isEqualTo((int) (100.9375 * 128));
    }
}
