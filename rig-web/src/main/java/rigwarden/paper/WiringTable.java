package rigwarden.paper;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.util.List;

/** The connections of a rig as comma-separated values by RFC 4180. */
public final class WiringTable {
    private WiringTable() {}

    /** The whole file. */
    public static String text(List<Connection> connections) {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(text)) {
            csv.writeRecord("label", "from", "to", "conductor", "note");
            for (Connection each : connections) {
                csv.writeRecord(each.label(), each.from(), each.to(), each.conductor(), each.note());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }
}
