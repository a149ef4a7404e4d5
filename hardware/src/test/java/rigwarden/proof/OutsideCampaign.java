package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.bus.BusFailure;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/**
 * Runs in real time of a programme of ten seconds, whose instruments are stopped, killed, garbled or unplugged from outside
 * at random. Timed, so that it is not part of the default run; three runs by itself, {@code -DargLine=-Drigwarden.runs=40} for all.
 * Beside other work it wants precedence over that: an instrument's process that is not given a core answers late.
 */
class OutsideCampaign {
    private static final List<Suffering> SUFFERINGS = List.of(Suffering.values());
    private static final long SECOND = 1_000_000_000L;
    private static final int SINK = 1;
    private static final Program TEN_SECONDS = new Program("ten seconds", false,
            List.of(new Step.Pulse(SINK, 10, 5 * SECOND, 20, 5 * SECOND)));
    private static final List<String> FILES = List.of("one-cell.toml", "one-cell-modbus.toml");
    private static final int RUNS = Integer.getInteger("rigwarden.runs", 3);
    /** Runs that may trip before anything was done to them, of however many. */
    private static final int MOST_SPOILT = 2;

    @TempDir
    private Path folder;

    /** What became of one run. */
    private record Row(int run, String rig, String device, Suffering how, double atSeconds, double safeSeconds,
            double lastBeatSeconds, double allowedSeconds, String rule) {
        String print() {
            return String.format(Locale.ROOT, "%3d  %-18s %-7s %-10s %5.2f s   %5.2f s   %5.2f s   %4.2f s   %s", run, rig,
                    device, how.name().toLowerCase(Locale.ROOT), atSeconds, safeSeconds, lastBeatSeconds, allowedSeconds, rule);
        }
    }

    /** What is done in one run. */
    private record Draw(String file, Suffering how) {
        /** Every rig meets every suffering before anything comes again; the order within a round is drawn. */
        static List<Draw> of(int runs, Random random) {
            List<Draw> draws = new ArrayList<>();
            while (draws.size() < runs) {
                List<Draw> round = new ArrayList<>();
                FILES.forEach(file -> SUFFERINGS.forEach(how -> round.add(new Draw(file, how))));
                Collections.shuffle(round, random);
                draws.addAll(round);
            }
            return draws.subList(0, runs);
        }
    }

    @Test
    void every_rig_meets_every_suffering_in_the_first_eight_runs_and_as_often_in_forty() {
        List<Draw> draws = Draw.of(40, new Random(20_260_501));

        assertThat(new HashSet<>(draws.subList(0, FILES.size() * SUFFERINGS.size()))).hasSize(FILES.size() * SUFFERINGS.size());
        for (Draw draw : new HashSet<>(draws)) {
            assertThat(Collections.frequency(draws, draw)).as("%s", draw).isEqualTo(5);
        }
    }

    @Test
    void whatever_is_done_to_an_instrument_the_contactor_is_open_in_time() throws Exception {
        Random random = new Random(20_260_501);
        List<Draw> draws = Draw.of(RUNS, random);
        List<Row> rows = new ArrayList<>();
        int spoilt = 0;
        Count before = new Count(0, 0);
        for (int run = 1; run <= RUNS; ) {
            Draw draw = draws.get(run - 1);
            Row row = run(run, Bench.RIGS.resolve(draw.file()), draw.how(), random.nextInt(2), 0.3 + 9 * random.nextDouble(), random.nextLong());
            if (row.rule().startsWith("before")) {
                spoilt++;
                assertThat(spoilt).as("runs that tripped before anything was done to them: " + row.print()).isLessThanOrEqualTo(MOST_SPOILT);
            } else {
                rows.add(row);
                before = rows.size() == 1 ? Count.now() : before;
                run++;
            }
        }
        Count after = Count.now();

        System.out.println("run  rig                device  done        at        safe after last beat allowed  by rule");
        rows.forEach(row -> System.out.println(row.print()));
        System.out.printf("%d spoilt before, of %d allowed; threads %d before, %d after; descriptors %d before, %d after%n", spoilt,
                MOST_SPOILT, before.threads(), after.threads(), before.files(), after.files());
        assertThat(rows).allSatisfy(row -> {
            assertThat(row.safeSeconds()).isLessThan(row.allowedSeconds());
            assertThat(row.lastBeatSeconds()).isLessThan(row.allowedSeconds());
        });
        assertThat(after).isEqualTo(before);
    }

    /** Threads and open files of this process; not the threads that Java itself keeps for a minute to wait for the ends of other processes. */
    private record Count(int threads, int files) {
        static Count now() throws IOException {
            try (Stream<Path> open = Files.list(Path.of("/proc/self/fd"))) {
                return new Count((int) Thread.getAllStackTraces().keySet().stream().filter(t -> !t.getName().startsWith("process reaper")).count(),
                        (int) open.count());
            }
        }
    }

    private Row run(int number, Path file, Suffering how, int device, double at, long seed) throws IOException, BusFailure {
        Rig rig = ((Read.Sound<Rig>) RigFile.read(file)).value();
        Device.Programmed victim = (Device.Programmed) rig.devices().get(device);
        double allowed = 2 * victim.instrument().pollNanos() * 1e-9 + 1;
        Path place = Files.createDirectory(folder.resolve("run" + number + "-" + System.nanoTime()));
        try (OutsideRun run = new OutsideRun(place, file, rig, TEN_SECONDS, seed)) {
            long begun = -1;
            long done = -1;
            long safe = -1;
            long end = run.clock.nanos() + 90 * SECOND;
            while (run.clock.nanos() < end && (safe < 0 || run.clock.nanos() < safe + 2 * SECOND)) {
                run.scan();
                long now = run.clock.nanos();
                boolean flows = Math.abs(run.emulated.world().amps()) > 5;
                begun = begun < 0 && flows ? now : begun;
                if (done < 0 && run.over()) {
                    System.out.printf("spoilt: %s, loop late by at most %.0f ms, slowest answers of each instrument in ms %s%n",
                            rule(run), run.pacer.worstSeconds() * 1000, run.lines.stream().map(OutsideCampaign::slowest).toList());
                    return new Row(number, rig.name(), victim.name(), how, at, 0, 0, allowed, "before: " + rule(run));
                }
                if (done < 0 && begun >= 0 && now - begun > at * SECOND) {
                    run.instruments.get(device).suffer(how);
                    done = run.clock.nanos();
                } else if (done >= 0 && safe < 0 && run.open()) {
                    safe = run.clock.nanos();
                }
            }
            assertThat(safe).as("never safe: " + how + " of " + victim.name()).isPositive();
            return new Row(number, rig.name(), victim.name(), how, at, (safe - done) * 1e-9,
                    Math.max(0, run.beatNanos() - done) * 1e-9, allowed, rule(run));
        }
    }

    private static List<Long> slowest(TimedLine line) {
        List<Long> sorted = line.nanos().stream().map(nanos -> nanos / 1_000_000).sorted().toList();
        return sorted.subList(Math.max(0, sorted.size() - 4), sorted.size());
    }

    private static String rule(OutsideRun run) {
        return run.tripped.map(trip -> trip.first().rule().number() + " " + trip.first().rule().name() + ", " + trip.first().where().name()).orElse("ended by " + run.state());
    }
}
