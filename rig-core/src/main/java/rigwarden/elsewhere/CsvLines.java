package rigwarden.elsewhere;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import java.util.zip.GZIPInputStream;

/** Reads a CSV, plain or gzipped, one record at a time in memory. */
final class CsvLines {
    private static final int GZIP_FIRST = 0x1f;
    private static final int GZIP_SECOND = 0x8b;

    /** What stands in the place of bytes that are no UTF-8. */
    private static final char REPLACED = '\uFFFD';
    private static final int SHOWN = 400;

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
        } catch (NoSuchFileException e) {
            throw new LogUnreadable(file + " is not there");
        } catch (AccessDeniedException e) {
            throw new LogUnreadable(file + " may not be read by you");
        } catch (IOException | UncheckedIOException e) {
            throw ends(file, line, e);
        } catch (CsvParseException e) {
            throw e.getCause() instanceof IOException ? ends(file, line, e) : new LogUnreadable(file + " is no CSV beyond line " + line, e);
        }
    }

    /** What a stream said when it failed; of one that ended too soon the reason is plain. */
    private static LogUnreadable ends(Path file, long line, Exception said) {
        for (Throwable cause = said; cause != null; cause = cause.getCause()) {
            if (cause instanceof EOFException) {
                return new LogUnreadable(file + " ends too soon, after line " + line + ": it was cut short on its way, and nothing of it was kept");
            }
        }
        return new LogUnreadable(file + " cannot be read beyond line " + line, said);
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
                        + "; it has: " + shown(names) + ".");
            }
        }
    }

    /** A heading as a terminal can bear it, whatever file it was taken from. */
    private static String shown(List<String> names) {
        String all = String.join(", ", names);
        if (all.chars().anyMatch(c -> Character.isISOControl(c) || c == REPLACED)) {
            return "signs that are no text, so that it is no CSV";
        }
        return all.length() <= SHOWN ? all : all.substring(0, SHOWN) + " …";
    }
}
