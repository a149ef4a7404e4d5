package rigwarden.command;

import java.io.PrintStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.locks.LockSupport;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.EmulatedRig;
import rigwarden.emulated.Mishap;
import rigwarden.emulated.ProofRehearsal;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.Outcome;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunSettings;
import rigwarden.logbook.RunWriter;
import rigwarden.loop.Recorder;
import rigwarden.run.Event;

/** The guided check on an emulated rig, stored like every run; it proves nothing about the real one. */
final class RehearsedProof {
    private static final double HALF = 0.5;
    private static final long BYTES = 2_000_000;
    private static final long NAP_NANOS = 200_000;

    private final ProofRecord record;
    private final Path folder;
    private final long seed;
    private final List<Mishap> mishaps;
    private final PrintStream out;
    private Optional<String> trip = Optional.empty();

    RehearsedProof(ProofRecord record, Path folder, long seed, List<Mishap> mishaps, PrintStream out) {
        this.record = record;
        this.folder = folder;
        this.seed = seed;
        this.mishaps = mishaps;
        this.out = out;
    }

    /** Runs it; the exit code. */
    int call() {
        Inputs inputs = record.inputs();
        out.println("REHEARSAL of the proof of " + inputs.rig().name() + ", seed " + seed + ": every part and the person are emulated.");
        try (Logbook book = Logbook.open(folder, record.made())) {
            book.said().forEach(out::println);
            EmulatedRig emulated = new EmulatedRig(inputs.rig(), seed);
            ProofRehearsal proof = new ProofRehearsal(inputs.rig(), emulated, mishaps);
            ProofTalk talk = new ProofTalk(out);
            OptionalInt run = OptionalInt.empty();
            if (proof.atRest(talk::turn)) {
                run = OptionalInt.of(energised(book, emulated, proof, talk));
            } else {
                out.println("Nothing is energised before that is mended.");
            }
            book.enter(record.rows(proof.outcomes(), run));
            boolean holds = ProofRecord.holds(proof.outcomes(), run);
            long seconds = Math.round(proof.seconds());
            out.printf("%s A person would need %d:%02d min.%n", holds ? "Nothing wrong." : "NOT PROVED.", seconds / 60, seconds % 60);
            return holds ? Exits.DONE : Exits.TRIPPED;
        } catch (BusFailure e) {
            throw new Refused("The rig cannot be started: " + e.getMessage());
        }
    }

    private int energised(Logbook book, EmulatedRig emulated, ProofRehearsal proof, ProofTalk talk) {
        Inputs inputs = record.inputs();
        RunAbout about = new RunAbout(inputs.rigText(), inputs.programText(), Version.all(), "emulated", seed, true, RecordedRehearsal.LABEL,
                emulated.clock().nanos(), mishaps.stream().map(Mishap::words).toList(), Optional.empty(), inputs.calibrations());
        Logbook.Begun begun = book.begin(about, inputs.rig().name(), inputs.program().name(), inputs.rig().channels(), BYTES, RunSettings.USUAL, _ -> { });
        RunWriter writer = begun.writer();
        Recorder stored = (scan, inbox, orders, events) -> {
            while (writer.fill() > HALF) {
                LockSupport.parkNanos(NAP_NANOS);
            }
            writer.offer(scan, inbox, orders, events);
            events.stream().filter(Event.Tripped.class::isInstance).map(Event.Tripped.class::cast)
                    .forEach(e -> trip = trip.or(() -> Optional.of("rule " + e.first().rule())));
        };
        out.println("> Stand clear: the rig is energised now.");
        long scans = proof.energised(stored, talk::outcomes);
        writer.close();
        writer.trouble().ifPresent(out::println);
        book.finish(begun.number(), trip.isPresent() ? Outcome.TRIPPED : Outcome.FINISHED, trip.orElse(""));
        out.printf("Run %04d in %s: %d scans.%n", begun.number(), folder, scans);
        return begun.number();
    }
}
