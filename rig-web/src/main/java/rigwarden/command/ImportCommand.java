package rigwarden.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.elsewhere.ForeignRows;
import rigwarden.elsewhere.LogMap;
import rigwarden.elsewhere.LogUnreadable;
import rigwarden.elsewhere.MapFile;
import rigwarden.elsewhere.Remark;
import rigwarden.elsewhere.Survey;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunAbout;

/** {@code rigwarden import}: a log that somebody else wrote, kept as a run. */
@Command(
        name = "import",
        mixinStandardHelpOptions = true,
        description = "Bring in a plain CSV whose columns a map names and scales; `rigwarden findings` then answers for it as for a run.")
final class ImportCommand implements Callable<Integer> {
    /** SQLite's own share of a row, and of each reading in it; generous. */
    private static final long BYTES_A_ROW = 60;
    private static final long BYTES_A_READING = 10;

    @Parameters(index = "0", paramLabel = "FILE", description = "The log: CSV, plain or gzipped.")
    private Path file = Path.of("");

    @Option(names = "--map", required = true, paramLabel = "MAP",
            description = "What its columns mean (TOML); `rigwarden keys --map` prints every key.")
    private Path mapFile = Path.of("");

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() throws IOException {
        LogMap map = Inputs.sound(MapFile.read(mapFile)).value();
        String text = Files.readString(mapFile);
        try {
            Survey survey = Survey.of(file, map);
            Amiss amiss = new Amiss(System.out);
            int number = keep(map, text, survey, amiss);
            amiss.counts();
            System.out.printf("Run %04d: %s.%n`rigwarden findings %d` says what it found.%n", number, words(survey), number);
            return Exits.DONE;
        } catch (LogUnreadable e) {
            throw new Refused(e.getMessage());
        }
    }

    private int keep(LogMap map, String text, Survey survey, Amiss amiss) throws IOException {
        String now = LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString();
        String from = file.getFileName() + ", SHA-256 " + RunAbout.hashOf(file) + ", by the map \"" + map.name() + "\""
                + (map.source().isEmpty() ? "" : " (" + map.source() + ")") + "; " + words(survey);
        RunAbout about = RunAbout.imported(text, Version.all(), from, now, survey.firstNanos());
        long bytes = survey.rows() * (BYTES_A_ROW + BYTES_A_READING * survey.log().channels().size());
        try (Logbook book = Logbook.open(logbook.folder(), now)) {
            book.said().forEach(System.out::println);
            return book.keep(about, map.name(), words(survey), survey.log().channels(), bytes, run -> {
                List<Remark> last = ForeignRows.read(file, map, survey, row -> {
                    amiss.take(row.remarks());
                    run.put(row.scan(), row.events(), row.remarks().stream().map(Remark::words).toList());
                });
                amiss.take(last);
                run.remarks(last.stream().map(Remark::words).toList());
            });
        }
    }

    private static String words(Survey survey) {
        return String.format(Locale.ROOT, "%d of %d lines became rows in %d %s, %.2f h", survey.rows(), survey.lines(), survey.steps(),
                survey.steps() == 1 ? "step" : "steps", (survey.lastNanos() - survey.firstNanos()) / 3600e9);
    }
}
