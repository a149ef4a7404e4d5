package rigwarden.command;

import com.pi4j.context.Context;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import rigwarden.bench.OwnReadings;
import rigwarden.bench.RigBench;
import rigwarden.bus.BusFailure;
import rigwarden.logbook.Logbook;
import rigwarden.loop.RealClock;
import rigwarden.rig.Rig;

/** Opens a real rig for its guided check: cautions, board, instruments, page. */
final class RealProof {
    private final ProofRecord unnamed;
    private final Rig rig;
    private final CellsOption cells;
    private final Path folder;
    private final PageOptions place;

    /** A proof with the cells that {@code cells} says. */
    RealProof(ProofRecord unnamed, CellsOption cells, Path folder, PageOptions place) {
        this.unnamed = unnamed;
        this.cells = cells;
        this.folder = folder;
        this.place = place;
        rig = unnamed.inputs().rig();
    }

    /** Runs it; the exit code. */
    int call() throws IOException {
        unnamed.inputs().insistReal();
        BufferedReader person = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        ProofRecord record = unnamed.with(cells.in(rig, person, System.out));
        try (Logbook book = Logbook.open(folder, record.made())) {
            new Cautions(person, System.out).confirm(book, record.inputs(), record.made());
            return shown(record, book, person);
        }
    }

    private int shown(ProofRecord record, Logbook book, BufferedReader person) throws IOException {
        Context board = RigRun.board(record.inputs());
        try (SignalStop signal = new SignalStop(rig.busSide().decaySeconds());
                Showing showing = Showing.of(book, folder, Optional.of(place))) {
            book.said().forEach(System.out::println);
            showing.where().ifPresent(System.out::println);
            return signal.done(proved(record, board, signal, book, showing, person));
        } finally {
            board.shutdown();
        }
    }

    private int proved(ProofRecord record, Context board, SignalStop signal, Logbook book, Showing showing,
            BufferedReader person) throws IOException {
        RealClock clock = new RealClock();
        RigProof proof = new RigProof(record, book, showing, clock, System.out);
        try (LiveAgents agents = LiveAgents.start(rig, clock, proof::complained)) {
            OwnReadings own = new OwnReadings(proof::lagSeconds, () -> folder.toFile().getUsableSpace(), proof.pacer()::lateSeconds);
            RigBench bench = RigBench.start(rig, board, clock, agents.agents(), own);
            return proof.call(bench, Answers.on(person), signal::requested);
        } catch (BusFailure e) {
            throw new Refused("The rig cannot be started: " + e.getMessage());
        }
    }
}
