package rigwarden.logbook;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.function.LongConsumer;
import java.util.stream.Stream;
import rigwarden.joint.JointOhms;
import rigwarden.rig.Channel;
import rigwarden.rig.ChannelCalibration;

/** A folder with {@code ledger.db} and {@code runs/NNNN.db}, one file for every run. One process at a time. */
public final class Logbook implements AutoCloseable {
    private final Path dir;
    private final Path runs;
    private final FolderLock lock;
    private final Ledger ledger;
    private final List<String> said = new ArrayList<>();
    private final List<Interrupted> interrupted = new ArrayList<>();

    private Logbook(Path dir, String label) throws IOException, SQLException {
        this.dir = dir;
        runs = Files.createDirectories(dir.resolve("runs"));
        lock = FolderLock.take(dir);
        boolean ready = false;
        try {
            ledger = openLedger(label);
            listUnknown();
            recoverRunning();
            ready = true;
        } finally {
            if (!ready) {
                lock.close();
            }
        }
    }

    /**
     * A run that has begun.
     *
     * @param number of the run
     * @param writer takes its cycles; close it before {@link Logbook#finish}
     */
    public record Begun(int number, RunWriter writer) {}

    /**
     * Opens the logbook of a folder, making it if need be. A ledger that does not open is moved aside and a new one
     * lists the files in {@code runs}; runs of a process that died are closed. {@link #said} tells of both.
     *
     * @param label wall-clock label, used in the name of a ledger moved aside
     * @throws LogbookException if another process uses the folder, or it cannot be written
     */
    public static Logbook open(Path dir, String label) {
        try {
            return new Logbook(dir, label);
        } catch (IOException | SQLException e) {
            throw new LogbookException("The logbook in " + dir + " cannot be opened", e);
        }
    }

    /** What an operator should be told about the opening; empty when all was well. */
    public List<String> said() {
        return List.copyOf(said);
    }

    /** Runs that were running when their process died, found at this opening. */
    public List<Interrupted> interrupted() {
        return List.copyOf(interrupted);
    }

    /** All runs, by number. */
    public List<LedgerRun> runs() {
        try {
            return ledger.runs();
        } catch (SQLException e) {
            throw new LogbookException("The list of runs cannot be read", e);
        }
    }

    /** Whether somebody confirmed these very cautions for this very rig file, told by its {@link RunAbout#hashOf}. */
    public boolean cautioned(String rigHash, String words) {
        try {
            return ledger.cautioned(rigHash, words);
        } catch (SQLException e) {
            throw new LogbookException("Whether the cautions were confirmed cannot be read", e);
        }
    }

    /** Keeps that somebody confirmed the cautions for a rig file, with the wall-clock label of when. */
    public void caution(String rigHash, String rig, String confirmed, String words) {
        try {
            ledger.caution(rigHash, rig, confirmed, words);
        } catch (SQLException e) {
            throw new LogbookException("That the cautions were confirmed cannot be kept", e);
        }
    }

    /** Keeps what a hand meter found on a joint during a run, with the wall-clock label of when. */
    public void joint(int run, JointOhms joint, String measured) {
        try {
            ledger.joint(run, joint, measured);
        } catch (SQLException e) {
            throw new LogbookException("The reading on " + joint.joint() + " cannot be kept", e);
        }
    }

    /** What was last found on each joint of a run, in the order in which it was found; its family is empty. */
    public List<JointOhms> joints(int run) {
        try {
            return ledger.joints(run);
        } catch (SQLException e) {
            throw new LogbookException("The joints of run " + run + " cannot be read", e);
        }
    }

    /** Keeps a calibration with the text of its file. */
    public void calibration(String rig, ChannelCalibration found) {
        try {
            ledger.calibration(rig, found);
        } catch (SQLException e) {
            throw new LogbookException("The calibration of " + found.channel() + " cannot be kept", e);
        }
    }

    /** Texts of all calibrations that were made on a rig, the newest last. */
    public List<String> calibrations(String rig) {
        try {
            return ledger.calibrations(rig);
        } catch (SQLException e) {
            throw new LogbookException("The calibrations of " + rig + " cannot be read", e);
        }
    }

    /** The file of a run, whether it is there or not. */
    public Path file(int number) {
        return runs.resolve(String.format(Locale.ROOT, "%04d.db", number));
    }

