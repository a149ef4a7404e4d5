package rigwarden.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.pi4j.context.Context;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import rigwarden.bus.BusFailure;
import rigwarden.bus.RealBoard;
import rigwarden.panel.Output;
import rigwarden.panel.Outputs;

/** What becomes of lines and buses when the process that has them hangs or dies; on the kernel only, in this order. */
final class ProcessContract {
    private static final int CONTACTOR = ContractRig.LINES.get(Output.CONTACTOR);
    private static final int HEARTBEAT = ContractRig.LINES.get(Output.HEARTBEAT);
    private static final long LOOK_NANOS = 1_000_000_000L;
    private static final long LONGEST_NANOS = 30_000_000_000L;

    private final KernelHeader header;
    private Process holder;

    private ProcessContract(KernelHeader header) {
        this.header = header;
    }

    static List<Case> cases(KernelHeader header) {
        ProcessContract contract = new ProcessContract(header);
        return List.of(
                new Case("another process has bus and lines", contract::start),
                new Case("a bus that another process has is refused", contract::busRefused),
                new Case("lines that another process has are refused and stay as they are", contract::linesRefused),
                new Case("a process that hangs leaves its lines as they are and its beat stops", contract::hangs),
                new Case("a process that is killed leaves its lines as they are and its beat stops", contract::killed),
                new Case("the next start has the bus and claims every line low", contract::next));
    }

    private void start() throws Exception {
        holder = new ProcessBuilder(ContractMain.java(Holder.class)).redirectErrorStream(true).start();
        BufferedReader said = holder.inputReader(StandardCharsets.US_ASCII);
        String line = said.readLine();
        while (line != null && !line.equals(Holder.READY)) {
            System.out.println("holder: " + line);
            line = said.readLine();
        }
        assertThat(line).isEqualTo(Holder.READY);
        assertThat(header.high(CONTACTOR)).isTrue();
        assertThat(beats(LONGEST_NANOS, 2)).as("beats").isEqualTo(2);
    }

    private void busRefused() {
        assertThatThrownBy(header::open).isInstanceOf(BusFailure.class)
                .hasMessage("/dev/i2c-7 is in use by another process, and two on one bus take each other's answers:"
                        + " end the other one first");
    }

    private void linesRefused() throws Exception {
        Context context = RealBoard.open(List.of(), Path.of("/dev"), OptionalInt.of(0));
        try {
            assertThatThrownBy(() -> Outputs.claim(context, ContractRig.RIG)).isInstanceOf(BusFailure.class)
                    .hasMessageContaining("contactor on line 0").hasMessageContaining("sounder on line 4");
            assertThat(header.high(CONTACTOR)).isTrue();
        } finally {
            context.shutdown();
        }
        assertThat(header.high(CONTACTOR)).as("after the refused one has gone").isTrue();
    }

    private void hangs() throws Exception {
        signal("STOP");
        assertThat(beats(LOOK_NANOS, 2)).as("beats while it hangs").isLessThan(2);
        assertThat(beats(LOOK_NANOS, 1)).as("beats in a second more").isZero();
        assertThat(header.high(CONTACTOR)).isTrue();

        signal("CONT");
        assertThat(beats(LONGEST_NANOS, 2)).as("beats when it goes on").isEqualTo(2);
    }

    private void killed() throws Exception {
        holder.destroyForcibly().waitFor();

        assertThat(header.claimed(CONTACTOR)).isFalse();
        assertThat(beats(LOOK_NANOS, 1)).as("beats of a dead process").isZero();
        assertThat(header.high(CONTACTOR)).as("which is why the heartbeat stage must drop the coils").isTrue();
    }

    private void next() throws Exception {
        Context context = header.open();
        try {
            Outputs.claim(context, ContractRig.RIG);
            for (int line : ContractRig.LINES.values()) {
                assertThat(header.claimed(line) && !header.high(line)).as("line %d claimed low", line).isTrue();
            }
        } finally {
            context.shutdown();
        }
    }

    /** Changes of the heartbeat's level until there were so many or the time is over. */
    private int beats(long nanos, int wanted) throws Exception {
        long end = System.nanoTime() + nanos;
        boolean before = header.high(HEARTBEAT);
        int beats = 0;
        while (beats < wanted && System.nanoTime() < end) {
            boolean now = header.high(HEARTBEAT);
            beats += now == before ? 0 : 1;
            before = now;
            Thread.sleep(5);
        }
        return beats;
    }

    private void signal(String name) throws IOException, InterruptedException {
        assertThat(new ProcessBuilder("busybox", "kill", "-" + name, Long.toString(holder.pid())).start().waitFor()).isZero();
    }
}
