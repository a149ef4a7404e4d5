package rigwarden.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.logbook.RunReader;
import rigwarden.paper.CsvExport;

/** {@code rigwarden export}: a run as comma-separated values. */
@Command(name = "export", mixinStandardHelpOptions = true, description = "Write a run as CSV (RFC 4180).")
final class ExportCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN", description = "Number of the run.")
    private int run;

    @Option(names = "--to", required = true, paramLabel = "DIR", description = "Folder to write into.")
    private Path folder = Path.of("");

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() throws Exception {
        Path file = logbook.folder().resolve("runs").resolve(String.format("%04d.db", run));
        if (!Files.isReadable(file)) {
            throw new Refused("There is no run " + run + " in " + logbook.folder()
                    + "; `rigwarden runs` lists those that there are.");
        }
        Files.createDirectories(folder);
        Path csv = folder.resolve(String.format("run-%04d.csv", run));
        try (RunReader reader = RunReader.open(file)) {
            long rows = CsvExport.write(reader, csv);
            System.out.println(csv + ": " + rows + " scans");
        }
        return Exits.DONE;
    }
}