    /**
     * Begins a run.
     *
     * @param about what its file says about itself
     * @param rig name of the rig
     * @param programme name of the programme
     * @param channels the rig's
     * @param estimateBytes how large the file may become
     * @param settings how it is written
     * @param onStored as in {@link RunWriter#create}
     * @throws LogbookException if twice the estimate and the ballast are not free, or the file cannot be made; or if it goes on
     *     with a run that was continued or abandoned meanwhile
     */
    public Begun begin(RunAbout about, String rig, String programme, List<Channel> channels, long estimateBytes,
            RunSettings settings, LongConsumer onStored) {
        about.from().ifPresent(from -> needUndecided(from.run()));
        int number = 1 + Math.max(runs().stream().mapToInt(LedgerRun::number).max().orElse(0), highestFile());
        needSpace(estimateBytes, settings.ballastBytes());
        Path file = file(number);
        RunWriter writer = RunWriter.create(file, about, channels, settings, onStored);
        try {
            ledger.add(new LedgerRun(number, file.getFileName().toString(), rig, programme, about.started(),
                    Outcome.RUNNING, "", Optional.empty(),
                    about.from().map(from -> OptionalInt.of(from.run())).orElse(OptionalInt.empty()), Optional.empty()));
            return new Begun(number, writer);
        } catch (SQLException e) {
            writer.close();
            throw new LogbookException("Run " + number + " cannot be entered in the ledger", e);
        }
    }

    /**
     * Keeps a log from elsewhere as a run that is over. Its file has a run's name only once it is whole: of one that was broken
     * off nothing is left.
     *
     * @param about what its file says about itself
     * @param name of the kind of log, in the place of the rig's
     * @param words what the list of runs says of it
     * @param channels of its rows
     * @param estimateBytes how large the file may become
     * @param rows puts all of them
     * @return number of the run
     * @throws LogbookException if twice the estimate is not free, or the file cannot be made
     */
    public int keep(RunAbout about, String name, String words, List<Channel> channels, long estimateBytes, Consumer<WholeRun> rows) {
        int number = 1 + Math.max(runs().stream().mapToInt(LedgerRun::number).max().orElse(0), highestFile());
        needSpace(estimateBytes, 0);
        Path file = file(number);
        WholeRun.write(file, about, channels, rows);
        try {
            ledger.add(new LedgerRun(number, file.getFileName().toString(), name, "imported", about.started(), Outcome.FINISHED, words,
                    Optional.of(Recovery.sha256(file))));
            return number;
        } catch (SQLException | IOException e) {
            throw new LogbookException("Run " + number + " cannot be entered in the ledger", e);
        }
    }

    /** What was asked before a run is begun may be long ago: somebody else may have decided since. */
    private void needUndecided(int number) {
        List<LedgerRun> all = runs();
        LedgerRun run = all.stream().filter(r -> r.number() == number).findFirst()
                .orElseThrow(() -> new LogbookException("Run " + number + " cannot go on: there is no such run"));
        if (!run.undecided(all)) {
            throw new LogbookException("Run " + number + " cannot go on: " + run.decided(all).orElse("it is " + run.outcome().name().toLowerCase(Locale.ROOT)));
        }
    }

    /**
     * Enters how a run ended, with the hash of its closed file.
     *
     * @throws LogbookException if the run is not running or its file cannot be read
     */
    public void finish(int number, Outcome outcome, String words) {
        if (outcome == Outcome.RUNNING) {
            throw new IllegalArgumentException("a run does not end by running");
        }
        try {
            ledger.close(number, outcome, words, Optional.of(Recovery.sha256(file(number))));
        } catch (SQLException | IOException e) {
            throw new LogbookException("The end of run " + number + " cannot be entered", e);
        }
    }

    /**
     * Enters that a run was broken off by a power cut, as the next opening would find it.
     *
     * @throws LogbookException if the run is not running
     */
    public Interrupted cut(int number) {
        try {
            Interrupted found = Recovery.recover(number, file(number));
            ledger.close(number, Outcome.INTERRUPTED, found.words(), hash(found));
            return found;
        } catch (SQLException e) {
            throw new LogbookException("The end of run " + number + " cannot be entered", e);
        }
    }

    /** Enters that a run which was to go on with another never did, so that the other waits for a decision again. */
    public void continuesNone(int number) {
        try {
            ledger.continuesNone(number);
        } catch (SQLException e) {
            throw new LogbookException("Run " + number + " cannot be entered", e);
        }
    }

