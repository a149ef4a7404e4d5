package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ScpiInstrumentTest {
    private final Post post = new Post();
    private final ScpiInstrument source = ScpiInstrument.source(
            post, ScpiInstrument.Errors.NONE, new ScpiInstrument.Ratings(60, 50));

    // from memory (IEEE 488.2, *IDN?): four fields
    @Test
    void theIdentityHasFourFields() {
        assertThat(ask("*IDN?")).isEqualTo("EMULATED,SOURCE,0,0\n").matches("([^,]+,){3}[^,]+\n");
        assertThat(ask(sink(), "*IDN?")).isEqualTo("EMULATED,SINK,0,0\n");
    }

    // published (instrument manuals quoting IEEE 488.2): weights 128 and 32; from memory (the same): cleared by reading
    @Test
    void theEventRegisterStartsWithPowerOnAndIsClearedByReading() {
        assertThat(ask("*ESR?")).isEqualTo("128\n");
        assertThat(ask("*ESR?")).isEqualTo("0\n");
        assertThat(ask("NONSENSE 1")).isEmpty();
        assertThat(ask("*ESR?")).isEqualTo("32\n");
    }

    // from memory (SCPI-1999 volume 1, 6.2.1): exactly the short or the long form, in either case
    @ParameterizedTest
    @ValueSource(strings = {
        "SYST:ERR?", "syst:err?", "SYSTEM:ERROR?", "System:Error:Next?", ":SYST:ERR:NEXT?", "SYST1:ERR1?",
        " SYST:ERR? \r"
    })
    void shortAndLongFormsAreTheSameHeader(String query) {
        assertThat(ask(query)).isEqualTo("0,\"No error\"\n");
    }

    // from memory (SCPI-1999 volume 2, error numbers); -101 to -120 published in instrument manuals quoting it
    @ParameterizedTest
    @CsvSource({
        "SYSTE:ERR?, -113", "MEASU:VOLT?, -113", "VOLT 3, -113", "MEAS:VOLT, -113", "MEAS, -113", "MEAS:, -113",
        "SYST2:ERR?, -114", "SOUR:VOLT, -109", "MEAS:VOLT? 1, -108", "*RST 1, -108", "SOUR:VOLT ABC, -104",
        "SOUR:VOLT 3 A, -131", "SOUR:VOLT 3.2.1, -131", "SOUR:VOLT ., -120", "SOUR:VOLT 1E, -120", "SOUR:VOLT 61, -222",
        "SOUR:VOLT -1, -222", "SOUR:CURR 50.001, -222", "OUTP PERHAPS, -104", "*XYZ, -113", "*XYZ?, -113",
        "SOUR:VOLT?3, -102", "*SRE 256, -222", "*ESE, -109", "INP ON, -113"
    })
    void whatIsWrongIsNamedInTheErrorQueue(String message, int number) {
        assertThat(ask(message)).isEmpty();

        assertThat(ask("SYST:ERR?")).startsWith(number + ",\"");
        assertThat(ask("SYST:ERR?")).isEqualTo("0,\"No error\"\n");
    }

    // published (instrument manuals quoting SCPI-1999): first in, first out; the last one becomes -350 when
    // the queue is full
    @Test
    void aFullQueueEndsInItsOverflow() {
        for (int i = 0; i < 20; i++) {
            ask("SYSTE:ERR?");
        }

        for (int i = 0; i < 15; i++) {
            assertThat(ask("SYST:ERR?")).startsWith("-113");
        }
        assertThat(ask("SYST:ERR?")).isEqualTo("-350,\"Queue overflow\"\n");
        assertThat(ask("SYST:ERR?")).startsWith("0,");
    }

    // from memory (SCPI-1999 volume 1, compound headers): a header goes on from the node of the one before
    @Test
    void headersAfterASemicolonAreRelativeToTheNode() {
        post.volts = 3.276;
        post.amps = 10;

        assertThat(ask("MEAS:VOLT?;CURR?;:OUTP?;:SYST:ERR?")).isEqualTo("3.27600;10.00000;0;0,\"No error\"\n");
        assertThat(ask("SYST:ERR?;VERS?")).isEqualTo("0,\"No error\";1999.0\n");
        assertThat(ask("SYST:VERS?;*OPC?;ERR?")).as("common commands keep the node").startsWith("1999.0;1;0");
        assertThat(ask("MEAS:VOLT?;SYST:ERR?")).as("SYST is not below MEAS").isEqualTo("3.27600\n");
        assertThat(ask("SYST:ERR?")).startsWith("-113");
    }

    // from memory (IEEE 488.2 section 7.7.2, NRf)
    @ParameterizedTest
    @CsvSource({
        "12, 12", "+12, 12", "12., 12", ".5, 0.5", "1.2E1, 12", "1.2e+01, 12", "500E-3, 0.5", "3.65 V, 3.65",
        "3650MV, 3.65",
        "MAX, 60", "minimum, 0", "0.00000000000000000012E20, 12", "36.500000000000000000, 36.5"
    })
    void numbersAreReadInEveryForm(String text, double volts) {
        ask("SOUR:VOLT " + text);

        assertThat(post.orderedVolts).isEqualTo(volts);
        assertThat(ask("SYST:ERR?")).startsWith("0,");
    }

    @ParameterizedTest
    @CsvSource({"ON, true", "on, true", "1, true", "2.4, true", "OFF, false", "0, false", "0.4, false"})
    void theSwitchTakesWordsAndNumbers(String word, boolean on) {
        ask(on ? "OUTP OFF" : "OUTP ON");

        ask("OUTP " + word);

        assertThat(post.on).isEqualTo(on);
        assertThat(ask("OUTP?")).isEqualTo(on ? "1\n" : "0\n");
    }

    @Test
    void ordersReachTheTerminalsAndCanBeAskedFor() {
        ask("SOUR:VOLT 3.65;CURR 20;:OUTP ON");

        assertThat(post.on).isTrue();
        assertThat(post.orderedVolts).isEqualTo(3.65);
        assertThat(post.orderedAmps).isEqualTo(20);
        assertThat(ask("SOUR:VOLT?;CURR?")).isEqualTo("3.65000;20.00000\n");
        ask("*RST");
        assertThat(post.on).isFalse();
        assertThat(post.orderedVolts).isZero();
    }

    @Test
    void theSinkHasAnInputAndNoVoltage() {
        ScpiInstrument sink = sink();

        ask(sink, "SOUR:CURR 50;:INP ON");

        assertThat(post.on).isTrue();
        assertThat(post.orderedAmps).isEqualTo(50);
        assertThat(ask(sink, "INP?")).isEqualTo("1\n");
        ask(sink, "SOUR:VOLT 3");
        assertThat(ask(sink, "SYST:ERR?")).startsWith("-113");
    }

    @Test
    void anExecutionErrorDoesNotEndTheMessageButACommandErrorDoes() {
        ask("SOUR:VOLT 99;CURR 5");
        assertThat(post.orderedAmps).isEqualTo(5);

        ask("SOUR:VOLTS 9;CURR 7");

        assertThat(post.orderedAmps).isEqualTo(5);
    }

    @Test
    void theSourceSwitchesOffByItselfAboveItsProtection() {
        ask("SOUR:VOLT:PROT 3.7;:OUTP ON");
        post.volts = 3.71;

        source.protect();

        assertThat(post.on).isFalse();
        assertThat(ask("OUTP?;:SOUR:VOLT:PROT?")).isEqualTo("0;3.70000\n");
        assertThat(ask("SYST:ERR?")).startsWith("-240");
    }

    // from memory (IEEE 488.2 and SCPI-1999, status byte): bit 2 error queue, 5 events, 6 master summary
    @Test
    void theStatusByteSumsUp() {
        ask("*CLS;*ESE 32;*SRE 255");
        assertThat(ask("*STB?;*SRE?")).isEqualTo("0;191\n");

        ask("SYSTE:ERR?");

        assertThat(ask("*STB?")).isEqualTo("100\n");
        ask("*CLS");
        assertThat(ask("*STB?")).isEqualTo("0\n");
    }

    @Test
    void measuringErrorsAreThoseOfTheSpecimen() {
        ScpiInstrument off = ScpiInstrument.source(post, new ScpiInstrument.Errors(0.001, 0.002, -0.01, 0.1),
                new ScpiInstrument.Ratings(60, 50));
        post.volts = 3;
        post.amps = -10;

        assertThat(ask(off, "MEAS:VOLT?;CURR?")).isEqualTo("3.00500;-9.80000\n");
        post.volts = Double.NaN;
        assertThat(ask(off, "MEAS:VOLT?")).isEqualTo("9.91E+37\n");
    }

    @Test
    void aMessageMayArriveByteByByteAndSeveralAtOnce() {
        for (byte letter : "SYST:VERS?\n".getBytes(StandardCharsets.US_ASCII)) {
            source.receive(new byte[] {letter}, 1);
        }

        assertThat(answer(source)).isEqualTo("1999.0\n");
        assertThat(ask("*OPC?\n*TST?")).isEqualTo("1\n0\n");
    }

    @Test
    void anEndlessMessageIsAnOverrunAndTheNextOneWorks() {
        ask("A".repeat(600));

        assertThat(ask("SYST:ERR?")).startsWith("-363");
    }

    @Test
    void aCopyGoesOnWithTheStateAndItsOwnTerminals() {
        ask("SOUR:VOLT 3.65;CURR 20;:OUTP ON");
        byte[] half = "SOUR:CU".getBytes(StandardCharsets.US_ASCII);
        source.receive(half, half.length);
        Post other = new Post();

        ScpiInstrument copy = source.copy(other);
        ask(copy, "RR 4");

        assertThat(other.on).isTrue();
        assertThat(other.orderedVolts).isEqualTo(3.65);
        assertThat(other.orderedAmps).isEqualTo(4);
        assertThat(post.orderedAmps).isEqualTo(20);
    }

    @Test
    void aPollCostsLittle() {
        byte[] poll = "MEAS:VOLT?;CURR?;:OUTP?;:SYST:ERR?\n".getBytes(StandardCharsets.US_ASCII);
        byte[] into = new byte[128];
        post.volts = 3.276543;
        post.amps = 20.0001;
        int rounds = 500_000;

        int count = 0;
        for (int warm = 0; warm < 3; warm++) {
            long start = System.nanoTime();
            for (int i = 0; i < rounds; i++) {
                source.receive(poll, poll.length);
                count = source.take(into);
            }
            System.out.printf("poll: %.0f ns%n", (System.nanoTime() - start) / (double) rounds);
        }

        assertThat(new String(into, 0, count, StandardCharsets.US_ASCII))
                .isEqualTo("3.27654;20.00010;0;0,\"No error\"\n");
    }

    private ScpiInstrument sink() {
        return ScpiInstrument.sink(post, ScpiInstrument.Errors.NONE, new ScpiInstrument.Ratings(60, 100));
    }

    private String ask(String message) {
        return ask(source, message);
    }

    private static String ask(ScpiInstrument instrument, String message) {
        byte[] bytes = (message + "\n").getBytes(StandardCharsets.US_ASCII);
        instrument.receive(bytes, bytes.length);
        return answer(instrument);
    }

    private static String answer(ScpiInstrument instrument) {
        byte[] into = new byte[512];
        return new String(into, 0, instrument.take(into), StandardCharsets.US_ASCII);
    }
}
