package rigwarden.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.logbook.RunReader;
import rigwarden.paper.CellExport;
import rigwarden.paper.CsvExport;
import rigwarden.paper.RunFindings;
import rigwarden.rig.Rig;

/** {@code rigwarden export}: a run as tables that any program reads, with what each column means beside them. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        description = "Write a run as CSV (RFC 4180), with what its columns mean beside it (CSV on the Web).")
final class ExportCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN", description = "Number of the run.")
    private int run;

    @Option(names = "--to", required = true, paramLabel = "DIR", description = "Folder to write into.")
    private Path folder = Path.of("");

    @Option(names = "--as", paramLabel = "FORM", description = "scans: one table with a row a scan (so by itself); cells: a file for each"
            + " cell in the open Battery Data Format.")
    private String form = "scans";

    @Option(names = "--workshop", paramLabel = "CODE", description = "With --as cells: who measured, in the files' names (letters, digits, hyphens).")
    private String workshop = "workshop";

    @Option(names = "--zone", paramLabel = "ZONE", description = "With --as cells: zone in which the rig's clock ran, for example UTC; without"
            + " it no file says an absolute time.")
    private Optional<String> zone = Optional.empty();

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() throws IOException {
        Path file = StoredRuns.file(logbook, run);
        try (RunReader reader = RunReader.open(file)) {
            switch (form) {
                case "scans" -> scans(reader);
                case "cells" -> cells(reader);
                case String other -> throw new Refused("--as is " + other + ": allowed is scans or cells.");
            }
        }
        return Exits.DONE;
    }

    private void scans(RunReader reader) throws IOException {
        Files.createDirectories(folder);
        Path csv = folder.resolve(String.format("run-%04d.csv", run));
        long rows = CsvExport.write(reader, csv);
        System.out.println(csv + ": " + rows + " scans");
        System.out.println(CsvExport.describe(reader, run, csv) + ": what its columns mean");
    }

    private void cells(RunReader reader) throws IOException {
        Rig rig = RunFindings.rig(reader).orElseThrow(() -> new Refused("The rig of run " + run
                + " is refused by this version of Rigwarden, so that its cells are not told apart; without --as cells its readings are written."));
        if (rig.cells().parallel() > 1) {
            throw new Refused("Run " + run + " is of " + rig.cells().parallel() + " cells side by side in each place: allowed is one, because a file"
                    + " of that form is of exactly one cell, and nobody knows what each of them carried. Export it without --as cells.");
        }
        if (!workshop.matches("[A-Za-z0-9-]{1,24}")) {
            throw new Refused("--workshop is \"" + workshop + "\": allowed are 1 to 24 letters, digits and hyphens, because it parts a file's name.");
        }
        Files.createDirectories(folder);
        CellExport export = new CellExport(run, workshop, zone.map(ExportCommand::zone), LocalDate.now(ZoneId.systemDefault()));
        for (CellExport.Written cell : export.write(reader, rig, folder)) {
            System.out.println(cell.path() + ": " + cell.rows() + " rows"
                    + (cell.leftOut() == 0 ? "" : "; " + cell.leftOut() + " scans without voltage or current have none"));
        }
    }

    private static ZoneId zone(String name) {
        try {
            return ZoneId.of(name);
        } catch (DateTimeException _) {
            throw new Refused("--zone is \"" + name + "\": allowed is a time zone, for example UTC, +01:00 or a place of the time zone database.");
        }
    }
}
