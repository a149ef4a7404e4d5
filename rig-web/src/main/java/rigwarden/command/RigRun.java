package rigwarden.command;

import com.pi4j.context.Context;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import rigwarden.bench.OwnReadings;
import rigwarden.bench.RigBench;
import rigwarden.bus.BusFailure;
import rigwarden.bus.RealBoard;
import rigwarden.live.Complaints;
import rigwarden.live.Desk;
import rigwarden.live.GoodNight;
import rigwarden.live.Laying;
import rigwarden.live.Live;
import rigwarden.live.WallWatch;
import rigwarden.live.Watched;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunSettings;
import rigwarden.logbook.RunWriter;
import rigwarden.logbook.StoredEvent;
import rigwarden.loop.Pacer;
import rigwarden.loop.RealClock;
import rigwarden.notice.NoticePlan;
import rigwarden.page.Mornings;
import rigwarden.paper.Card;
import rigwarden.rig.Rig;
import rigwarden.run.PickUp;

/** A run on the real rig, from its beginning or from where another was broken off. */
final class RigRun {
    static final Path BOOT = Path.of("/proc/sys/kernel/random/boot_id");
    private static final long BYTES_A_NIGHT = 240_000_000L;
    private static final Path DEVICES = Path.of("/dev");

    private final PageOptions place;
    private final NoticeOption notices;
    private final CellsOption cells;
    private final LogbookOption logbook;
    private final RealClock clock = new RealClock();

    RigRun(PageOptions place, NoticeOption notices, CellsOption cells, LogbookOption logbook) {
        this.place = place;
        this.notices = notices;
        this.cells = cells;
        this.logbook = logbook;
    }

    /** Runs to the end; the exit code. */
    int call(Inputs inputs, Optional<PickUp> from) throws IOException {
        inputs.insistReal();
        LastProof proof = LastProof.of(logbook.folder(), inputs, LocalDateTime.now(ZoneId.systemDefault()).withNano(0),
                from.map(f -> OptionalInt.of(f.run())).orElse(OptionalInt.empty()));
        proof.insist(inputs.rig());
        BufferedReader person = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        proof.insist(inputs.rig(), cells.in(inputs.rig(), person, System.out));
        Optional<NoticePlan> plan = notices.namedOrBeside(logbook.folder());
        LocalDateTime begin = LocalDateTime.now(ZoneId.systemDefault()).withNano(0);
        from.ifPresent(f -> System.out.printf("What follows is of the rest of the programme, from step %d on, begun anew: of that step some is done already.%n", f.step()));
        Card card = Foreseen.card(from.map(f -> inputs.leftFrom(f.step())).orElse(inputs), plan.map(NoticePlan::lines).orElse(List.of()), proof.lines(), begin, CardCommand.SEVEN, System.out,
                Terminal.there());
        card.lines().forEach(System.out::println);
        Context board = board(inputs);
        String now = begin.toString();
        try {
            Logbook book = cautioned(inputs, now, person);
            try (SignalStop signal = new SignalStop(inputs.rig().busSide().decaySeconds())) {
                return signal.done(shown(inputs, from, card, plan, board, book, signal));
            }
        } finally {
            board.shutdown();
        }
    }

    /** The logbook, once somebody has confirmed the cautions for this rig file. */
    private Logbook cautioned(Inputs inputs, String now, BufferedReader person) throws IOException {
        Logbook book = Logbook.open(logbook.folder(), now);
        boolean confirmed = false;
        try {
            new Cautions(person, System.out).confirm(book, inputs, now);
            confirmed = true;
            return book;
        } finally {
            if (!confirmed) {
                book.close();
            }
        }
    }

    private int shown(Inputs inputs, Optional<PickUp> from, Card card, Optional<NoticePlan> plan, Context board, Logbook book, SignalStop signal)
            throws IOException {
        try (book;
                Telling telling = new Telling(plan);
                Showing showing = Showing.of(book, logbook.folder(), Optional.of(place))) {
            book.said().forEach(System.out::println);
            telling.interrupted(book);
            showing.where().ifPresent(System.out::println);
            int exit = recorded(inputs, from, card, board, book, showing, telling, signal);
            signal.ended(exit);
            showing.inTurn(() -> morning(book));
            showing.hold(signal);
            return exit;
        }
    }

