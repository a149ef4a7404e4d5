package rigwarden.emulated;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.pack.Chance;

/** Each communication error of IEC 61784-3, on a bus with two chips whose only register counts its reads. */
class BusErrorsTest {
    private static final int HERE = 0x40;
    private static final int THERE = 0x41;

    /** Answers its own number and how often it was read; keeps what was written. */
    private static final class Counter implements I2cTarget {
        private final int number;
        private int reads;
        private final List<String> written = new ArrayList<>();

        private Counter(int number) {
            this.number = number;
        }

        @Override
        public int written(byte[] bytes, int offset, int length) {
            if (length > 1) {
                written.add(Arrays.toString(Arrays.copyOfRange(bytes, offset, offset + length)));
            }
            return length;
        }

        @Override
        public int read(byte[] into, int offset, int length) {
            reads++;
            into[offset] = (byte) number;
            into[offset + 1] = (byte) reads;
            return 2;
        }
    }

    private final VirtualClock clock = new VirtualClock(0);
    private final Counter here = new Counter(7);
    private final Counter there = new Counter(9);

    private Wire wire(WireError error, double share, double delaySeconds) {
        I2cTarget[] chips = new I2cTarget[128];
        chips[HERE] = here;
        chips[THERE] = there;
        return new BusErrors(new StraightWire(chips), clock, List.of(HERE, THERE), error, share, Math.round(delaySeconds * 1e9),
                Chance.of(1, "bus", "errors"));
    }

    private static String read(Wire wire) {
        byte[] into = new byte[2];
        return wire.read(HERE, into, 0, 2) < 0 ? "none" : into[0] + "." + into[1];
    }

    @Test
    void without_a_share_nothing_is_touched() {
        for (WireError error : WireError.values()) {
            assertThat(read(wire(error, 0, 1))).as("%s", error).startsWith("7.");
        }
    }

    @Test
    void corruption_turns_bits_and_repetition_gives_the_old_answer_again() {
        assertThat(read(wire(WireError.CORRUPTION, 1, 0))).isNotEqualTo("7.1");

        Wire repeats = wire(WireError.REPETITION, 1, 0);
        String first = read(repeats);
        assertThat(read(repeats)).isEqualTo(first);
    }

    @Test
    void wrong_sequence_gives_the_answer_before_and_keeps_the_new_one() {
        Wire wire = wire(WireError.WRONG_SEQUENCE, 1, 0);
        read(wire);

        assertThat(read(wire)).isEqualTo("7.1");
        assertThat(read(wire)).isEqualTo("7.2");
        assertThat(here.reads).isEqualTo(3);
    }

    @Test
    void two_orders_change_places() {
        Wire wire = wire(WireError.WRONG_SEQUENCE, 1, 0);

        wire.written(HERE, new byte[] {1, 1}, 0, 2);
        wire.written(HERE, new byte[] {2, 2}, 0, 2);

        assertThat(here.written).containsExactly("[2, 2]", "[1, 1]");
    }

    @Test
    void a_late_answer_is_as_old_as_the_delay_and_a_late_order_comes_after_it() {
        Wire wire = wire(WireError.DELAY, 1, 0.5);
        for (int scan = 0; scan < 10; scan++) {
            clock.sleepUntil(scan * 100_000_000L);
            read(wire);
        }
        clock.sleepUntil(1_000_000_000L);
        assertThat(read(wire)).as("the sixth, of half a second ago").isEqualTo("7.6");
        wire.written(HERE, new byte[] {1, 1}, 0, 2);

        assertThat(here.written).isEmpty();
        clock.sleepUntil(1_600_000_000L);
        wire.written(HERE, new byte[] {3}, 0, 1);
        assertThat(here.written).containsExactly("[1, 1]");
    }

    @Test
    void a_lost_message_is_either_not_acknowledged_or_swallowed() {
        Wire wire = wire(WireError.LOSS, 1, 0);

        for (int i = 0; i < 20; i++) {
            assertThat(read(wire)).isIn("none", "-1.-1");
            wire.written(HERE, new byte[] {1, 1}, 0, 2);
        }
        assertThat(here.written).isEmpty();
    }

    @Test
    void masquerade_and_addressing_let_another_chip_answer() {
        assertThat(read(wire(WireError.MASQUERADE, 1, 0))).startsWith("9.");
        assertThat(read(wire(WireError.ADDRESSING, 1, 0))).startsWith("9.");
    }

    @Test
    void an_order_to_a_wrong_address_reaches_the_other_chip_and_an_inserted_one_nobody_sent() {
        wire(WireError.ADDRESSING, 1, 0).written(HERE, new byte[] {1, 1}, 0, 2);
        assertThat(there.written).containsExactly("[1, 1]");
        assertThat(here.written).isEmpty();

        wire(WireError.INSERTION, 1, 0).written(HERE, new byte[] {1, 1}, 0, 2);
        assertThat(here.written).hasSize(2).first().isEqualTo("[1, 1]");
    }

    @Test
    void a_copy_meddles_on_in_the_same_way() {
        Wire wire = wire(WireError.CORRUPTION, 0.5, 0);
        for (int i = 0; i < 5; i++) {
            read(wire);
        }
        I2cTarget[] chips = new I2cTarget[128];
        Counter same = new Counter(7);
        same.reads = here.reads;
        chips[HERE] = same;
        Wire copy = wire.onto(new StraightWire(chips), new VirtualClock(0));

        for (int i = 0; i < 20; i++) {
            assertThat(read(copy)).isEqualTo(read(wire));
        }
    }
}
