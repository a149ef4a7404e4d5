package rigwarden.paper;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import rigwarden.logbook.Cycle;
import rigwarden.logbook.Cycles;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunReader;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/**
 * A run as one file for each cell in the Battery Data Format of the LF Energy Battery Data Alliance (its README, sections 1 to 7; ontology
 * version 1.3.0), each with its metadata in parallel files.
 *
 * @param run its number
 * @param workshop who measured: letters, digits and hyphens
 * @param zone in which the computer's clock ran; without it no file says an absolute time
 * @param today the day of the export
 */
public record CellExport(int run, String workshop, Optional<ZoneId> zone, LocalDate today) {
    private static final String VOCABULARY = "https://w3id.org/battery-data-alliance/ontology/battery-data-format/";

    /**
     * A cell's file that was written.
     *
     * @param path of it
     * @param rows in it
     * @param leftOut scans without a row
     */
    public record Written(Path path, long rows, long leftOut) {}

    /**
     * Writes every cell's file, one scan at a time in memory.
     *
     * @param rig that the run's readings are of, without cells in parallel
     * @param folder that exists
     * @throws IOException when a file cannot be written
     * @throws IllegalArgumentException of a rig with cells in parallel: nobody knows what each of them carries
     */
    public List<Written> write(RunReader reader, Rig rig, Path folder) throws IOException {
        if (rig.cells().parallel() > 1) {
            throw new IllegalArgumentException("a file is of exactly one cell");
        }
        List<CellFile> files = new ArrayList<>();
        try {
            for (Channel cell : rig.channels(Role.CELL_VOLTS)) {
                files.add(new CellFile(rig, cell, unixSeconds(reader.about()), folder.resolve(name(rig, cell, reader.about()) + ".bdf.csv")));
            }
            rows(reader, files);
        } finally {
            files.forEach(CellFile::close);
        }
        List<Written> written = new ArrayList<>();
        for (CellFile file : files) {
            describe(reader.about(), rig, file);
            written.add(new Written(file.path(), file.rows(), file.leftOut()));
        }
        return List.copyOf(written);
    }

    private static void rows(RunReader reader, List<CellFile> files) {
        long origin = reader.about().originNanos();
        CellClock clock = new CellClock();
        try (Cycles cycles = reader.cycles()) {
            while (cycles.hasNext()) {
                Cycle cycle = cycles.next();
                cycle.events().forEach(clock::take);
                double seconds = (cycle.scan().nanos() - origin) * 1e-9;
                files.forEach(file -> file.take(cycle.scan(), seconds, clock));
            }
        }
    }

    /** Workshop, cell, day and running number, parted as the format recommends. */
    private String name(Rig rig, Channel cell, RunAbout about) {
        String words = rig.name().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-|-$", "");
        LocalDate day = began(about).map(LocalDateTime::toLocalDate).orElse(today);
        return Spots.say("%s__%s-%02d__%s_%03d", workshop, words, cell.cell(), day.format(DateTimeFormatter.BASIC_ISO_DATE), run);
    }

    /** The label of a rehearsal is no time. */
    private static Optional<LocalDateTime> began(RunAbout about) {
        try {
            return Optional.of(LocalDateTime.parse(about.started()));
        } catch (DateTimeParseException _) {
            return Optional.empty();
        }
    }

    private OptionalLong unixSeconds(RunAbout about) {
        Optional<LocalDateTime> began = began(about);
        return zone.isPresent() && began.isPresent()
                ? OptionalLong.of(began.get().atZone(zone.get()).toEpochSecond())
                : OptionalLong.empty();
    }

    private void describe(RunAbout about, Rig rig, CellFile file) throws IOException {
        String title = Spots.say("Cell %d of %s, run %04d", file.cell(), rig.name(), run);
        String words = (about.rehearsal() ? "A rehearsal: every part was emulated, and this is about no real cell. " : "Began " + about.started()
                + " by the computer's clock. ") + Spots.say("One of %d cells in series, rated %.4g Ah. %d rows; %d scans have none, since voltage"
                + " or current was not read.", rig.cells().series(), rig.cells().ratedAmpHours(), file.rows(), file.leftOut());
        new CsvMetadata(title, words, file.columns()).write(file.path());
        Path dataset = file.path().resolveSibling(file.path().getFileName().toString().replace(".bdf.csv", ".metadata.json"));
        new ObjectMapper().writerWithDefaultPrettyPrinter().writeValue(dataset.toFile(), dataset(title, words, file));
    }

    /** As the format's own quick start has it; a licence is for whoever publishes the file to add. */
    private Map<String, Object> dataset(String title, String words, CellFile file) {
        Map<String, Object> distribution = new LinkedHashMap<>();
        distribution.put("@type", "dcat:Distribution");
        distribution.put("dcat:mediaType", "text/csv");
        distribution.put("dcat:downloadURL", String.valueOf(file.path().getFileName()));
        distribution.put("csvw:dialect", Map.of("csvw:delimiter", ",", "csvw:skipRows", 0));
        distribution.put("csvw:tableSchema", Map.of("@id", VOCABULARY + "schema", "@type", "csvw:TableSchema"));
        Map<String, Object> set = new LinkedHashMap<>();
        set.put("@context", VOCABULARY + "context");
        set.put("@type", "dcat:Dataset");
        set.put("dc:title", title);
        set.put("dc:description", words);
        set.put("dc:creator", Map.of("@type", "schema:Organization", "schema:name", workshop));
        set.put("dc:issued", today.toString());
        set.put("dc:modified", today.toString());
        set.put("dcat:keyword", List.of("LFP", "cell", "charge", "discharge"));
        set.put("dcat:distribution", distribution);
        return set;
    }
}
