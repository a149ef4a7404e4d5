package rigwarden.elsewhere;

import java.util.List;
import rigwarden.run.Event;
import rigwarden.warden.Scan;

/**
 * A row of a log from elsewhere.
 *
 * @param scan its numbers leave out those of rows that are missing
 * @param events steps that begin or end in it
 * @param remarks what was wrong with lines since the row before, and with its own
 */
public record ForeignRow(Scan scan, List<Event> events, List<Remark> remarks) {
    public ForeignRow {
        events = List.copyOf(events);
        remarks = List.copyOf(remarks);
    }
}
