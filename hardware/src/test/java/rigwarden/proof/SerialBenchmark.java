package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.emulated.BoardFault;
import rigwarden.loop.Pacer;
import rigwarden.loop.RealClock;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rigfile.Limits;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.rigfile.WireTime;
import rigwarden.warden.Request;

/**
 * A run in real time with instruments on pseudo-terminals, once in words, once in registers: how late scans begin, how long they take, how
 * fast instruments answer, and how long it is from a loop contact that opens, which is an input of this process, to the coil's order; beside a bare
 * loop in the same run. Three minutes a rig or {@code -DargLine=-Drigwarden.minutes=N}. Then the same from a cell's voltage that crosses its limit at the
 * pin of an emulated converter, 200 times a rig or {@code -Drigwarden.crossings=N}. Not in the default run. The I2C wire's time is worked out, its chips
 * being emulated.
 */
class SerialBenchmark {
    private static final double MINUTES = Double.parseDouble(System.getProperty("rigwarden.minutes", "3"));
    private static final int CROSSINGS = Integer.getInteger("rigwarden.crossings", 200);
    private static final int ATTEMPTS = 20;
    /** Over rule 1's limit for every tap. */
    private static final double CROSSES_TO_VOLTS = 3.85;
    private static final long LONGEST_NANOS = 5_000_000_000L;
    private static final long SECOND = 1_000_000_000L;
    private static final Program STEADY = new Program("steady", false,
            List.of(new Step.Pulse(1, 10, 3600 * SECOND, 20, 60 * SECOND)));

    @TempDir
    private Path folder;

    @Test
    void figures_in_words() throws Exception {
        measure("one-cell.toml");
    }

    @Test
    void figures_in_registers() throws Exception {
        measure("one-cell-modbus.toml");
    }

    @Test
    void crossings_in_words() throws Exception {
        cross("one-cell.toml");
    }

    @Test
    void crossings_in_registers() throws Exception {
        cross("one-cell-modbus.toml");
    }

    /** A cell's voltage crosses at the converter's pin, at any instant between two scans, while current flows. */
    private void cross(String file) throws Exception {
        Rig rig = ((Read.Sound<Rig>) RigFile.read(Bench.RIGS.resolve(file))).value();
        String cell = rig.inputs().stream().filter(input -> input.role() == Role.CELL_VOLTS).findFirst().orElseThrow().name();
        double stated = Limits.of(rig).reactions().stream().filter(one -> one.rule().number() == 1).findFirst().orElseThrow().seconds()
                - rig.guards().contactLagSeconds();
        List<Long> coil = new ArrayList<>();
        Map<String, Integer> rules = new TreeMap<>();
        try (OutsideRun run = new OutsideRun(Files.createDirectory(folder.resolve("run")), Bench.RIGS.resolve(file), rig, STEADY, 7)) {
            Random random = new Random(7);
            long begun = run.clock.nanos();
            while (coil.size() < CROSSINGS) {
                assertThat((run.clock.nanos() - begun) * 1e-9).as("seconds for %d crossings", coil.size()).isLessThan(60 + 60.0 * (coil.size() + 1));
                run.scan();
                if (run.over()) {
                    run.emulated.release(cell);
                    again(run, rig, new ArrayList<>(), new ArrayList<>());
                } else if (run.emulated.world().amps() < -5) {
                    run.tripped = Optional.empty();
                    run.clock.sleepUntil(run.clock.nanos() + random.nextLong(rig.scanNanos()));
                    long crossed = run.clock.nanos();
                    run.emulated.hold(cell, CROSSES_TO_VOLTS);
                    while (run.offNanos < crossed && run.clock.nanos() < crossed + LONGEST_NANOS) {
                        run.scan();
                    }
                    assertThat(run.offNanos).as("an order to open after the crossing").isGreaterThan(crossed);
                    coil.add(run.offNanos - crossed);
                    rules.merge(run.tripped.map(trip -> trip.first().rule().number() + " " + trip.first().rule().name()).orElse("none"), 1, Integer::sum);
                }
            }
        }

        print(rig.name() + ": a cell crosses at its converter to the coil's order", coil);
        System.out.printf(Locale.ROOT, "by rule %s; stated at the latest %.0f ms%n", rules, stated * 1000);
        assertThat(coil).allSatisfy(nanos -> assertThat(nanos * 1e-9).isLessThan(stated));
    }