    /** Opens the board of whatever may be energised; nothing else does. */
    static Context board(Inputs inputs) {
        inputs.insistReal();
        Rig rig = inputs.rig();
        try {
            return RealBoard.open(rig.nodes(), DEVICES, rig.panel().controller());
        } catch (BusFailure e) {
            throw new Refused("The rig cannot be started: " + e.getMessage());
        }
    }

    private static void morning(Logbook book) {
        LedgerRun run = book.runs().getLast();
        Mornings.card(run, book.file(run.number())).ifPresent(card -> card.lines().forEach(System.out::println));
    }

    private int recorded(Inputs inputs, Optional<PickUp> from, Card card, Context board, Logbook book, Showing showing, Telling telling,
            SignalStop signal) throws IOException {
        Rig rig = inputs.rig();
        // beside the monotonic clock that it labels: the card and the questions before it take minutes
        String now = LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString();
        RunAbout about = new RunAbout(inputs.rigText(), inputs.programText(),
                Version.all(), Files.readString(BOOT).strip(), 0, false, now,
                clock.nanos(), List.of(), from, inputs.calibrations());
        Logbook.Begun begun = book.begin(about, rig.name(), inputs.program().name(), rig.channels(), BYTES_A_NIGHT,
                RunSettings.USUAL, _ -> { });
        RunWriter writer = begun.writer();
        Desk desk = new Desk();
        Pacer pacer = Pacer.ofScan(clock, rig.scanNanos());
        Ending ending = new Ending(System.out);
        Complaints complaints = new Complaints();
        try (LiveAgents agents = LiveAgents.start(rig, clock, (words, nanos) -> {
                    writer.note("instrument", words);
                    complaints.take(words, nanos);
                });
                WallWatch _ = WallWatch.start(clock, () -> OffsetDateTime.now(ZoneId.systemDefault()),
                        step -> writer.note(StoredEvent.CLOCK_SET, step.words(), step.seconds()));
                Live live = new Live(rig, inputs.program(), writer).start()) {
            RigBench bench = RigBench.start(rig, board, clock, agents.agents(), own(writer, pacer));
            Watched watched = new Watched(begun.number(), rig, inputs.program(), live, desk, false, 1,
                    book.file(begun.number()), telling::undelivered,
                    Optional.of(new GoodNight(card, words -> writer.note("confirmed", words))), from,
                    Optional.of(new Laying((spot, newest) -> writer.note("spot", spot.name(), newest))), complaints);
            showing.show(watched);
            telling.watch(watched);
            from.ifPresent(f -> System.out.printf("This goes on with run %04d in step %d, until 30 min after it was broken off.%n",
                    f.run(), f.step()));
            System.out.println("Ready. Start it on the page, signed in, the card confirmed and the arm key turned; or end this with Ctrl-C.");
            System.out.println(inputs.program().unattended()
                    ? "It may be left alone once it runs: it was proved, and the look at the place is asked for with the start."
                    : "Stay beside the rig: turn its arm key off and on at least every 15 min, or the run is stopped.");
            LiveRun run = new LiveRun(rig, inputs.program(), bench, live, desk, pacer, clock.nanos(), signal::requested,
                    ending::take, from);
            long scans = ControlThread.call(run::run);
            System.out.printf("%d scans, %d too late, %d given up, the latest by %.1f ms.%n", scans, pacer.overruns(),
                    pacer.skipped(), pacer.worstSeconds() * 1000);
        } catch (BusFailure e) {
            throw new Refused("The rig cannot be started: " + e.getMessage());
        } finally {
            writer.close();
            writer.trouble().ifPresent(System.out::println);
            showing.inTurn(() -> entered(book, begun.number(), ending));
        }
        return ending.exit();
    }

    private static void entered(Logbook book, int number, Ending ending) {
        book.finish(number, ending.outcome(), ending.words());
        if (!ending.continued()) {
            book.continuesNone(number);
        }
    }

    private OwnReadings own(RunWriter writer, Pacer pacer) {
        Path folder = logbook.folder();
        return new OwnReadings(() -> writer.lagNanos() * 1e-9, () -> folder.toFile().getUsableSpace(), pacer::lateSeconds);
    }
}
