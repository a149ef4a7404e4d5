package rigwarden.kernel;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.pi4j.context.Context;
import com.pi4j.io.gpio.digital.DigitalOutput;
import com.pi4j.io.gpio.digital.DigitalState;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.locks.LockSupport;
import rigwarden.bench.RigBench;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.I2cTarget;
import rigwarden.loop.RealClock;
import rigwarden.panel.Inputs;
import rigwarden.panel.Output;
import rigwarden.panel.Outputs;
import rigwarden.rig.Role;

/** What the rig relies on of its lines. */
final class LineContract {
    private static final int MOST_PULSES = 10;
    private static final long PULSE_WAIT_NANOS = 2_000_000_000L;
    private static final long POLL_NANOS = 1_000_000L;

    private final Header header;

    private LineContract(Header header) {
        this.header = header;
    }

    static List<Case> cases(Header header) {
        LineContract contract = new LineContract(header);
        return List.of(
                new Case("every output is claimed low", contract::claimedLow),
                new Case("a line that is claimed high is high", contract::claimedHigh),
                new Case("what is written is at the line", contract::written),
                new Case("a stop leaves every output low and lets it go", contract::stopped),
                new Case("a line cannot be claimed twice", contract::claimedTwice),
                new Case("outputs are claimed low before any chip is touched", contract::beforeChips),
                new Case("an edge of the stop loop is seen by polling", contract::edge));
    }

    private void claimedLow() throws Exception {
        Context context = header.open();
        try {
            Outputs.claim(context, ContractRig.RIG);

            assertLow(true);
        } finally {
            context.shutdown();
        }
    }

    private void assertLow(boolean claimed) throws Exception {
        for (int line : ContractRig.LINES.values()) {
            assertThat(header.claimed(line)).as("line %d claimed as an output", line).isEqualTo(claimed);
            assertThat(header.high(line)).as("line %d high", line).isFalse();
        }
    }

    private void claimedHigh() throws Exception {
        Context context = header.open();
        try {
            context.create(DigitalOutput.newConfigBuilder(context).id("select").address(ContractRig.FREE)
                    .initial(DigitalState.HIGH).shutdown(DigitalState.LOW).build());

            assertThat(header.high(ContractRig.FREE)).isTrue();
        } finally {
            context.shutdown();
        }
    }

    private void written() throws Exception {
        Context context = header.open();
        try {
            Outputs outputs = Outputs.claim(context, ContractRig.RIG);
            int heartbeat = ContractRig.LINES.get(Output.HEARTBEAT);
            for (int beat = 1; beat <= 4; beat++) {
                assertThat(outputs.toggleHeartbeat()).isTrue();
                assertThat(header.high(heartbeat)).as("after beat %d", beat).isEqualTo(beat % 2 == 1);
            }
            assertThat(outputs.set(Output.CONTACTOR, true)).isTrue();

            assertThat(header.high(ContractRig.LINES.get(Output.CONTACTOR))).isTrue();
            assertThat(header.high(ContractRig.LINES.get(Output.PRECHARGE))).isFalse();
        } finally {
            context.shutdown();
        }
    }

    private void stopped() throws Exception {
        Context context = header.open();
        Outputs outputs = Outputs.claim(context, ContractRig.RIG);
        for (Output output : outputs.all()) {
            outputs.set(output, true);
        }

        context.shutdown();

        assertLow(false);
    }

    private void claimedTwice() throws Exception {
        Context context = header.open();
        try {
            Outputs.claim(context, ContractRig.RIG);

            assertThatThrownBy(() -> Outputs.claim(context, ContractRig.RIG)).isInstanceOf(BusFailure.class)
                    .hasMessageContaining("contactor on line 0").hasMessageContaining("heartbeat on line 2");
            assertLow(true);
        } finally {
            context.shutdown();
        }
    }

    private void beforeChips() throws Exception {
        List<String> seen = new ArrayList<>();
        header.put(ContractRig.SHUNT, new I2cTarget() {
            @Override
            public int written(byte[] bytes, int offset, int length) {
                if (seen.isEmpty()) {
                    ContractRig.LINES.values().stream().sorted().map(LineContract.this::standing).forEach(seen::add);
                }
                return -1;
            }

            @Override
            public int read(byte[] into, int offset, int length) {
                return -1;
            }
        });
        Context context = header.open();
        try {
            assertThatThrownBy(() -> RigBench.start(ContractRig.RIG, context, new RealClock(), ContractRig.NO_AGENTS, ContractRig.OWN))
                    .isInstanceOf(BusFailure.class).hasMessageContaining("address 40h");

            assertThat(seen).as("when the first chip was first touched")
                    .containsExactly("0 out low", "1 out low", "2 out low", "4 out low");
            assertLow(true);
        } finally {
            context.shutdown();
        }
    }

    private String standing(int line) {
        try {
            return line + (header.claimed(line) ? " out " : " free ") + (header.high(line) ? "high" : "low");
        } catch (Exception e) {
            return line + " " + e;
        }
    }

    private void edge() throws Exception {
        Context context = header.open();
        try {
            Inputs inputs = Inputs.claim(context, ContractRig.RIG.panel());
            assertThat(inputs.read(Role.LOOP)).as("at rest").isZero();

            boolean up = false;
            for (int pulse = 0; pulse < MOST_PULSES && !up; pulse++) {
                header.pulse();
                up = turns(inputs, 1);
            }

            assertThat(up).as("rising edge seen").isTrue();
            assertThat(turns(inputs, 0)).as("falling edge seen").isTrue();
        } finally {
            context.shutdown();
        }
    }

    private static boolean turns(Inputs inputs, int level) throws BusFailure {
        long end = System.nanoTime() + PULSE_WAIT_NANOS;
        while (System.nanoTime() < end) {
            if (inputs.read(Role.LOOP) == level) {
                return true;
            }
            LockSupport.parkNanos(POLL_NANOS);
        }
        return false;
    }
}
