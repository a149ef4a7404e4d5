package rigwarden.paper;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import rigwarden.logbook.Cycle;
import rigwarden.logbook.Cycles;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.StoredEvent;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * A run as comma-separated values by RFC 4180: one row a scan, unit last in every column's name, an empty field where a
 * channel had no valid reading. Charge and energy are running sums over the run, positive into the cells.
 */
public final class CsvExport {
    private CsvExport() {}

    /**
     * Writes a run.
     *
     * @return the rows written, the header not counted
     * @throws IOException when the file cannot be written
     */
    public static long write(RunReader reader, Path file) throws IOException {
        try (Writer writer = Files.newBufferedWriter(file, StandardCharsets.UTF_8)) {
            return write(reader, writer);
        }
    }

    /**
     * Writes a run to somewhere else, one scan at a time in memory; the writer is closed.
     *
     * @return the rows written, the header not counted
     * @throws IOException when it cannot be written
     */
    public static long write(RunReader reader, Writer to) throws IOException {
        List<Channel> channels = CsvColumns.channels(reader.channels());
        List<Channel> cells = channels.stream().filter(c -> c.role() == Role.CELL_VOLTS).toList();
        Channel current = channels.stream().filter(c -> c.role() == Role.CURRENT).findFirst().orElseThrow();
        long origin = reader.about().originNanos();
        long rows = 0;
        int step = 0;
        double ampHours = 0;
        double wattHours = 0;
        double lastAmps = 0;
        double lastWatts = 0;
        long lastNanos = -1;
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(to);
                Cycles cycles = reader.cycles()) {
            csv.writeRecord(CsvColumns.of(reader.channels()).stream().map(Column::title).toList());
            while (cycles.hasNext()) {
                Cycle cycle = cycles.next();
                Scan scan = cycle.scan();
                for (StoredEvent event : cycle.events()) {
                    if (event.kind().equals("step_begun")) {
                        step = event.step().orElse(step);
                    }
                }
                if (whole(scan, current, cells)) {
                    double amps = value(scan, current);
                    double watts = amps * cells.stream().mapToDouble(cell -> value(scan, cell)).sum();
                    double hours = lastNanos < 0 ? 0 : (scan.nanos() - lastNanos) / 3600e9;
                    ampHours += (amps + lastAmps) / 2 * hours;
                    wattHours += (watts + lastWatts) / 2 * hours;
                    lastNanos = scan.nanos();
                    lastAmps = amps;
                    lastWatts = watts;
                }
                List<String> row = new ArrayList<>(channels.size() + 4);
                row.add(plain((scan.nanos() - origin) * 1e-9, 3));
                row.add(Integer.toString(step));
                for (Channel channel : channels) {
                    row.add(scan.readings().get(channel.index()) instanceof Reading.Valid valid
                            ? plain(valid.value(), decimals(channel))
                            : "");
                }
                row.add(plain(ampHours, 6));
                row.add(plain(wattHours, 6));
                csv.writeRecord(row);
                rows++;
            }
        }
        return rows;
    }

    /**
     * Writes what the columns of a run's table mean beside it.
     *
     * @return the file
     * @throws IOException when it cannot be written
     */
    public static Path describe(RunReader reader, int run, Path csv) throws IOException {
        String words = reader.about().rehearsal()
                ? "A rehearsal: every part was emulated, and this is about no real cell."
                : "Began " + reader.about().started() + " by the computer's clock.";
        return new CsvMetadata(Spots.say("Run %04d, one row a scan", run), words, CsvColumns.of(reader.channels())).write(csv);
    }

    /** Sums go from one scan in which current and cells can be seen to the next such; none is made up between. */
    private static boolean whole(Scan scan, Channel current, List<Channel> cells) {
        return valid(scan, current) && cells.stream().allMatch(cell -> valid(scan, cell));
    }

    private static boolean valid(Scan scan, Channel channel) {
        return scan.readings().get(channel.index()) instanceof Reading.Valid;
    }

    private static double value(Scan scan, Channel channel) {
        return ((Reading.Valid) scan.readings().get(channel.index())).value();
    }

    /** Decimals that show a step of a channel and one place more. */
    static int decimals(Channel channel) {
        return (int) Math.clamp(Math.ceil(-Math.log10(channel.scale())) + 1, 0, 9);
    }

    /** A number as every program reads it, whatever the machine's language. */
    static String plain(double value, int decimals) {
        return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_EVEN).toPlainString();
    }
}
