package rigwarden.paper;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** One cell's file, written row by row. */
final class CellFile implements AutoCloseable {
    private static final int TIME_DECIMALS = 3;

    private final Channel volts;
    private final Channel current;
    private final Optional<Channel> body;
    private final Channel room;
    private final OptionalLong unixSeconds;
    private final List<Column> columns;
    private final CsvWriter csv;
    private final Path path;
    private final CellSums sums = new CellSums();
    private double lastSeconds;
    private long rows;
    private long leftOut;

    CellFile(Rig rig, Channel volts, OptionalLong unixSeconds, Path path) throws IOException {
        this.volts = volts;
        this.unixSeconds = unixSeconds;
        this.path = path;
        current = rig.channel(Role.CURRENT);
        body = rig.channels(Role.BODY).stream().filter(c -> c.cell() == volts.cell()).findFirst();
        room = rig.channel(Role.ROOM);
        columns = CellColumns.of(unixSeconds.isPresent(), body.isPresent());
        csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(path);
        csv.writeRecord(columns.stream().map(Column::title).toList());
    }

    /** The next scan, so many seconds after the run began; a row needs voltage and current, and a time that does not go back. */
    void take(Scan scan, double seconds, CellClock clock) {
        if (!(reading(scan, volts) instanceof Reading.Valid cell) || !(reading(scan, current) instanceof Reading.Valid amps)
                || seconds < lastSeconds) {
            leftOut++;
            return;
        }
        lastSeconds = seconds;
        sums.take(seconds, cell.value(), amps.value());
        List<String> row = new ArrayList<>(columns.size());
        row.add(CsvExport.plain(seconds, TIME_DECIMALS));
        unixSeconds.ifPresent(began -> row.add(CsvExport.plain(began + seconds, TIME_DECIMALS)));
        row.add(field(scan, volts));
        row.add(field(scan, current));
        row.add(Integer.toString(clock.cycles()));
        row.add(Integer.toString(clock.steps()));
        row.add(clock.number());
        row.add(clock.kind());
        body.ifPresent(probe -> row.add(field(scan, probe)));
        row.add(field(scan, room));
        row.addAll(sums.fields());
        csv.writeRecord(row);
        rows++;
    }

    private static Reading reading(Scan scan, Channel channel) {
        return scan.readings().get(channel.index());
    }

    private static String field(Scan scan, Channel channel) {
        return reading(scan, channel) instanceof Reading.Valid valid ? CsvExport.plain(valid.value(), CsvExport.decimals(channel)) : "";
    }

    int cell() {
        return volts.cell();
    }

    Path path() {
        return path;
    }

    List<Column> columns() {
        return columns;
    }

    long rows() {
        return rows;
    }

    /** Scans without a row: voltage or current was not read, or the time went back. */
    long leftOut() {
        return leftOut;
    }

    @Override
    public void close() {
        try {
            csv.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
