package rigwarden.elsewhere;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.zip.GZIPInputStream;

/** Reads a CSV, plain or gzipped, one record at a time in memory. */
final class CsvLines {
    private static final int GZIP_FIRST = 0x1f;
    private static final int GZIP_SECOND = 0x8b;

    private CsvLines() {}

    /** Takes the records of a file one after the other. */
    interface Taking {
        /** The heading, once. */
        void heading(List<String> names);

        /** A record after it. */
        void line(CsvRecord line);
    }

    /**
     * Reads all of it.
     *
     * @throws LogUnreadable where there is no such file, or it breaks off or is no CSV from some line on
     */
    static void read(Path file, LogMap.Layout layout, Taking taking) {
        long line = 0;
        try (InputStream in = open(file);
                CsvReader<CsvRecord> csv = CsvReader.builder().fieldSeparator(layout.separator()).skipEmptyLines(true)
                        .extraFieldStrategy(FieldMismatchStrategy.IGNORE).missingFieldStrategy(FieldMismatchStrategy.IGNORE).detectBomHeader(true)
                        .ofCsvRecord(in, StandardCharsets.UTF_8)) {
            boolean named = false;
            for (CsvRecord one : csv) {
                line = one.getStartingLineNumber();
                if (named) {
                    taking.line(one);
                } else if (line > layout.linesBefore()) {
                    taking.heading(one.getFields().stream().map(String::strip).toList());
                    named = true;
                }
            }
            if (!named) {
                throw new LogUnreadable(file.getFileName() + " has no heading: it is empty, or has nothing after the lines before it.");
            }
        } catch (IOException | UncheckedIOException e) {
            throw new LogUnreadable(file + " cannot be read beyond line " + line, e);
        } catch (CsvParseException e) {
            throw new LogUnreadable(file + " is no CSV beyond line " + line, e);
        }
    }

    /** Known by its first two bytes, whatever its name. */
    private static InputStream open(Path file) throws IOException {
        InputStream in = new BufferedInputStream(Files.newInputStream(file), 1 << 16);
        boolean opened = false;
        try {
            in.mark(2);
            boolean zipped = in.read() == GZIP_FIRST && in.read() == GZIP_SECOND;
            in.reset();
            InputStream plain = zipped ? new GZIPInputStream(in, 1 << 16) : in;
            opened = true;
            return plain;
        } finally {
            if (!opened) {
                in.close();
            }
        }
    }

    /** Says which columns a map asks for that are not there, if any. */
    static void need(List<String> names, List<String> asked, Consumer<String> refuse) {
        for (String name : asked) {
            long there = names.stream().filter(name::equals).count();
            if (there != 1) {
                refuse.accept("The map names the column \"" + name + "\", and the heading has it " + (there == 0 ? "not" : there + " times")
                        + "; it has: " + String.join(", ", names) + ".");
            }
        }
    }
}
