package rigwarden.chip.ads1220;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import com.pi4j.context.Context;
import java.util.Arrays;
import java.util.HexFormat;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.bus.BusFailure;
import rigwarden.bus.ReadyLine;
import rigwarden.bus.SpiNode;
import rigwarden.scripted.HandClock;
import rigwarden.scripted.Scripted;
import rigwarden.scripted.Wire;
import rigwarden.warden.Failure;

class Ads1220Test {
    private static final int READY = 22;

    private final Wire wire = new Wire();
    private final HandClock clock = new HandClock();
    private final byte[] registers = new byte[4];
    private byte[] result = {0, 0, 0};
    private boolean deaf;
    private Ads1220 chip;

    @BeforeEach
    void open() throws BusFailure {
        Context context = Scripted.context(wire);
        wire.levels.put(READY, true);
        wire.onLines.put(17, this::answer);
        chip = new Ads1220(SpiNode.at(context, 0, 0, 1, 1_000_000).chip(context, 17), ReadyLine.at(context, READY), clock,
                new Ads1220Config(VoltageReference.EXTERNAL));
        chip.configure();
        wire.log.clear();
    }

    private byte[] answer(byte[] sent) {
        byte[] answer = new byte[sent.length];
        if (deaf) {
            return answer;
        }
        switch (sent[0] & 0xF0) {
            case 0x40 -> System.arraycopy(sent, 1, registers, 0, sent.length - 1);
            case 0x20 -> System.arraycopy(registers, 0, answer, 1, 4);
            case 0x10 -> System.arraycopy(result, 0, answer, 1, 3);
            case 0x00 -> wire.levels.put(READY, true);
            default -> throw new AssertionError("command " + sent[0]);
        }
        return answer;
    }

    private int convert(int input) throws BusFailure {
        chip.start(input);
        wire.levels.put(READY, false);
        return chip.finish(input);
    }

    /** Published (SBAS501C, data format); the scale at gain 1 and 2.048 V is computed. */
    @ParameterizedTest
    @CsvSource({"7FFFFF, 8388607", "000001, 1", "000000, 0", "FFFFFF, -1", "800000, -8388608"})
    void codesAreSignedAndExactAtTheirEnds(String hex, int code) {
        assertThat(Ads1220Codec.code(HexFormat.of().parseHex(hex))).isEqualTo(code);
    }

    @Test
    void aCodeIsTwoReferencesOverAllCodes() {
        assertThat(Ads1220Codec.voltsPerCode(2.048)).isCloseTo(244.14e-9, within(5e-12));
        assertThat(0x400000 * Ads1220Codec.voltsPerCode(4.096)).isEqualTo(2.048);
    }

    @Test
    void registersAreMadeOfTheirFields() {
        // published (SBAS683B, section 8.6): MUX 1000 is AIN0 against AVSS, gain 1, amplifier bypassed; the others from memory
        Ads1220Config own = new Ads1220Config(VoltageReference.INTERNAL);
        assertThat(own.registers(0)).containsExactly(0x81, 0x80, 0x00, 0x00);
        assertThat(own.registers(1)[0]).isEqualTo(0x91);
        assertThat(own.registers(3)[0]).isEqualTo(0xB1);
        assertThat(registers).containsExactly(0x81, 0x80, 0x40, 0x00);
    }

    @Test
    void anInputTakesFourTransactionsAndTheReadyLineIsAskedBeforeAnyOfThem() throws BusFailure {
        result = new byte[] {0x40, 0, 0};

        assertThat(convert(2)).isEqualTo(0x400000);

        assertThat(wire.log.stream().filter(line -> line.startsWith("spi"))).containsExactly("spi 0 40a1", "spi 0 08",
                "spi 0 2300000000", "spi 0 10000000");
    }

    @Test
    void theSlowestChipIsDoneInTheTimeThatIsWaited() {
        // 330 a second, 2 % slow (from memory): 3.091 ms
        assertThat(chip.conversionNanos()).isBetween(3_091_000L, 3_500_000L);
    }

    @Test
    void aConversionThatRunsGivesNoReading() throws BusFailure {
        chip.start(0);

        assertThat(catchThrowableOfType(BusFailure.class, () -> chip.finish(0)).why()).isEqualTo(Failure.NOT_READY);
    }

    @Test
    void aStartThatDidNotArriveIsNotReady() {
        wire.levels.put(READY, false);
        deaf = true;

        assertThat(catchThrowableOfType(BusFailure.class, () -> chip.start(0)).why()).isEqualTo(Failure.NOT_READY);
    }

    @Test
    void aResultOfAnotherInputIsNotTaken() throws BusFailure {
        chip.start(1);
        wire.levels.put(READY, false);

        assertThat(catchThrowableOfType(BusFailure.class, () -> chip.finish(2)).why()).isEqualTo(Failure.CONFIGURATION_LOST);
    }

    @Test
    void aBrownOutCostsAReadingAndIsWrittenAnew() throws BusFailure {
        chip.start(0);
        wire.levels.put(READY, false);
        Arrays.fill(registers, (byte) 0);
        assertThat(catchThrowableOfType(BusFailure.class, () -> chip.finish(0)).why()).isEqualTo(Failure.CONFIGURATION_LOST);

        result = new byte[] {0, 0, 1};

        assertThat(convert(0)).isEqualTo(1);
        assertThat(registers).containsExactly(0x81, 0x80, 0x40, 0x00);
    }

    @Test
    void aChipThatConvertsSlowlySinceItLostItsRegistersIsWrittenAnew() throws BusFailure {
        chip.start(0);
        Arrays.fill(registers, (byte) 0);

        assertThat(catchThrowableOfType(BusFailure.class, () -> chip.finish(0)).why()).isEqualTo(Failure.CONFIGURATION_LOST);

        assertThat(registers).containsExactly(0x81, 0x80, 0x40, 0x00);
    }

    @Test
    void aSilentChipIsRefusedAndAReadyLineThatNobodyKnowsIsNamed() {
        deaf = true;
        wire.levels.remove(READY);
        assertThat(catchThrowableOfType(BusFailure.class, () -> chip.start(0)).why()).isEqualTo(Failure.NO_ANSWER);

        assertThat(catchThrowableOfType(BusFailure.class, chip::configure).why()).isEqualTo(Failure.CONFIGURATION_LOST);
    }
}
