package rigwarden.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.EmulatedRig;
import rigwarden.emulated.Mishap;
import rigwarden.logbook.Broken;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredEvent;
import rigwarden.loop.RealClock;
import rigwarden.paper.StoredRun;
import rigwarden.rigfile.Refusal;
import rigwarden.run.Answer;
import rigwarden.run.Continuing;
import rigwarden.run.LeftOff;
import rigwarden.run.Outage;
import rigwarden.run.PickUp;

/** {@code rigwarden continue}: goes on with a run that a crash, a power cut or a trip broke off, where that is allowed. */
@Command(
        name = "continue",
        mixinStandardHelpOptions = true,
        description = {"Go on with a run that a crash, a power cut or a trip broke off, at most 30 min ago.",
            "A real run goes on after a person has asked for it on the page, with the arm key turned; a rehearsal at once."})
final class ContinueCommand implements Callable<Integer> {
    private static final long MINUTE_NANOS = 60_000_000_000L;
    private static final long TEN_MINUTES = 10;

    @Parameters(index = "0", paramLabel = "RUN", description = "Number of the run.")
    private int number;

    @Parameters(index = "1", arity = "0..1", paramLabel = "RIG", description = "Rig file, for a rehearsal that of the run by default.")
    private Optional<Path> rigFile = Optional.empty();

    @Parameters(index = "2", arity = "0..1", paramLabel = "PROGRAMME", description = "Programme file, the same.")
    private Optional<Path> programFile = Optional.empty();

    @Option(names = "--after", paramLabel = "MINUTES", description = "Rehearsal: how long the outage was (default: 10).")
    private long afterMinutes = TEN_MINUTES;

    @Option(names = "--with", paramLabel = "MISHAP", description = "Rehearsal: something that goes wrong, as for rehearse.")
    private List<String> mishaps = new ArrayList<>();

    @Option(names = "--cut-at", paramLabel = "H:MM", description = "Rehearsal: cut the supply again at this time from here.")
    private Optional<String> cutAt = Optional.empty();

    @Mixin
    private PageOptions place = new PageOptions();

    @Mixin
    private NoticeOption notices = new NoticeOption();

    @Mixin
    private CellsOption cells = new CellsOption();

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() throws Exception {
        String now = LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString();
        Inputs inputs;
        PickUp from;
        try (Logbook book = Logbook.open(logbook.folder(), now)) {
            book.said().forEach(System.out::println);
            RunAbout about = about(book);
            fitting(about);
            inputs = inputs(about);
            inputs.warnings().stream().map(Refusal::print).forEach(System.out::println);
            from = allowed(book, about, inputs);
            if (about.rehearsal()) {
                return rehearsed(book, about, inputs, from);
            }
        }
        return new RigRun(place, notices, cells, logbook).call(inputs, Optional.of(from));
    }

    /** Nothing that is asked for is left undone without a word. */
    private void fitting(RunAbout about) {
        if (about.rehearsal() && cells.given()) {
            throw new Refused("Run " + number + " is a rehearsal, of which every cell is emulated: leave --cells out.");
        }
        if (rigFile.isPresent() && programFile.isEmpty()) {
            throw new Refused("A rig file without a programme was named: name both, as they are now, or for a rehearsal neither.");
        }
        boolean emulates = afterMinutes != TEN_MINUTES || !mishaps.isEmpty() || cutAt.isPresent();
        if (!about.rehearsal() && emulates) {
            throw new Refused("Run " + number + " is a real one: --after, --with and --cut-at are for a rehearsal that goes on. Leave them out;"
                    + " how long the outage was is read off the clocks.");
        }
    }

    private RunAbout about(Logbook book) {
        if (book.runs().stream().noneMatch(run -> run.number() == number)) {
            throw new Refused("There is no run " + number + " in " + logbook.folder() + "; `rigwarden runs` lists those that there are.");
        }
        try (RunReader reader = RunReader.open(book.file(number))) {
            return reader.about();
        }
    }

