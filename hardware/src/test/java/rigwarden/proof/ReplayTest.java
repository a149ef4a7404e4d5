package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.Rehearsal;
import rigwarden.logbook.Cycle;
import rigwarden.logbook.Cycles;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.RunSettings;
import rigwarden.logbook.RunWriter;
import rigwarden.pack.Fault;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.warden.Guard;

/** A stored run, put through the core again, gives the orders that were stored with it. */
class ReplayTest {
    private static final Rig RIG = Bench.rig();
    private static final Program SHORT = new Program("short", false, List.of(
            new Step.Charge(0, 21, 3.60, 5.25),
            new Step.Rest(1_800_000_000_000L, 2_400_000_000_000L),
            new Step.Discharge(1, 52.5, 2.50),
            new Step.Park(0, 21, 0.4, 3.60)));

    @TempDir
    private Path folder;

    @Test
    void a_good_night_replays_to_the_same_orders() throws Exception {
        assertThat(Replayed.through(stored("good.db", 3, List.of()), RIG, SHORT).scans()).isGreaterThan(200_000);
    }

    @Test
    void a_night_that_trips_replays_to_the_same_orders_and_the_same_trip() throws Exception {
        Path file = stored("bad.db", 4, List.of(new BoardFault.OpenProbe(1)));

        assertThat(Replayed.through(file, RIG, SHORT).guard()).isInstanceOfSatisfying(Guard.Tripped.class,
                tripped -> assertThat(tripped.first().rule().number()).isEqualTo(31));
        try (RunReader reader = RunReader.open(file); Cycles cycles = reader.cycles()) {
            List<Integer> stored = new ArrayList<>();
            while (cycles.hasNext()) {
                cycles.next().events().forEach(e -> e.cause().ifPresent(c -> stored.add(c.rule())));
            }
            assertThat(stored).contains(31);
        }
    }

    @Test
    void the_same_seed_gives_the_same_rows_and_another_seed_other_codes() throws Exception {
        Path one = stored("one.db", 5, List.of(new BoardFault.InWorld(new Fault.LoopOpens())));
        Path same = stored("same.db", 5, List.of(new BoardFault.InWorld(new Fault.LoopOpens())));
        Path other = stored("other.db", 6, List.of(new BoardFault.InWorld(new Fault.LoopOpens())));

        assertThat(differences(one, same)).isZero();
        assertThat(differences(one, other)).isGreaterThan(100);
    }

    /** Runs the short night, with the faults after 100 s of current, and stores it. */
    private Path stored(String name, long seed, List<BoardFault> faults) throws Exception {
        Path file = folder.resolve(name);
        RunAbout about = new RunAbout("", "", Map.of(), "emulated", seed, true, "rehearsal", 0);
        try (RunWriter writer = RunWriter.create(file, about, RIG.channels(), RunSettings.USUAL.withBallast(0), _ -> { })) {
            Rehearsal rehearsal = new Rehearsal(RIG, SHORT, seed, List.of(), (scan, inbox, orders, events) -> {
                while (writer.fill() > 0.5) {
                    Thread.onSpinWait();
                }
                writer.offer(scan, inbox, orders, events);
            });
            Bench.until(rehearsal, () -> Bench.flowing(rehearsal, 1));
            Bench.seconds(rehearsal, 100);
            faults.forEach(rehearsal::inflict);
            while (!rehearsal.over()) {
                rehearsal.scan();
            }
            Bench.seconds(rehearsal, 5);
        }
        return file;
    }

    private static long differences(Path one, Path other) {
        long different = 0;
        try (RunReader a = RunReader.open(one); Cycles left = a.cycles();
                RunReader b = RunReader.open(other); Cycles right = b.cycles()) {
            while (left.hasNext() && right.hasNext()) {
                Cycle l = left.next();
                Cycle r = right.next();
                different += l.scan().equals(r.scan()) && l.orders().equals(r.orders()) && l.inbox().equals(r.inbox())
                        ? 0
                        : 1;
            }
            different += left.hasNext() != right.hasNext() ? 1 : 0;
        }
        return different;
    }
}
