package rigwarden.command;

import com.pi4j.context.Context;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicReference;
import rigwarden.bench.OwnReadings;
import rigwarden.bench.RigBench;
import rigwarden.bus.BusFailure;
import rigwarden.live.Desk;
import rigwarden.live.Live;
import rigwarden.live.Watched;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunSettings;
import rigwarden.logbook.RunWriter;
import rigwarden.loop.Bench;
import rigwarden.loop.Pacer;
import rigwarden.loop.RealClock;
import rigwarden.loop.Recorder;
import rigwarden.prove.Answer;
import rigwarden.prove.Energised;
import rigwarden.prove.Outcome;
import rigwarden.prove.Proof;
import rigwarden.prove.Turn;
import rigwarden.rig.Rig;
import rigwarden.run.Event;
import rigwarden.run.RunMachine;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/** The guided check on the real rig: at rest by scans alone, then energised like every run. */
final class RigProof {
    private static final long BYTES = 20_000_000L;
    /** The start is asked for when every channel has been judged for a while. */
    private static final int SETTLED_SCANS = 30;
    private static final String STAND_CLEAR = "Nothing is wrong at rest. Stand clear; with Enter the rig is energised. Ctrl-C stops it.";

    private final ProofRecord record;
    private final Rig rig;
    private final Path folder;
    private final PageOptions place;
    private final RealClock clock = new RealClock();
    private final ProofTalk talk = new ProofTalk(System.out);
    private final AtomicReference<Optional<RunWriter>> writer = new AtomicReference<>(Optional.empty());
    private final List<Outcome> outcomes = new ArrayList<>();

    RigProof(ProofRecord record, Path folder, PageOptions place) {
        this.record = record;
        this.folder = folder;
        this.place = place;
        rig = record.inputs().rig();
    }

    /** Runs it; the exit code. */
    int call() throws IOException {
        try (Logbook book = Logbook.open(folder, record.made())) {
            new Cautions(new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)), System.out)
                    .confirm(book, record.inputs(), record.made());
            return shown(book);
        }
    }

    private int shown(Logbook book) throws IOException {
        Context board = RigRun.board(rig);
        try (SignalStop signal = new SignalStop(rig.busSide().decaySeconds());
                Showing showing = Showing.of(book, folder, Optional.of(place))) {
            book.said().forEach(System.out::println);
            showing.where().ifPresent(System.out::println);
            return signal.done(proved(board, signal, book, showing));
        } finally {
            board.shutdown();
        }
    }

    private int proved(Context board, SignalStop signal, Logbook book, Showing showing) throws IOException {
        OptionalInt run = OptionalInt.empty();
        Pacer pacer = Pacer.ofScan(clock, rig.scanNanos());
        try (LiveAgents agents = LiveAgents.start(rig, clock, words -> writer.get().ifPresent(w -> w.note("instrument", words)))) {
            OwnReadings own = new OwnReadings(() -> writer.get().map(w -> w.lagNanos() * 1e-9).orElse(0.0),
                    () -> folder.toFile().getUsableSpace(), pacer::lateSeconds);
            RigBench bench = RigBench.start(rig, board, clock, agents.agents(), own);
            Answers answers = Answers.on(System.in);
            boolean fit = ControlThread.call(() -> atRest(bench, pacer, answers, signal, showing));
            if (fit) {
                run = OptionalInt.of(energised(bench, pacer, signal, book, showing));
            }
        } catch (BusFailure e) {
            throw new Refused("The rig cannot be started: " + e.getMessage());
        }
        OptionalInt number = run;
        if (!outcomes.isEmpty()) {
            showing.inTurn(() -> book.enter(record.rows(outcomes, number)));
        }
        boolean holds = ProofRecord.holds(outcomes, run);
        System.out.println(holds ? "PROVED, signed off by " + record.who() + "." : "NOT PROVED: " + rig.name() + " is not started by `rigwarden run`.");
        return holds ? Exits.DONE : signal.requested() ? Exits.STOPPED : Exits.TRIPPED;
    }

    /** Whether the rig may be energised, and a person asked for it. */
    private boolean atRest(Bench bench, Pacer pacer, Answers answers, SignalStop signal, Showing showing) {
        Proof proof = new Proof(rig);
        boolean over = false;
        while (!signal.requested()) {
            pacer.await();
            Scan scan = bench.take();
            bench.apply(Orders.OFF);
            Answer answer = answers.take();
            if (over && answer != Answer.NONE) {
                return answer == Answer.DONE;
            }
            if (!over) {
                Turn turn = proof.take(scan, answer);
                talk.turn(turn);
                outcomes.addAll(turn.outcomes());
                showing.say(turn.prompt().words());
                over = turn.over();
                if (over && !proof.fit()) {
                    showing.say("");
                    return false;
                }
            } else {
                talk.say(STAND_CLEAR);
                showing.say(STAND_CLEAR);
            }
        }
        return false;
    }

    private int energised(RigBench bench, Pacer pacer, SignalStop signal, Logbook book, Showing showing) throws IOException {
        Inputs inputs = record.inputs();
        RunAbout about = new RunAbout(inputs.rigText(), inputs.programText(), Version.all(), Files.readString(RigRun.BOOT).strip(), 0, false,
                record.made(), clock.nanos(), List.of(), Optional.empty(), inputs.calibrations());
        Logbook.Begun begun = book.begin(about, rig.name(), inputs.program().name(), rig.channels(), BYTES, RunSettings.USUAL, _ -> { });
        writer.set(Optional.of(begun.writer()));
        Ending ending = new Ending(System.out);
        Energised energised = new Energised(rig, inputs.program());
        Desk desk = new Desk();
        try (Live live = new Live(rig, inputs.program(), begun.writer()).start()) {
            showing.say("");
            showing.show(new Watched(begun.number(), rig, inputs.program(), live, desk, false, 1, book.file(begun.number())));
            Starting starting = new Starting(live, energised, desk);
            LiveRun run = new LiveRun(rig, inputs.program(), bench, starting, desk, pacer, clock.nanos(),
                    () -> signal.requested() || ending.tripped(), ending::take, Optional.empty());
            ControlThread.call(run::run);
        } finally {
            begun.writer().close();
            begun.writer().trouble().ifPresent(System.out::println);
            showing.inTurn(() -> book.finish(begun.number(), ending.outcome(), ending.words()));
        }
        List<Outcome> last = energised.over();
        talk.outcomes(last);
        outcomes.addAll(energised.outcomes());
        return begun.number();
    }

    /** Looks at each cycle on its way to the logbook, and asks for the start once. Control thread. */
    private final class Starting implements Recorder {
        private final Recorder next;
        private final Energised energised;
        private final Desk desk;
        private int scans;

        Starting(Recorder next, Energised energised, Desk desk) {
            this.next = next;
            this.energised = energised;
            this.desk = desk;
        }

        @Override
        public void offer(Scan scan, Inbox inbox, Orders orders, List<Event> events) {
            talk.outcomes(energised.take(scan, events));
            next.offer(scan, inbox, orders, events);
            scans++;
            if (scans == SETTLED_SCANS) {
                desk.ask(RunMachine.start(record.inputs().program()));
            }
        }
    }
}