    private Inputs inputs(RunAbout about) {
        if (rigFile.isPresent() && programFile.isPresent()) {
            return Inputs.read(rigFile.get(), programFile.get());
        }
        if (!about.rehearsal()) {
            throw new Refused("Name the rig file and the programme as they are now: rigwarden continue " + number
                    + " RIG PROGRAMME. They must be the same as in the run.");
        }
        return Inputs.stored(about);
    }

    private PickUp allowed(Logbook book, RunAbout about, Inputs inputs) throws IOException {
        List<LedgerRun> runs = book.runs();
        LedgerRun run = runs.stream().filter(r -> r.number() == number).findFirst().orElseThrow();
        Inputs then = Inputs.stored(about);
        LeftOff left = Broken.read(run, runs, book.file(number), then.rig(), then.program());
        RunAbout offered = new RunAbout(inputs.rigText(), inputs.programText(), Version.all(), "", 0, about.rehearsal(), "", 0)
                .calibrated(inputs.calibrations());
        Answer answer = Continuing.answer(left, new Continuing.Offered(offered.rigHash(), offered.programmeHash(),
                offered.versions(), outage(about, left, book.file(number))));
        return switch (answer) {
            case Answer.Allowed(PickUp from) -> from;
            case Answer.Unmet unmet -> throw new Refused("Run " + number + " cannot go on. " + unmet.words() + (run.undecided(runs)
                    ? "\nStart anew when you know why it ended; `rigwarden abandon " + number + " --because \"…\"` closes it for good."
                    : ""));
        };
    }

    private Outage outage(RunAbout about, LeftOff left, Path file) throws IOException {
        long broken = left.place().map(PickUp::brokenNanos).orElse(0L);
        return about.rehearsal()
                ? new Outage.Known(broken, broken + afterMinutes * MINUTE_NANOS)
                : WallOutage.of(about, setSeconds(file), broken, Files.readString(RigRun.BOOT).strip(), new RealClock().nanos(),
                        LocalDateTime.now(ZoneId.systemDefault()), ZoneId.systemDefault());
    }

    /** By how much the clock on the wall was set in the run. */
    private static double setSeconds(Path file) {
        try (RunReader reader = RunReader.open(file)) {
            return reader.events().stream().filter(event -> event.kind().equals(StoredEvent.CLOCK_SET)).mapToDouble(event -> event.value().orElseThrow()).sum();
        }
    }

    private int rehearsed(Logbook book, RunAbout about, Inputs inputs, PickUp from) {
        MishapReader reader = new MishapReader(inputs.rig());
        List<Mishap> read = mishaps.stream().map(reader::read).toList();
        OptionalLong cut = HoursMinutes.nanos("--cut-at", cutAt);
        System.out.printf("REHEARSAL of %s on %s, seed %d, goes on with run %04d: every part is emulated, no cell is touched.%n",
                inputs.program().name(), inputs.rig().name(), about.seed(), number);
        System.out.println("The rehearsal up to there is run again from its seed, then " + afterMinutes + " min without supply.");
        try (SignalStop signal = new SignalStop();
                Telling telling = new Telling(Optional.empty());
                Showing showing = Showing.of(book, logbook.folder(), Optional.empty())) {
            EmulatedRig rig = CutRig.of(book, number, inputs).afterCut(afterMinutes * MINUTE_NANOS);
            RecordedRehearsal.Result result = new RecordedRehearsal(inputs, about.seed(), read, OptionalDouble.empty(), cut,
                    Optional.of(new RecordedRehearsal.Picked(from, rig)), signal, System.out).run(book, showing, telling);
            tell(book, inputs, result);
            signal.ended(result.exit());
            return signal.done(result.exit());
        } catch (BusFailure e) {
            throw new Refused("The rig cannot be started: " + e.getMessage());
        }
    }

    private void tell(Logbook book, Inputs inputs, RecordedRehearsal.Result result) {
        StoredRun.whole(book.file(result.number())).ifPresent(whole ->
                new Story(inputs.rig()).of(whole.told(), result.trip(), result.also()).forEach(System.out::println));
        System.out.printf("Run %04d in %s goes on with run %04d. Both parts are in the lines above.%n", result.number(),
                logbook.folder(), number);
    }
}