    private void measure(String file) throws Exception {
        Rig rig = ((Read.Sound<Rig>) RigFile.read(Bench.RIGS.resolve(file))).value();
        List<Long> late = new ArrayList<>();
        List<Long> took = new ArrayList<>();
        List<Long> coil = new ArrayList<>();
        List<Long> answers = new ArrayList<>();
        BareLoop bare = new BareLoop(rig.scanNanos());
        try (bare; OutsideRun run = new OutsideRun(Files.createDirectory(folder.resolve("run")), Bench.RIGS.resolve(file), rig, STEADY, 7)) {
            Random random = new Random(7);
            long end = run.clock.nanos() + Math.round(MINUTES * 60 * SECOND);
            while (run.clock.nanos() < end) {
                scan(run, late, took);
                if (run.over()) {
                    again(run, rig, late, took);
                } else if (run.emulated.world().amps() < -5 && random.nextInt(20) == 0) {
                    run.clock.sleepUntil(run.clock.nanos() + random.nextLong(rig.scanNanos() / 2));
                    run.emulated.inflict(new BoardFault.InputStuck(rig.panel().loop(), false));
                    long crossed = run.clock.nanos();
                    while (run.offNanos < crossed) {
                        scan(run, late, took);
                    }
                    coil.add(run.offNanos - crossed);
                }
            }
            run.lines.forEach(line -> answers.addAll(line.nanos()));
        }

        System.out.println(rig.name() + ", " + late.size() + " scans");
        WireTime.of(rig).forEach(wire -> System.out.printf(Locale.ROOT, "wire of bus %d, worked out: %.1f ms a scan%n", wire.bus(), wire.seconds() * 1000));
        print("scan begins late", late);
        print("bare loop begins late", bare.late());
        print("scan takes, waits for conversions included", took);
        print("instrument's first byte after the question", answers);
        print("loop contact (an input of this process) opens to the coil's order", coil);
        assertThat(coil).isNotEmpty();
    }

    private static void scan(OutsideRun run, List<Long> late, List<Long> took) {
        run.scan();
        late.add(run.lateNanos);
        took.add(run.clock.nanos() - run.begunNanos);
    }

    /** The cause is gone, a person clears the trip and starts anew. */
    private static void again(OutsideRun run, Rig rig, List<Long> late, List<Long> took) {
        run.emulated.inflict(new BoardFault.InputStuck(rig.panel().loop(), true));
        for (int attempt = 0; attempt < ATTEMPTS && run.over(); attempt++) {
            run.wishes.add(Request.CLEAR);
            for (int i = 0; i < 10; i++) {
                scan(run, late, took);
            }
            run.wishes.add(Request.START);
            for (int i = 0; i < 10; i++) {
                scan(run, late, took);
            }
        }
    }

    private static void print(String what, List<Long> nanos) {
        List<Long> sorted = nanos.stream().sorted().toList();
        if (!sorted.isEmpty()) {
            System.out.printf(Locale.ROOT, "%-46s n %6d  p50 %8.2f ms  p99 %8.2f ms  max %8.2f ms%n", what, sorted.size(),
                    sorted.get(sorted.size() / 2) * 1e-6, sorted.get((int) (0.99 * (sorted.size() - 1))) * 1e-6, sorted.getLast() * 1e-6);
        }
    }

    /** A loop that does nothing, at the same pace. */
    private static final class BareLoop implements AutoCloseable {
        private final List<Long> late = new ArrayList<>();
        private final Thread thread;
        private volatile boolean ending;

        BareLoop(long periodNanos) {
            Pacer pacer = Pacer.ofScan(new RealClock(), periodNanos);
            thread = Thread.ofPlatform().daemon().name("bare").start(() -> {
                while (!ending) {
                    late.add(pacer.await());
                }
            });
        }

        List<Long> late() {
            return late;
        }

        @Override
        public void close() {
            ending = true;
            try {
                thread.join();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
        }
    }
}
