package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import rigwarden.pack.Chance;

/** Each communication error of IEC 61784-3, on the port of a source. */
class PortErrorsTest {
    private final Post post = new Post();
    private final ScpiInstrument source = ScpiInstrument.source(
            post, ScpiInstrument.Errors.NONE, new ScpiInstrument.Ratings(60, 50));
    private final VirtualClock clock = new VirtualClock(0);

    private Port port(WireError error, double delaySeconds) {
        return new PortErrors(new StraightPort(source), clock, error, 1, Math.round(delaySeconds * 1e9), Chance.of(3, "port", "errors"));
    }

    private static String said(Port port, String words) {
        byte[] bytes = (words + "\n").getBytes(StandardCharsets.US_ASCII);
        port.send(bytes, bytes.length);
        return heard(port);
    }

    private static String heard(Port port) {
        byte[] into = new byte[200];
        return new String(into, 0, port.pending() == 0 ? 0 : port.take(into), StandardCharsets.US_ASCII);
    }

    private double amps() {
        return Double.parseDouble(said(new StraightPort(source), "SOUR:CURR?").strip());
    }

    @Test
    void a_lost_order_does_nothing_and_a_late_one_comes_when_its_time_is_over() {
        said(port(WireError.LOSS, 0), "SOUR:CURR 20");
        assertThat(amps()).isZero();

        Port late = port(WireError.DELAY, 2);
        said(late, "SOUR:CURR 20");
        assertThat(amps()).isZero();
        clock.sleepUntil(2_000_000_000L);
        heard(late);
        assertThat(amps()).isEqualTo(20);
    }

    @Test
    void an_old_order_comes_once_more_after_the_new_one() {
        Port repeats = port(WireError.REPETITION, 0);

        said(repeats, "SOUR:CURR 20");
        said(repeats, "SOUR:CURR 5");

        assertThat(amps()).isEqualTo(20);
    }

    @Test
    void two_orders_change_places() {
        Port port = port(WireError.WRONG_SEQUENCE, 0);

        said(port, "SOUR:CURR 20");
        said(port, "SOUR:CURR 5");

        assertThat(amps()).isEqualTo(20);
    }

    @Test
    void an_answer_is_corrupted_lost_late_or_another_s() {
        String true0 = said(new StraightPort(source), "SOUR:CURR?");

        assertThat(said(port(WireError.LOSS, 0), "SOUR:CURR?")).isEmpty();
        assertThat(said(port(WireError.CORRUPTION, 0), "SOUR:CURR?")).isNotEqualTo(true0);
        assertThat(said(port(WireError.MASQUERADE, 0), "SYST:ERR?")).isNotEqualTo(true0);
    }

    @Test
    void something_that_nobody_sent_is_heard_before_the_answer() {
        String heard = said(port(WireError.INSERTION, 0), "SOUR:CURR?");

        assertThat(heard.lines().count()).isGreaterThan(1);
        assertThat(heard).endsWith("0.00000\n");
    }
}
