package rigwarden.findings.trace;

import java.util.TreeMap;
import java.util.function.Consumer;

/** Hands rows on in the order of their scans, each once: a row that comes late waits for nobody longer than the window. */
public final class InOrder {
    /** A row may come so many rows late and still find its place. */
    static final int WINDOW = 64;

    private final TreeMap<Long, Row> waiting = new TreeMap<>();
    private final Consumer<Row> on;
    private long handed;
    private long missing;

    public InOrder(Consumer<Row> on) {
        this.on = on;
    }

    public void take(Row row) {
        long number = row.scan().number();
        if (number <= handed) {
            return;
        }
        waiting.putIfAbsent(number, row);
        while (!waiting.isEmpty() && (waiting.firstKey() == handed + 1 || waiting.size() > WINDOW)) {
            first();
        }
    }

    /** No more rows come: hands on what still waits. */
    public void end() {
        while (!waiting.isEmpty()) {
            first();
        }
    }

    private void first() {
        Row row = waiting.pollFirstEntry().getValue();
        missing += row.scan().number() - handed - 1;
        handed = row.scan().number();
        on.accept(row);
    }

    /** Rows that never came, before the last that did. */
    public long missing() {
        return missing;
    }
}
