package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Optional;
import rigwarden.logbook.Broken;
import rigwarden.logbook.Cycle;
import rigwarden.logbook.Cycles;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredOrders;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.run.LeftOff;
import rigwarden.run.Next;
import rigwarden.run.RunMachine;
import rigwarden.run.RunState;
import rigwarden.warden.Granted;
import rigwarden.warden.Guard;
import rigwarden.warden.Judged;
import rigwarden.warden.Orders;
import rigwarden.warden.Warden;

/** Stored runs put through the core once more: whole ones, and what a process left behind when it died. */
final class Replayed {
    private Replayed() {}

    /**
     * How a replay ended.
     *
     * @param scans that it had
     * @param guard as it was left
     */
    record End(long scans, Guard guard) {}

    /** A whole stored run, scan by scan; fails at the first whose orders are not those that are stored with it. */
    static End through(Path file, Rig rig, Program program) {
        Warden warden = new Warden(rig);
        RunMachine machine = new RunMachine(rig, program);
        RunState state = RunState.IDLE;
        Orders inForce = Orders.OFF;
        Guard guard = warden.fresh(0);
        long scans = 0;
        try (RunReader reader = RunReader.open(file); Cycles cycles = reader.cycles()) {
            assertThat(reader.integrity()).isEmpty();
            while (cycles.hasNext()) {
                Cycle cycle = cycles.next();
                Judged judged = warden.judge(guard, cycle.scan(), inForce, cycle.inbox());
                Next next = machine.next(state, judged.verdict(), cycle.scan(), cycle.inbox());
                Granted granted = warden.grant(judged.guard(), judged.verdict(), cycle.scan(), next.wish());
                if (!StoredOrders.of(granted.orders()).equals(cycle.orders())) {
                    assertThat(StoredOrders.of(granted.orders())).as("scan %d", cycle.scan().number())
                            .isEqualTo(cycle.orders());
                }
                guard = granted.guard();
                state = next.state();
                inForce = granted.orders();
                scans++;
            }
        }
        return new End(scans, guard);
    }

    /** That the first run of a logbook, which {@link KilledRehearsal} began, gives the orders that are stored with it. */
    static void toTheSameOrders(Logbook book) {
        LeftOff left = Broken.read(book.runs().getFirst(), book.runs(), book.file(1), Bench.rig(), Bench.night());
        assertThat(left.fault()).as("replays to the stored orders").isEqualTo(Optional.empty());
    }
}
