package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/**
 * Mark of the return values of a lost port: measured on jSerialComm 2.11.4 over a pty pair (design page "platform", 3).
 */
class EmulatedLineTest {
    private final Post post = new Post();
    private final ScpiInstrument source = ScpiInstrument.source(
            post, ScpiInstrument.Errors.NONE, new ScpiInstrument.Ratings(60, 50));
    private int emptySlices;
    private final EmulatedLine line = new EmulatedLine(source, () -> emptySlices++);

    @BeforeEach
    void switchOn() {
        assertThat(line.open()).isTrue();
        send("SOUR:VOLT 3.65;CURR 20;:OUTP ON");
    }

    @Test
    void aHealthyLineCarriesQuestionAndAnswer() {
        assertThat(send("OUTP?")).isEqualTo(6);
        assertThat(line.read(new byte[1])).isOne();
        assertThat(receive()).isEqualTo("\n");
        assertThat(receive()).isEmpty();
        assertThat(emptySlices).isOne();
    }

    @Test
    void aPortThatIsOpenCannotBeOpenedAgain() {
        assertThat(line.open()).isFalse();
    }

    @Test
    void aClosedPortCarriesNothing() {
        line.close();

        assertThat(send("OUTP OFF")).isEqualTo(-1);
        assertThat(line.read(new byte[8])).isEqualTo(-1);
        assertThat(post.on).isTrue();
    }

    @Test
    void aSilentInstrumentKeepsItsLastOutput() {
        line.set(LineFault.SILENT);

        assertThat(send("OUTP OFF")).isEqualTo(9);
        send("OUTP?");

        assertThat(receive()).isEmpty();
        assertThat(post.on).isTrue();
    }

    @Test
    void aDeafInstrumentAnswersAndDoesNotObey() {
        line.set(LineFault.DEAF_BUT_ALIVE);

        send("OUTP OFF");
        send("*RST");
        send("SOUR:VOLT 1;VOLT?;:OUTP?;:SYST:ERR?");

        assertThat(receive()).isEqualTo("3.65000;1;0,\"No error\"\n");
        assertThat(post.on).isTrue();
    }

    @Test
    void aGarbledAnswerIsNoAnswerOfTheInstrumentAndTheOrderStillCounts() {
        line.set(LineFault.GARBLED);

        send("OUTP OFF;OUTP?;:SOUR:VOLT?");

        assertThat(receive()).hasSize(10).isNotEqualTo("0;3.65000\n");
        assertThat(post.on).isFalse();
    }

    @Test
    void halfAnAnswerHasNoEnd() {
        line.set(LineFault.HALF_ANSWER);

        send("SOUR:VOLT?");

        assertThat(receive()).isEqualTo("3.65");
        line.set(LineFault.HEALTHY);
        send("OUTP?");
        assertThat(receive()).isEqualTo("1\n");
    }

    @Test
    void anUnpluggedPortIsLostUntilItIsOpenedAnewAndTheOutputStays() {
        line.set(LineFault.UNPLUGGED);

        assertThat(send("OUTP OFF")).isZero();
        assertThat(line.read(new byte[8])).isEqualTo(-1);
        assertThat(post.on).isTrue();
        line.close();
        assertThat(line.open()).isFalse();

        line.set(LineFault.HEALTHY);
        assertThat(line.open()).isTrue();
        send("OUTP?");
        assertThat(receive()).isEqualTo("1\n");
    }

    @Test
    void aPortThatWasPulledAndPutBackIsStillLost() {
        line.set(LineFault.UNPLUGGED);
        line.set(LineFault.HEALTHY);

        assertThat(line.read(new byte[8])).isEqualTo(-1);
        assertThat(send("OUTP?")).isZero();
    }

    @Test
    void aCopyCarriesTheFaultAndLeavesTheOriginalAlone() {
        Post other = new Post();
        line.set(LineFault.SILENT);
        EmulatedLine copy = line.copy(source.copy(other), () -> {});
        line.set(LineFault.HEALTHY);

        byte[] off = "OUTP OFF\n".getBytes(StandardCharsets.US_ASCII);
        copy.write(off, off.length);
        send("OUTP OFF");

        assertThat(post.on).isFalse();
        assertThat(copy.read(new byte[8])).isZero();
        copy.set(LineFault.HEALTHY);
        byte[] ask = "OUTP?\n".getBytes(StandardCharsets.US_ASCII);
        copy.write(ask, ask.length);
        byte[] into = new byte[8];
        assertThat(copy.read(into)).isEqualTo(2);
        assertThat(into[0]).isEqualTo((byte) '1');
    }

    private int send(String message) {
        byte[] bytes = (message + "\n").getBytes(StandardCharsets.US_ASCII);
        return line.write(bytes, bytes.length);
    }

    private String receive() {
        byte[] into = new byte[256];
        int count = line.read(into);
        return new String(into, 0, Math.max(count, 0), StandardCharsets.ISO_8859_1);
    }
}
