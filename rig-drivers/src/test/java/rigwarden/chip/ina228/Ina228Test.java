package rigwarden.chip.ina228;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.scripted.HandClock;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.ScriptedShunt;
import rigwarden.scripted.Wire;
import rigwarden.warden.Failure;

class Ina228Test {
    private static final int AT = 0x40;
    private static final long SCAN = 100_000_000;

    private final Wire wire = new Wire();
    private final HandClock clock = new HandClock();
    private final ScriptedShunt shunt = new ScriptedShunt(wire, AT);
    private final Ina228Codec codec = new Ina228Codec(327.68, 0.0005, AdcRange.WIDE);
    private Chip bus;
    private Ina228 chip;

    @BeforeEach
    void start() throws BusFailure {
        bus = Chip.at(Scripted.context(wire), 1, AT);
        chip = Ina228.started(bus, clock, Ina228Config.LARGE_CELLS, codec);
        shunt.ready(true);
        wire.log.clear();
    }

    private static Failure why(ThrowingCallable call) {
        return catchThrowableOfType(BusFailure.class, call).why();
    }

    @Test
    void startingReadsTheAccumulatorBeforeAnythingIsWritten() throws BusFailure {
        Ina228.started(bus, clock, Ina228Config.LARGE_CELLS, codec);

        assertThat(wire.log).startsWith("read 40 3e", "read 40 3f", "read 40 a", "write 40 0");
        assertThat(wire.bytesOf(AT, 0x00)).isZero();
        assertThat(wire.bytesOf(AT, 0x01)).isEqualTo(0xBB6A);
        assertThat(wire.bytesOf(AT, 0x02)).isEqualTo(4096);
        assertThat(wire.bytesOf(AT, 0x0B)).isEqualTo(0x8001);
    }

    @Test
    void anotherChipIsRefusedWithWhatItSaid() {
        wire.put(AT, 0x3F, 0x23, 0x81);

        assertThat(catchThrowableOfType(BusFailure.class,
                () -> Ina228.started(bus, clock, Ina228Config.LARGE_CELLS, codec)))
                .hasMessageContaining("2381h").hasMessageContaining("bus 1, address 40h");
        assertThat(wire.count("write")).isZero();
    }

    @Test
    void aRegisterThatDoesNotKeepItsWordStopsTheStart() {
        wire.put(AT, 0x02, 0x10, 0x01);
        wire.keep(AT, 0x02);

        assertThat(why(() -> Ina228.started(bus, clock, Ina228Config.LARGE_CELLS, codec)))
                .isEqualTo(Failure.CONFIGURATION_LOST);
    }

    @Test
    void aScanIsFiveRegisterReads() throws BusFailure {
        shunt.current(-160_000);
        shunt.charge(-12_345_678_901L);
        wire.put(AT, 0x05, 0x3C, 0, 0);

        chip.check();
        assertThat(chip.current()).isEqualTo(-160_000);
        assertThat(chip.charge()).isEqualTo(-12_345_678_901L);
        assertThat(chip.bus()).isEqualTo(0x3C000);

        assertThat(wire.log).containsExactly("read 40 1", "read 40 b", "read 40 7", "read 40 a", "read 40 5");
    }

    @Test
    void aBrownOutIsSeenInTheConfiguration() {
        // published (SLYS022, ADC_CONFIG): reset value FB68h
        wire.put(AT, 0x01, 0xFB, 0x68);

        assertThat(why(chip::check)).isEqualTo(Failure.CONFIGURATION_LOST);
    }

    @Test
    void withoutANewResultTheScanIsNotReady() {
        shunt.ready(false);

        assertThat(why(chip::check)).isEqualTo(Failure.NOT_READY);
    }

    @Test
    void aChipThatDoubtsItsOwnMemoryOrArithmeticIsNotBelieved() {
        wire.put(AT, 0x0B, 0x80, 0x02);
        assertThat(why(chip::check)).isEqualTo(Failure.NONSENSE);
        wire.put(AT, 0x0B, 0x82, 0x03);
        assertThat(why(chip::check)).isEqualTo(Failure.NONSENSE);
    }

