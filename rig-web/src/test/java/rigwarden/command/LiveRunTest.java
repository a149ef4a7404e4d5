package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rigwarden.emulated.EmulatedRig;
import rigwarden.live.Desk;
import rigwarden.loop.Bench;
import rigwarden.loop.Clock;
import rigwarden.loop.Pacer;
import rigwarden.pack.Fault;
import rigwarden.emulated.BoardFault;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.run.Event;
import rigwarden.warden.Lease;
import rigwarden.warden.Orders;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;

/** The loop of a real run, on an emulated rig whose clock the pacer's sleep moves on. */
class LiveRunTest {
    private static final Path RIGS = Path.of("..", "hardware", "rigs");
    private static final long START_SCAN = 50;
    private static final long CLEAR_SCAN = 250;

    private final Desk desk = new Desk();
    private final List<Event> events = new ArrayList<>();
    private final AtomicBoolean end = new AtomicBoolean();
    private final AtomicLong scans = new AtomicLong();
    private Rig rig;
    private Program program;
    private EmulatedRig emulated;
    private Runnable atScan = () -> { };

    @BeforeEach
    void aRig() throws Exception {
        Read.Sound<Rig> read = (Read.Sound<Rig>) RigFile.read(RIGS.resolve("one-cell.toml"));
        rig = read.value();
        Program night = ((Read.Sound<Program>) ProgramFile.read(RIGS.resolve("one-cell-night.toml"), read)).value();
        program = new Program(night.name(), false, night.steps());
        emulated = new EmulatedRig(rig, 1);
    }

    /** The emulated bench, its world brought to the clock's time before each scan. */
    private final class CaughtUp implements Bench {
        @Override
        public Scan take() {
            scans.incrementAndGet();
            atScan.run();
            emulated.catchUp();
            return emulated.rigBench().take();
        }

        @Override
        public boolean apply(Orders orders) {
            return emulated.rigBench().apply(orders);
        }

        @Override
        public void beat(Lease lease) {
            emulated.rigBench().beat(lease);
        }
    }

    private long run() {
        Clock clock = emulated.clock();
        Pacer pacer = Pacer.ofScan(clock, rig.scanNanos());
        return new LiveRun(rig, program, new CaughtUp(), (_, _, _, _) -> { }, desk, pacer, clock.nanos(), end::get,
                events::addAll, Optional.empty()).run();
    }

    private boolean saw(Class<? extends Event> kind) {
        return events.stream().anyMatch(kind::isInstance);
    }

    @Test
    void nothing_starts_that_nobody_asked_for() {
        atScan = () -> end.set(scans.get() > 600);

        run();

        assertThat(events).isEmpty();
        assertThat(emulated.world().coulombs()).isZero();
    }

    @Test
    void a_start_from_the_desk_runs_and_a_stop_from_the_desk_ends_it() {
        atScan = () -> {
            if (scans.get() == START_SCAN) {
                desk.ask(Request.START);
            } else if (scans.get() == 3000) {
                assertThat(emulated.world().amps()).isGreaterThan(15);
                desk.stop();
            }
        };

        long taken = run();

        assertThat(saw(Event.StopRequested.class)).isTrue();
        assertThat(taken).isBetween(3049L, 3060L);
        assertThat(Math.abs(emulated.world().amps())).isLessThan(0.1);
    }

    @Test
    void after_a_trip_it_goes_on_watching_until_the_process_is_ended() {
        atScan = () -> {
            if (scans.get() == START_SCAN) {
                desk.ask(Request.START);
            } else if (scans.get() == 1000) {
                emulated.inflict(new BoardFault.InWorld(new Fault.LoopOpens()));
            }
            end.set(scans.get() > 5000);
        };

        long taken = run();

        assertThat(saw(Event.Tripped.class)).isTrue();
        assertThat(taken).isGreaterThan(5000);
    }

    @Test
    void a_start_after_a_trip_that_was_cleared_before_it_runs_on() {
        atScan = () -> {
            if (scans.get() == START_SCAN) {
                emulated.inflict(new BoardFault.CardStalls(11));
            } else if (scans.get() == CLEAR_SCAN) {
                desk.ask(Request.CLEAR);
            } else if (scans.get() == CLEAR_SCAN + 20) {
                desk.ask(Request.START);
            } else if (scans.get() == CLEAR_SCAN + 2000) {
                assertThat(emulated.world().amps()).as("still under current").isGreaterThan(15);
                end.set(true);
            }
        };

        run();

        assertThat(saw(Event.Tripped.class)).isTrue();
        assertThat(saw(Event.Cleared.class)).isTrue();
        assertThat(saw(Event.Started.class)).isTrue();
        assertThat(Math.abs(emulated.world().amps())).isLessThan(0.1);
    }

    @Test
    void a_run_that_nobody_has_shown_himself_at_for_a_quarter_of_an_hour_is_stopped() {
        atScan = () -> {
            if (scans.get() == START_SCAN) {
                desk.ask(Request.START);
            }
        };

        run();

        assertThat(saw(Event.StopRequested.class)).isTrue();
        assertThat(emulated.clock().nanos()).isBetween(Attendance.LONGEST_NANOS, Attendance.LONGEST_NANOS + 11_000_000_000L);
    }
}
