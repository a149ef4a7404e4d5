package rigwarden.page;

import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.UnaryOperator;
import rigwarden.command.Replays;
import rigwarden.emulated.BoardFault;
import rigwarden.emulated.Rehearsal;
import rigwarden.live.Desk;
import rigwarden.live.Laying;
import rigwarden.live.Live;
import rigwarden.live.Watched;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.Outcome;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunSettings;
import rigwarden.logbook.RunWriter;
import rigwarden.loop.Pacer;
import rigwarden.loop.RealClock;
import rigwarden.loop.Recorder;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rig.Spot;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.warden.Inbox;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;

/** The reference night, running in this process on its own control thread, with its page; and what the model says is true. */
final class Night implements AutoCloseable {
    private static final Path RIGS = Path.of("..", "hardware", "rigs");
    private static final long HALF_SECOND = 500_000_000L;

    final Site site;
    private final Path folder;
    private final Logbook book;
    private final RunWriter writer;
    private final Rehearsal rehearsal;
    private final Live live;
    private final Desk desk = new Desk();
    private final int number;
    private final ConcurrentLinkedQueue<Long> late = new ConcurrentLinkedQueue<>();
    private final List<BoardFault> faults = new ArrayList<>();
    private final Thread control;
    private volatile double speed;
    private volatile boolean ending;
    private volatile double modelAmps;
    private final AtomicLong scans = new AtomicLong();

    /**
     * Begins the night.
     *
     * @param bench name of the reference rig
     * @param fast scans that are run as fast as the machine allows before the pace begins
     * @param speed seconds of the night to one of the wall's clock
     * @param seen what the page is shown of each scan
     */
    Night(Path folder, String bench, long fast, double speed, UnaryOperator<Scan> seen) throws Exception {
        this(folder, bench, fast, speed, seen, "");
    }

    /** The same with a probe more, described as a rig file does. */
    private Night(Path folder, String bench, long fast, double speed, UnaryOperator<Scan> seen, String probe) throws Exception {
        String text = Files.readString(RIGS.resolve(bench + ".toml")).replace("[panel]", probe + "[panel]");
        Read.Sound<Rig> rigFile = (Read.Sound<Rig>) RigFile.read(bench + ".toml", text);
        Rig rig = rigFile.value();
        Program program = ((Read.Sound<Program>) ProgramFile.read(RIGS.resolve(bench + "-night.toml"), rigFile)).value();
        this.speed = speed;
        this.folder = folder;
        book = Logbook.open(folder, "test");
        Logbook.Begun begun = book.begin(new RunAbout(text,
                Files.readString(RIGS.resolve(bench + "-night.toml")), Map.of(), "test", 1, true, "rehearsal", 0),
                rig.name(), program.name(), rig.channels(), 1_000_000, RunSettings.USUAL.withBallast(0), _ -> { });
        number = begun.number();
        writer = begun.writer();
        live = new Live(rig, program, writer).start();
        Recorder shown = (scan, inbox, orders, events) -> live.offer(seen.apply(scan), inbox, orders, events);
        rehearsal = new Rehearsal(rig, program, 1, List.of(), shown);
        Watched watched = new Watched(number, rig, program, live, desk, true, speed, book.file(number), List::of, Optional.empty(),
                Optional.empty(), probe.isEmpty() ? Optional.empty() : Optional.of(new Laying(this::lay)));
        site = new Site(new Site.Place(InetAddress.getLoopbackAddress(), 0, Set.of()), () -> Optional.of(watched),
                new Shelf(book), folder);
        control = Thread.ofPlatform().name("control").start(() -> run(rig, fast));
    }

    /** Puts the first scans of a night into a logbook, as a run that is over. */
    static void stored(Path folder, String bench, int scans) throws Exception {
        try (Night night = new Night(folder, bench, scans, 1, UnaryOperator.identity())) {
            night.waitForScans(scans);
        }
    }

    static Night paced(Path folder, double speed) throws Exception {
        return new Night(folder, "one-cell", 0, speed, UnaryOperator.identity());
    }

    /** With a probe that a person carries, and lays where the page says. */
    static Night carried(Path folder, String bench, int bus, long fast, double speed) throws Exception {
        return new Night(folder, bench, fast, speed, UnaryOperator.identity(), """
                [[probe]]
                name = "loose_c"
                place = "loose"
                bus = %d
                address = 0x67
                uncertainty_k = 1.8
                lag_s = 8
                period_ms = 200

                """.formatted(bus));
    }

    private boolean lay(Spot spot, Scan newest) {
        inflict(new BoardFault.LooseLaid(spot));
        return writer.note("spot", spot.name(), newest);
    }

    private void run(Rig rig, long fast) {
        Pacer pacer = new Pacer(new RealClock(), Math.round(rig.scanNanos() / speed), HALF_SECOND);
        while (!ending) {
            boolean paced = scans.get() >= fast;
            if (paced) {
                late.add(pacer.await());
            }
            while (!paced && writer.fill() > 0.5) {
                Thread.onSpinWait();
            }
            Inbox in = desk.get();
            if (in.stop()) {
                rehearsal.stop();
            }
            if (in.has(Request.CLEAR)) {
                rehearsal.clear();
            }
            synchronized (faults) {
                faults.forEach(rehearsal::inflict);
                faults.clear();
            }
            rehearsal.scan();
            modelAmps = rehearsal.rig().world().amps();
            scans.incrementAndGet();
        }
    }

    /** Lateness of the slots so far is forgotten: the first ones load classes. */
    void forgetLateness() {
        late.clear();
    }

    /** The latest that a slot began since then, s. */
    double worstSeconds() {
        return late.stream().mapToLong(Long::longValue).max().orElse(0) * 1e-9;
    }

    /** Lateness in words: median and the last per mille. */
    String latenessWords() {
        long[] sorted = late.stream().mapToLong(Long::longValue).sorted().toArray();
        return String.format("median %.2f ms, 99.9 %% %.2f ms", sorted[sorted.length / 2] * 1e-6,
                sorted[(int) (sorted.length * 0.999)] * 1e-6);
    }

    /** Something goes wrong before the next scan. */
    void inflict(BoardFault fault) {
        synchronized (faults) {
            faults.add(fault);
        }
    }

    /** Current through the cells, by the model, A. */
    double modelAmps() {
        return modelAmps;
    }

    long scans() {
        return scans.get();
    }

    String url() {
        return "http://127.0.0.1:" + site.port();
    }

    /** Waits until the model's current is above or below a limit; returns how long that took, s. */
    double waitForAmps(boolean above, double amps, double atMostSeconds) throws InterruptedException {
        long began = System.nanoTime();
        while (above == (Math.abs(modelAmps) < amps)) {
            double seconds = (System.nanoTime() - began) * 1e-9;
            if (seconds > atMostSeconds) {
                throw new AssertionError("the model's current is " + modelAmps + " A after " + seconds + " s");
            }
            Thread.sleep(2);
        }
        return (System.nanoTime() - began) * 1e-9;
    }

    /** Waits until so many scans are done. */
    void waitForScans(long wanted) throws InterruptedException {
        while (scans.get() < wanted) {
            Thread.sleep(20);
        }
    }

    @Override
    public void close() {
        ending = true;
        while (control.isAlive()) {
            Thread.onSpinWait();
        }
        writer.close();
        live.close();
        site.close();
        book.finish(number, Outcome.STOPPED, "");
        book.close();
        Replays.all(folder);
    }
}
