package rigwarden.loop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rig.TestRigs;
import rigwarden.run.Event;
import rigwarden.run.RunMachine;
import rigwarden.warden.Closing;
import rigwarden.warden.Inbox;
import rigwarden.warden.Lease;
import rigwarden.warden.Orders;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;
import rigwarden.warden.Scans;
import rigwarden.warden.Warden;

/** The cycle itself, on an obedient bench that fails where a test wants it to. */
class LoopTest {
    private static final Rig RIG = TestRigs.oneCell();

    /** An obedient bench that writes down what it is told. */
    private static final class FakeBench implements Bench {
        private final List<Orders> applied = new ArrayList<>();
        private Orders inForce = Orders.OFF;
        private boolean writes = true;
        private boolean throwsInTake;
        private boolean throwsInApply;
        private long number;
        private long nanos;
        private long stageNanos;
        private int beats;
        private int beatsInSilence;

        @Override
        public Scan take() {
            if (throwsInTake) {
                throw new IllegalStateException("a chip driver has a defect");
            }
            nanos += RIG.scanNanos();
            return new Scans(RIG, nanos).obeying(inForce, nanos - stageNanos).scan(++number);
        }

        @Override
        public boolean apply(Orders orders) {
            if (throwsInApply) {
                throwsInApply = false;
                throw new IllegalStateException("an output has a defect");
            }
            applied.add(orders);
            boolean same = orders instanceof Orders.Energised a && inForce instanceof Orders.Energised b
                    && a.stage() == b.stage();
            stageNanos = same ? stageNanos : nanos;
            inForce = orders;
            return writes;
        }

        @Override
        public void beat(Lease lease) {
            beats++;
            boolean silent = inForce instanceof Orders.Energised on && on.stage() == Closing.SILENCE;
            beatsInSilence += silent ? 1 : 0;
        }
    }

    private final FakeBench bench = new FakeBench();
    private final List<Event> events = new ArrayList<>();
    private Inbox inbox = Inbox.EMPTY;
    private boolean recorderThrows;
    private final Loop loop = loop();

    private Loop loop() {
        Warden warden = new Warden(RIG);
        RunMachine machine = new RunMachine(RIG, new Program("test", false, List.of(new Step.Charge(0, 21, 3.6, 5.25))));
        return new Loop(bench, warden, machine, (_, _, _, _) -> {
            if (recorderThrows) {
                throw new IllegalStateException("a recorder has a defect");
            }
        }, () -> inbox, Loop.fresh(warden, 0, Optional.empty()));
    }

    private void cycles(int count) {
        for (int i = 0; i < count; i++) {
            events.addAll(loop.cycle());
            inbox = Inbox.EMPTY;
        }
    }

    private void charging() {
        cycles(5);
        inbox = Inbox.of(Request.START);
        cycles(80);
        assertThat(bench.inForce).isInstanceOfSatisfying(Orders.Energised.class,
                on -> assertThat(on.stage()).isEqualTo(Closing.CURRENT));
    }

    @Test
    void beats_are_given_while_a_lease_is_in_force_and_in_no_other_cycle() {
        cycles(50);
        assertThat(bench.beats).as("idle is silent").isZero();

        charging();
        long energised = bench.applied.stream().filter(o -> o instanceof Orders.Energised on && on.beats()).count();

        assertThat(bench.beats).isEqualTo((int) energised);
        assertThat(bench.beatsInSilence).isZero();
        assertThat(events).hasAtLeastOneElementOfType(Event.HeartbeatProved.class);
    }

    @Test
    void no_beat_is_given_when_an_order_did_not_go_out() {
        charging();
        int before = bench.beats;
        bench.writes = false;
        cycles(3);

        assertThat(bench.beats).isEqualTo(before);
    }

    @Test
    void stop_is_off_in_the_same_cycle_whatever_else_is_in_the_inbox() {
        charging();
        inbox = new Inbox(true, List.of(Request.START, Request.CLEAR));
        cycles(1);

        assertThat(bench.inForce).isEqualTo(Orders.OFF_NOW);
    }

    @Test
    void an_exception_anywhere_is_off_at_once_and_for_good() {
        charging();
        bench.throwsInTake = true;

        assertThatThrownBy(loop::cycle).hasMessageContaining("a chip driver");
        assertThat(bench.inForce).isEqualTo(Orders.OFF_NOW);
        bench.throwsInTake = false;
        assertThatThrownBy(loop::cycle).hasMessageContaining("ended by an exception");
        assertThat(bench.inForce).isEqualTo(Orders.OFF_NOW);
    }

    @Test
    void a_throwing_output_is_tried_again_and_the_first_cause_is_kept() {
        charging();
        bench.throwsInApply = true;

        assertThatThrownBy(loop::cycle).hasMessageContaining("an output");
        assertThat(bench.inForce).isEqualTo(Orders.OFF_NOW);
    }

    @Test
    void a_throwing_recorder_ends_the_run_too() {
        charging();
        recorderThrows = true;

        assertThatThrownBy(loop::cycle).hasMessageContaining("a recorder");
        assertThat(bench.inForce).isEqualTo(Orders.OFF_NOW);
    }
}
