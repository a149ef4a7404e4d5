package rigwarden.proof;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import rigwarden.serial.SerialLine;

/** A line that keeps how long the first byte of each answer took after the last byte of its question was handed over. */
final class TimedLine implements SerialLine {
    private final SerialLine line;
    private final List<Long> nanos = Collections.synchronizedList(new ArrayList<>());
    private long wroteNanos;
    private boolean waits;

    TimedLine(SerialLine line) {
        this.line = line;
    }

    List<Long> nanos() {
        return List.copyOf(nanos);
    }

    @Override
    public boolean open() {
        return line.open();
    }

    @Override
    public int write(byte[] bytes, int length) {
        int count = line.write(bytes, length);
        wroteNanos = System.nanoTime();
        waits = true;
        return count;
    }

    @Override
    public int read(byte[] into) {
        int count = line.read(into);
        if (count > 0 && waits) {
            nanos.add(System.nanoTime() - wroteNanos);
            waits = false;
        }
        return count;
    }

    @Override
    public void close() {
        line.close();
    }
}
