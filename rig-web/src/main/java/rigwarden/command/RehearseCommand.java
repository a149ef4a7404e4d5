package rigwarden.command;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.emulated.Mishap;
import rigwarden.findings.StepFinding;
import rigwarden.live.Left;
import rigwarden.live.Plan;
import rigwarden.logbook.Logbook;
import rigwarden.paper.Card;
import rigwarden.paper.MorningCard;
import rigwarden.rigfile.Refusal;

/** {@code rigwarden rehearse}: a night on an emulated copy of the rig, on the real code path. */
@Command(
        name = "rehearse",
        mixinStandardHelpOptions = true,
        description = "Run a programme on an emulated copy of the rig, as fast as this machine allows.")
final class RehearseCommand implements Callable<Integer> {
    private static final int FASTEST = 10_000;

    @Parameters(index = "0", arity = "0..1", paramLabel = "RIG", description = "Rig file (default: the reference rig).")
    private Path rigFile = Inputs.reference("one-cell.toml");

    @Parameters(index = "1", arity = "0..1", paramLabel = "PROGRAMME", description = "Programme file (default: the reference night).")
    private Path programFile = Inputs.reference("one-cell-night.toml");

    @Option(names = "--seed", paramLabel = "N", description = "Seed of the specimen and of all noise (default: 1).")
    private long seed = 1;

    @Option(names = "--with", paramLabel = "MISHAP", description = "Something that goes wrong: \"PART VERB [SIZE UNIT] at h:mm\".")
    private List<String> mishaps = new ArrayList<>();

    @Option(names = "--cut-at", paramLabel = "H:MM",
            description = "Cut the supply of the whole rig at this time from the start: a run to be continued.")
    private Optional<String> cutAt = Optional.empty();

    @Option(names = "--json", paramLabel = "FILE", description = "Write what was measured.")
    private Optional<Path> json = Optional.empty();

    @Option(names = "--truth", paramLabel = "FILE", description = "Write what the model says is true.")
    private Optional<Path> truth = Optional.empty();

    @Option(names = "--speed", paramLabel = "N",
            description = "Seconds of the rehearsal to one of the clock on the wall, 1…10000; the page is then served.")
    private Optional<Double> speed = Optional.empty();

    @Option(names = "--page", negatable = true, description = "Serve the page, or do not (default: with --speed).")
    private Optional<Boolean> page = Optional.empty();

    @Mixin
    private PageOptions place = new PageOptions();

    @Mixin
    private NoticeOption notices = new NoticeOption();

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() {
        try (SignalStop signal = new SignalStop()) {
            return signal.done(rehearsed(signal));
        }
    }

    private int rehearsed(SignalStop signal) {
        OptionalDouble pace = pace();
        Inputs inputs = Inputs.read(rigFile, programFile);
        MishapReader reader = new MishapReader(inputs.rig());
        List<Mishap> read = mishaps.stream().map(reader::read).toList();
        inputs.warnings().stream().map(Refusal::print).forEach(System.out::println);
        System.out.println("REHEARSAL of " + inputs.program().name() + " on " + inputs.rig().name() + ", seed " + seed
                + ": every part is emulated, no cell is touched.");
        if (pace.isEmpty() && notices.named().isPresent()) {
            throw new Refused("--notices goes with --speed: a rehearsal as fast as the machine allows is over before a notice arrives.");
        }
        boolean shown = page.orElse(pace.isPresent());
        String now = LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString();
        try (Logbook book = Logbook.open(logbook.folder(), now);
                Telling telling = new Telling(notices.named());
                Showing showing = Showing.of(book, logbook.folder(), shown ? Optional.of(place) : Optional.empty())) {
            showing.where().ifPresent(System.out::println);
            book.said().forEach(System.out::println);
            RecordedRehearsal.Result result =
                    new RecordedRehearsal(inputs, seed, read, pace, HoursMinutes.nanos("--cut-at", cutAt),
                            Optional.empty(), signal, System.out).run(book, showing, telling);
            tell(inputs, result);
            signal.ended(result.exit());
            showing.hold(signal);
            return result.exit();
        }
    }

    private OptionalDouble pace() {
        if (speed.isEmpty()) {
            return OptionalDouble.empty();
        }
        double factor = speed.orElseThrow();
        if (!(factor >= 1 && factor <= FASTEST)) {
            throw new Refused("--speed " + factor + ": it is 1…" + FASTEST + "; leave it out to go as fast as the machine can.");
        }
        return OptionalDouble.of(factor);
    }

    private void tell(Inputs inputs, RecordedRehearsal.Result result) {
        new Story(inputs.rig()).of(result.told(), result.trip(), result.also()).forEach(System.out::println);
        System.out.println();
        morning(inputs, result).lines().forEach(System.out::println);
        System.out.printf("%nRun %04d in %s: %d scans, all stored, in %.1f s (%.0f scans/s), %d transactions on the wire.%n",
                result.number(), logbook.folder(), result.scans(), result.wallSeconds(),
                result.scans() / result.wallSeconds(), result.transactions());
        if (json.isPresent()) {
            write(json.get(), measured(result));
        }
        if (truth.isPresent()) {
            write(truth.get(), result.truth());
        }
    }

    private static Card morning(Inputs inputs, RecordedRehearsal.Result result) {
        Left left = Plan.left(inputs.rig(), inputs.program(), result.told().steps());
        return MorningCard.of(result.number(), inputs.rig(), inputs.program(), new MorningCard.Known(
                RecordedRehearsal.outcome(result.exit()), "", true, result.told(), result.trip(), left.words(),
                left.care() == Left.Care.RECHARGE));
    }

    private static void write(Path file, Map<String, Object> what) {
        try {
            new ObjectMapper().writerWithDefaultPrettyPrinter().writeValue(file.toFile(), what);
        } catch (IOException e) {
            throw new Refused(file + " cannot be written: " + e.getMessage());
        }
    }

    private static Map<String, Object> measured(RecordedRehearsal.Result result) {
        List<Map<String, Object>> steps = new ArrayList<>();
        for (StepFinding step : result.told().steps()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("index", step.index());
            one.put("kind", step.kind());
            one.put("seconds", step.seconds());
            one.put("charge_ah", step.chargeAmpHours().value());
            one.put("charge_ah_u", step.chargeAmpHours().expanded());
            one.put("energy_wh", step.energyWattHours().value());
            one.put("ended_by", step.by().word());
            steps.add(one);
        }
        Map<String, Object> whole = new LinkedHashMap<>();
        whole.put("scans", result.scans());
        whole.put("wall_seconds", result.wallSeconds());
        whole.put("transactions", result.transactions());
        whole.put("steps", steps);
        return whole;
    }
}
