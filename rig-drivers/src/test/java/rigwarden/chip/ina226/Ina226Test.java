package rigwarden.chip.ina226;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.chip.Averages;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.Wire;
import rigwarden.warden.Failure;

class Ina226Test {
    private static final int AT = 0x40;

    private final Wire wire = new Wire();
    private Ina226 chip;

    @BeforeEach
    void open() throws BusFailure {
        wire.put(AT, 0xFE, 0x54, 0x49);
        wire.put(AT, 0xFF, 0x22, 0x60);
        chip = new Ina226(Chip.at(Scripted.context(wire), 1, AT), Ina226Config.LARGE_CELLS);
        chip.configure();
        wire.put(AT, 0x06, 0x00, 0x08);
        wire.beforeRead = register -> flags(register == 0x06);
        wire.log.clear();
    }

    /** The flag stands for so many reads. */
    private int flagStands = 1;

    private void flags(boolean read) {
        if (read && --flagStands < 0) {
            wire.put(AT, 0x06, 0x00, wire.bytesOf(AT, 0x06) & ~0x08);
        }
    }

    private Failure why() {
        return catchThrowableOfType(BusFailure.class, chip::check).why();
    }

    @Test
    void theWorkedExampleOfTheDataSheetIsTwentyMillivoltsAndTenAmperes() {
        // published (SBOS547, table 1): 2 mΩ, 1F40h is 20 mV, so 10 A; 2570h is 11.98 V, so 119.8 W (printed 119.82 W)
        double volts = Ina226Codec.shuntCode(0x1F40) * Ina226Codec.SHUNT_VOLTS;
        double bus = Ina226Codec.busCode(0x2570) * Ina226Codec.BUS_VOLTS;

        assertThat(volts).isCloseTo(0.020, within(1e-12));
        assertThat(volts / 0.002).isCloseTo(10, within(1e-9));
        assertThat(bus).isCloseTo(11.98, within(1e-12));
        assertThat(bus * volts / 0.002).isCloseTo(119.8, within(1e-9));
    }

    @Test
    void codesAreSignedWhereTheRegisterIsAndExactAtTheirEnds() {
        // published (SBOS547, shunt voltage register; −80 mV from memory): full scale 81.92 mV
        assertThat(Ina226Codec.shuntCode(0x8300) * Ina226Codec.SHUNT_VOLTS).isCloseTo(-0.080, within(1e-12));
        assertThat(Ina226Codec.shuntCode(0x7FFF) * Ina226Codec.SHUNT_VOLTS).isCloseTo(0.0819175, within(1e-12));
        assertThat(Ina226Codec.shuntCode(0x8000) * Ina226Codec.SHUNT_VOLTS).isCloseTo(-0.08192, within(1e-12));
        assertThat(Ina226Codec.shuntCode(0)).isZero();
        assertThat(Ina226Codec.shuntCode(0xFFFF)).isEqualTo(-1);
        assertThat(Ina226Codec.busCode(0x7FFF) * Ina226Codec.BUS_VOLTS).isCloseTo(40.95875, within(1e-12));
        assertThat(Ina226Codec.busCode(1)).isEqualTo(1);
    }

    @Test
    void configurationsAreMadeOfTheirFields() {
        // published (SBOS547B, configuration register): 4127h is 1 average, 1.1 ms, 1.1 ms, both continuous
        assertThat(new Ina226Config(ConversionTime.US_1100, ConversionTime.US_1100, Averages.OF_1).word()).isEqualTo(0x4127);
        assertThat(Ina226Config.LARGE_CELLS.word()).isEqualTo(0x4527);
        assertThat(wire.bytesOf(AT, 0x00)).isEqualTo(0x4527);
        assertThat(new Ina226Config(ConversionTime.US_1100, ConversionTime.US_1100, Averages.OF_1).cycleNanos())
                .isEqualTo(2_200_000);
        assertThat(Ina226Config.LARGE_CELLS.cycleNanos()).isEqualTo(35_200_000);
        assertThat(new Ina226Config(ConversionTime.US_8244, ConversionTime.US_8244, Averages.OF_1024).cycleNanos())
                .isCloseTo(16_884_000_000L, within(1_000_000L));
    }

    @Test
    void aScanTakesFiveReads() throws BusFailure {
        wire.put(AT, 0x01, 0xE0, 0xC0);
        wire.put(AT, 0x02, 0x25, 0x70);

        chip.check();

        assertThat(chip.current()).isEqualTo(-8000);
        assertThat(chip.bus()).isEqualTo(9584);
        assertThat(wire.count("read")).isEqualTo(5);
        assertThat(wire.count("write")).isZero();
    }

    @Test
    void withoutANewResultThereIsNoReading() {
        wire.put(AT, 0x06, 0, 0);

        assertThat(why()).isEqualTo(Failure.NOT_READY);
    }

    @Test
    void aResultThatComesBetweenTwoReadsOfTheFlagIsNoFailure() throws BusFailure {
        flagStands = 2;

        chip.check();

        assertThat(wire.count("read 40 6")).isEqualTo(3);
    }

    @Test
    void aChipThatHangsIsKnownByItsFlagThatDoesNotFall() {
        flagStands = 1000;

        assertThat(why()).isEqualTo(Failure.NOT_READY);
    }

    @Test
    void anOverflowIsNonsense() {
        wire.put(AT, 0x06, 0x00, 0x0C);

        assertThat(why()).isEqualTo(Failure.NONSENSE);
    }

    @Test
    void aBrownOutCostsAReadingAndIsWrittenAnew() throws BusFailure {
        wire.put(AT, 0x00, 0x41, 0x27);

        assertThat(why()).isEqualTo(Failure.CONFIGURATION_LOST);

        assertThat(wire.bytesOf(AT, 0x00)).isEqualTo(0x4527);
        chip.check();
    }

    @Test
    void anotherChipIsRefused() {
        wire.put(AT, 0xFF, 0x22, 0x81);

        assertThat(catchThrowableOfType(BusFailure.class, chip::configure))
                .hasMessageContaining("2281h").hasMessageContaining("226xh");
    }

    @Test
    void aSilentChipIsNamed() {
        wire.silence(AT);

        assertThat(why()).isEqualTo(Failure.NO_ANSWER);
    }
}
