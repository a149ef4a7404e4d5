package rigwarden.serial;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.Random;
import org.junit.jupiter.api.Test;

class ReplyTest {
    private final Reply reply = new Reply();

    private Reply.Outcome take(String text) {
        reply.start();
        Reply.Outcome last = Reply.Outcome.MORE;
        for (byte b : text.getBytes(StandardCharsets.US_ASCII)) {
            last = reply.take(b);
        }
        return last;
    }

    @Test
    void allNumberFormsOfTheStandardAreRead() {
        // from memory (IEEE 488.2, 7.7.2 and 8.7): NRf examples
        String[] texts = {"12", "+12", "12.", ".5", "1.2E3", "1.2e+03", "-.5E-2", "28.800", "0.0000", "-0"};
        double[] values = {12, 12, 12, 0.5, 1200, 1200, -0.005, 28.8, 0, 0};
        for (int i = 0; i < texts.length; i++) {
            assertThat(take(texts[i] + "\n")).as(texts[i]).isEqualTo(Reply.Outcome.COMPLETE);
            assertThat(reply.value(0)).as(texts[i]).isEqualTo(values[i], within(0.0));
        }
    }

    @Test
    void theMarkForNotANumberIsReadAsTheLargeNumberThatItIs() {
        // from memory (SCPI-1999 volume 1, 7.2.1.4): 9.91E37
        assertThat(take("9.91E37\n")).isEqualTo(Reply.Outcome.COMPLETE);
        assertThat(reply.value(0)).isCloseTo(9.91e37, within(1e22));
    }

    @Test
    void fourAnswersAndAnErrorTextAreOneLine() {
        assertThat(take("28.8012;-50.1;1;0,\"No error\"\r\n")).isEqualTo(Reply.Outcome.COMPLETE);

        assertThat(reply.fields()).isEqualTo(4);
        assertThat(reply.value(0)).isEqualTo(28.8012);
        assertThat(reply.value(1)).isEqualTo(-50.1);
        assertThat(reply.value(2)).isEqualTo(1);
        assertThat(reply.value(3)).isEqualTo(0);
    }

    @Test
    void aSemicolonInsideAnErrorTextSeparatesNothing() {
        // published (SCPI-1999 as quoted by instrument manuals): <number>,"<text>[;device info]"
        assertThat(take("1;2;0;-222,\"Data out of range;VOLT\"\n")).isEqualTo(Reply.Outcome.COMPLETE);
        assertThat(reply.fields()).isEqualTo(4);
        assertThat(reply.value(3)).isEqualTo(-222);
    }

    @Test
    void whatIsNotAnAnswerIsGarbledAndTheNextLineIsReadAgain() {
        String[] wrong = {"", "-", ".", "1.2.3", "12V", "1;;2", "1;2;3;4;5", "1E", "1E+", "1E100", "\"x\"", "1,\"open",
            "9".repeat(300), "1;", "--1"};
        for (String text : wrong) {
            assertThat(take(text + "\n")).as(text).isEqualTo(Reply.Outcome.GARBLED);
            assertThat(take("7\n")).isEqualTo(Reply.Outcome.COMPLETE);
            assertThat(reply.value(0)).isEqualTo(7);
        }
    }

    @Test
    void anySequenceOfBytesLeadsSomewhere() {
        Random random = new Random(12);
        reply.start();
        int lines = 0;
        for (int i = 0; i < 200_000; i++) {
            if (reply.take((byte) random.nextInt(256)) != Reply.Outcome.MORE) {
                reply.start();
                lines++;
            }
        }
        assertThat(lines).isGreaterThan(500);
    }
}