    @Test
    void anAccumulatorThatStandsStillUnderCurrentIsFound() throws BusFailure {
        shunt.current(1000);
        chip.current();
        chip.charge();
        clock.pass(SCAN);
        chip.current();

        assertThat(why(chip::charge)).isEqualTo(Failure.NOT_READY);
    }

    @Test
    void anAccumulatorMayStandStillAtRestAndJustAfterTheCurrentBegan() throws BusFailure {
        shunt.current(20);
        chip.current();
        chip.charge();
        clock.pass(SCAN);
        chip.current();
        assertThat(chip.charge()).isZero();
        shunt.current(1000);
        clock.pass(SCAN);
        chip.current();
        assertThat(chip.charge()).isZero();
    }

    @Test
    void theClockIsLearntAtStartAfterASecondAfterTenAndEachMinute() throws BusFailure {
        int edges = 0;
        for (int scan = 0; scan < 1310; scan++) {
            wire.log.clear();
            chip.learnClock();
            if (!wire.log.isEmpty()) {
                edges++;
                assertThat(scan).isIn(0, 10, 100, 700, 1300);
            }
            clock.pass(SCAN);
        }

        assertThat(edges).isEqualTo(5);
    }

    @Test
    void theRatioIsLearntFromTheFlagOfAChipWhoseClockRunsSlow() throws BusFailure {
        // published (SLYS021A, electrical characteristics): the chip's oscillator is within 0.5 %
        double cycle = 33_664_000 * 1.0047;
        long[] seen = {-1};
        wire.beforeRead = register -> {
            if (register == 0x0B) {
                long done = (long) (clock.nanos() / cycle);
                shunt.ready(done != seen[0]);
                seen[0] = done;
            }
        };
        for (int scan = 0; scan < 1900; scan++) {
            chip.check();
            chip.learnClock();
            clock.sleepUntil((scan + 1) * SCAN);
            if (scan == 20) {
                assertThat(chip.ratioCode() * 1e-9).isCloseTo(0.0047, within(3e-4));
            }
        }

        assertThat(chip.ratioCode() * 1e-9).isCloseTo(0.0047, within(2e-6));
    }

    @Test
    void aFlagThatNeverRisesEndsTheSearchAfterTwoResultsAndTheRatioAfterThreeMinutes() throws BusFailure {
        shunt.ready(false);

        chip.learnClock();

        assertThat(clock.nanos()).isBetween(66_000_000L, 68_000_000L);
        assertThat(chip.ratioCode()).isZero();
        clock.pass(181_000_000_000L);
        assertThat(why(chip::ratioCode)).isEqualTo(Failure.NOT_READY);
    }

    @Test
    void aCopyKnowsWhatTheOriginalKnew() throws BusFailure {
        shunt.current(1000);
        chip.current();
        chip.charge();
        chip.learnClock();
        Ina228 copy = new Ina228(bus, clock, Ina228Config.LARGE_CELLS, codec, chip.state());

        assertThat(copy.state()).isEqualTo(chip.state());
        clock.pass(SCAN);
        copy.current();
        assertThat(why(copy::charge)).isEqualTo(Failure.NOT_READY);
    }

    @Test
    void aCalibrationThatIsNotAsWrittenCostsAReadingAndIsWrittenAnew() throws BusFailure {
        chip.reference();
        wire.put(AT, 0x02, 0x08, 0);
        assertThat(why(chip::reference)).isEqualTo(Failure.CONFIGURATION_LOST);
        assertThat(wire.bytesOf(AT, 0x02)).isEqualTo(4096);
        chip.reference();
    }

    @Test
    void anotherChipAtItsPlaceIsFoundWhileItWorks() {
        wire.put(AT, 0x3F, 0x23, 0x81);
        assertThat(why(chip::reference)).isEqualTo(Failure.NONSENSE);
    }
}
