package rigwarden.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.Outcome;
import rigwarden.logbook.StoredProof;
import rigwarden.prove.Energised;
import rigwarden.prove.Outcome.Part;
import rigwarden.rig.Rig;

/**
 * Whether what was proved of a rig still holds.
 *
 * @param missing why it does not, a sentence each; empty where it does
 * @param lines what is on record, for the good-night card; empty where nothing stands
 * @param cells what was written on the cells that were in it, with commas between; empty where nobody said
 */
record LastProof(List<String> missing, List<String> lines, String cells) {
    private static final Duration HOLDS = Duration.ofDays(7);
    /** A loop and a heartbeat stage have nothing that a new set of cells could change. */
    private static final Duration HARDWARE_HOLDS = Duration.ofDays(90);

    /** Looks it up in a logbook's folder; nothing is proved where there is none. */
    static LastProof of(Path folder, Inputs inputs, LocalDateTime now) {
        return of(folder, inputs, now, OptionalInt.empty());
    }

    /** {@code from} is the broken-off run that is to go on: its own trip is judged elsewhere. */
    static LastProof of(Path folder, Inputs inputs, LocalDateTime now, OptionalInt from) {
        if (Files.notExists(folder)) {
            return judged(inputs.rig(), inputs.proved(List.of()), List.of(), List.of(), now, from);
        }
        try (Logbook book = Logbook.open(folder, now.toString())) {
            return judged(inputs.rig(), inputs.proved(List.of()), book.proofs(), book.runs(), now, from);
        }
    }

    static LastProof judged(Rig rig, StoredProof.Of of, List<StoredProof> all, List<LedgerRun> runs, LocalDateTime now, OptionalInt from) {
        List<StoredProof> proofs = all.stream().filter(p -> !p.rehearsed() && p.rig().equals(rig.name())).toList();
        Optional<StoredProof> whole = last(proofs, StoredProof.WHOLE);
        List<String> missing = new ArrayList<>();
        if (whole.isEmpty()) {
            missing.add("it was never proved");
        } else {
            missing.addAll(stale(whole.get(), of, now));
            tripped(whole.get(), rig, runs, from).ifPresent(missing::add);
        }
        List<String> hardware = new ArrayList<>(rig.guards().loopContacts().stream().map(c -> Part.LOOP.words() + " " + c).toList());
        Energised.BEATS.forEach(level -> hardware.add(Part.HEARTBEAT.words() + " " + level));
        for (String kind : hardware) {
            Optional<StoredProof> one = last(proofs, kind);
            if (one.isEmpty() || !one.get().passed()) {
                missing.add(kind.replace('_', ' ') + " is not proved");
            } else if (older(one.get(), HARDWARE_HOLDS, now)) {
                missing.add(kind.replace('_', ' ') + " was proved on " + one.get().made() + ", more than 90 days ago");
            }
        }
        return new LastProof(List.copyOf(missing), missing.isEmpty() ? lines(whole.orElseThrow(), proofs, hardware) : List.of(),
                whole.map(w -> w.of().cells()).orElse(""));
    }

    private static List<String> stale(StoredProof whole, StoredProof.Of of, LocalDateTime now) {
        List<String> missing = new ArrayList<>();
        if (!whole.passed()) {
            missing.add("its last proof, on " + whole.made() + ", did not pass");
        }
        if (!whole.of().rigHash().equals(of.rigHash())) {
            missing.add("its rig file has changed since the proof of " + whole.made());
        }
        if (!whole.of().calibrationHash().equals(of.calibrationHash())) {
            missing.add("it was calibrated since the proof of " + whole.made() + ", or a calibration that held then has expired or was moved away");
        }
        if (older(whole, HOLDS, now)) {
            missing.add("its last proof, on " + whole.made() + ", is more than 7 days old");
        }
        return missing;
    }

    /** It may have been a plug or a wire. */
    private static Optional<String> tripped(StoredProof whole, Rig rig, List<LedgerRun> runs, OptionalInt from) {
        return runs.stream()
                .filter(run -> run.number() > whole.run().orElse(0) && run.outcome() == Outcome.TRIPPED && run.rig().equals(rig.name()))
                .filter(run -> !run.started().equals(RecordedRehearsal.LABEL) && !from.equals(OptionalInt.of(run.number())))
                .findFirst()
                .map(run -> String.format(Locale.ROOT, "run %04d tripped after its last proof (%s): it may have been a plug or a wire", run.number(), run.words()));
    }

    private static Optional<StoredProof> last(List<StoredProof> proofs, String kind) {
        return proofs.stream().filter(p -> p.kind().equals(kind)).reduce((_, later) -> later);
    }

    /** A date that cannot be read, or lies ahead, is no date. */
    private static boolean older(StoredProof proof, Duration than, LocalDateTime now) {
        try {
            Duration age = Duration.between(LocalDateTime.parse(proof.made()), now);
            return age.compareTo(than) > 0 || age.compareTo(Duration.ofDays(1).negated()) < 0;
        } catch (DateTimeParseException _) {
            return true;
        }
    }

    private static List<String> lines(StoredProof whole, List<StoredProof> proofs, List<String> hardware) {
        List<String> lines = new ArrayList<>();
        lines.add("Proved on " + whole.made() + " by " + whole.who() + whole.run().stream().mapToObj(r -> String.format(Locale.ROOT, ", run %04d", r))
                .findFirst().orElse("") + (whole.of().cells().isEmpty() ? "" : ", with " + whole.of().cells()) + "; holds 7 days, until the rig file or a calibration changes or a run trips.");
        hardware.forEach(kind -> last(proofs, kind).ifPresent(p -> lines.add(kind.replace('_', ' ') + ": " + p.made())));
        return List.copyOf(lines);
    }

    /** Refuses a rig in which there are other cells than were proved. */
    void insist(Rig rig, List<String> now) {
        String told = String.join(", ", now);
        if (!told.equals(cells)) {
            throw new Refused(rig.name() + " is not proved with " + told + ": its last proof "
                    + (cells.isEmpty() ? "does not say which cells were in it" : "was made with " + cells) + ".\nProve it first: rigwarden prove RIG. Nothing was switched on.");
        }
    }

    /** Refuses a rig of which it does not hold. */
    void insist(Rig rig) {
        if (!missing.isEmpty()) {
            throw new Refused(rig.name() + " is not proved: " + String.join("; ", missing) + ".\nProve it first: rigwarden prove RIG. Nothing was switched on.");
        }
    }
}
