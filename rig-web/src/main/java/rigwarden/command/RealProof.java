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
    private final ProofRecord record;
    private final Rig rig;
    private final Path folder;
    private final PageOptions place;

    RealProof(ProofRecord record, Path folder, PageOptions place) {
        this.record = record;
        this.folder = folder;
        this.place = place;
        rig = record.inputs().rig();
    }

    /** Runs it; the exit code. */
    int call() throws IOException {
        record.inputs().insistReal();
        BufferedReader person = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
        try (Logbook book = Logbook.open(folder, record.made())) {
            new Cautions(person, System.out).confirm(book, record.inputs(), record.made());
            return shown(book, person);
        }
    }

    private int shown(Logbook book, BufferedReader person) throws IOException {
        Context board = RigRun.board(record.inputs());
        try (SignalStop signal = new SignalStop(rig.busSide().decaySeconds());
                Showing showing = Showing.of(book, folder, Optional.of(place))) {
            book.said().forEach(System.out::println);
            showing.where().ifPresent(System.out::println);
            return signal.done(proved(board, signal, book, showing, person));
        } finally {
            board.shutdown();
        }
    }

    private int proved(Context board, SignalStop signal, Logbook book, Showing showing, BufferedReader person) throws IOException {
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
