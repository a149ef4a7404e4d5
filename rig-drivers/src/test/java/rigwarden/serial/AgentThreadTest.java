package rigwarden.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import rigwarden.loop.Clock;
import rigwarden.rig.Commands;
import rigwarden.rig.Instrument;

class AgentThreadTest {
    private static final Instrument SINK = new Instrument("tty", 115_200, 60, 32, 0, 2_000_000, 0.005, 0.005, Commands.SINK);

    /** Every look at it is a millisecond later. */
    private static final class LookedAt implements Clock {
        private long nanos;

        @Override
        public synchronized long nanos() {
            nanos += 1_000_000;
            return nanos;
        }

        @Override
        public void sleepUntil(long then) {
            throw new AssertionError("an agent waits on its line only");
        }
    }

    @Test
    void theRunnerPollsAndItsLastWordIsOff() throws InterruptedException {
        CountDownLatch polled = new CountDownLatch(3);
        ScriptedLine line = new ScriptedLine() {
            @Override
            public int write(byte[] bytes, int length) {
                if (bytes[0] == 'M') {
                    polled.countDown();
                }
                return super.write(bytes, length);
            }
        };
        line.errors.add("-222,\"Data out of range\"");
        List<String> complaints = Collections.synchronizedList(new ArrayList<>());
        InstrumentAgent agent = new InstrumentAgent(SINK, 29.2, line, AgentState.at(0));
        try (AgentThread runner = AgentThread.start(agent, new LookedAt(), "sink", said -> complaints.add(said.words()))) {
            assertThat(polled.await(10, TimeUnit.SECONDS)).isTrue();
            assertThat(runner).isNotNull();
        }

        List<String> sent = List.copyOf(line.sent);
        assertThat(sent).startsWith("INP 0", "SOUR:CURR:PROT 29.200");
        assertThat(sent.getLast()).isEqualTo("INP 0");
        assertThat(complaints).contains("-222 Data out of range");
    }
}