    /**
     * Closes a run that a crash, a power cut or a trip broke off, for good: nobody is asked about it again.
     *
     * @param why the reason, in a person's words, never empty
     * @throws LogbookException if it is not one that waits for a decision
     */
    public void abandon(int number, String why) {
        try {
            if (!ledger.abandon(number, why)) {
                String found = runs().stream().filter(run -> run.number() == number).findFirst()
                        .map(run -> run.decided(runs()).orElse("it is " + run.outcome().word()))
                        .orElse("there is no such run");
                throw new LogbookException("Run " + number + " cannot be abandoned: " + found
                        + ". Only a run that was interrupted or tripped, and neither continued nor abandoned, can be.");
            }
        } catch (SQLException e) {
            throw new LogbookException("That run " + number + " is abandoned cannot be entered", e);
        }
    }

    /** Enters what a proof showed, all of it or nothing. */
    public void enter(List<StoredProof> proofs) {
        try {
            ledger.add(proofs);
        } catch (SQLException e) {
            throw new LogbookException("The proof cannot be entered", e);
        }
    }

    /** All that was proved, in the order in which it was. */
    public List<StoredProof> proofs() {
        try {
            return ledger.proofs();
        } catch (SQLException e) {
            throw new LogbookException("The proofs cannot be read", e);
        }
    }

    private void needSpace(long estimateBytes, long ballastBytes) {
        long free = runs.toFile().getUsableSpace();
        if (estimateBytes > (free - ballastBytes) / 2) {
            throw new LogbookException(String.format(Locale.ROOT, "The run may need %.0f MB, and twice that and "
                    + "%.0f MB of ballast must be free in %s: %.0f MB are. Free some space or choose a shorter "
                    + "programme.", estimateBytes * 1e-6, ballastBytes * 1e-6, runs, free * 1e-6));
        }
    }

    private Ledger openLedger(String label) throws SQLException, IOException {
        Path file = dir.resolve("ledger.db");
        try {
            return Ledger.open(file);
        } catch (SQLException e) {
            if (Sqlite.busy(e)) {
                throw new LogbookException("The ledger " + file + " is held open by another program. Close that one "
                        + "first", e);
            }
            if (Files.notExists(file)) {
                throw new LogbookException("The ledger " + file + " cannot be made (" + e.getMessage()
                        + "). Is the card full, or may nobody write there?", e);
            }
            Path aside = Aside.move(file, label);
            said.add("The ledger did not open (" + e.getMessage() + "). It was moved aside to " + aside.getFileName()
                    + "; a new one lists the runs, but lots, cells, joints, proofs and calibrations are in the old.");
            return Ledger.open(file);
        }
    }

    /** Enters files that the ledger does not know: it is new, or its last words were lost. */
    private void listUnknown() throws SQLException, IOException {
        List<String> known = ledger.runs().stream().map(LedgerRun::file).toList();
        try (Stream<Path> files = Files.list(runs)) {
            for (Path file : files.filter(Logbook::isRun).sorted().toList()) {
                if (!known.contains(file.getFileName().toString())) {
                    ledger.add(Aside.found(number(file), file));
                }
            }
        }
    }

    private void recoverRunning() throws SQLException {
        for (LedgerRun run : ledger.runs()) {
            if (run.outcome() == Outcome.RUNNING) {
                Interrupted found = Recovery.recover(run.number(), file(run.number()));
                interrupted.add(found);
                said.add(found.words());
                ledger.close(run.number(), Outcome.INTERRUPTED, found.words(), hash(found));
            }
        }
    }

    private Optional<String> hash(Interrupted found) {
        try {
            return found.fault().isPresent()
                    ? Optional.empty()
                    : Optional.of(Recovery.sha256(file(found.number())));
        } catch (IOException _) {
            return Optional.empty();
        }
    }

    private int highestFile() {
        try (Stream<Path> files = Files.list(runs)) {
            return files.filter(Logbook::isRun).mapToInt(Logbook::number).max().orElse(0);
        } catch (IOException e) {
            throw new LogbookException("The folder " + runs + " cannot be read", e);
        }
    }

    private static boolean isRun(Path file) {
        return file.getFileName().toString().matches("\\d{4,9}\\.db");
    }

    private static int number(Path file) {
        String name = file.getFileName().toString();
        return Integer.parseInt(name.substring(0, name.length() - ".db".length()));
    }

    /** Closes the ledger and lets go of the folder. Close the writers first. */
    @Override
    public void close() {
        try (lock; ledger) {
            said.clear();
        } catch (IOException | SQLException e) {
            throw new LogbookException("The logbook in " + dir + " cannot be closed", e);
        }
    }
}
