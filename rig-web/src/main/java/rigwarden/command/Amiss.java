package rigwarden.command;

import java.io.PrintStream;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import rigwarden.elsewhere.Fault;
import rigwarden.elsewhere.Remark;

/** Says what was wrong with the lines of a log: the first of each kind with their lines, all of them counted at the end. */
final class Amiss {
    /** So many of a kind are said one by one; all are events of the run's file. */
    private static final int SAID = 20;

    private final PrintStream out;
    private final Map<Fault, Long> counts = new EnumMap<>(Fault.class);

    Amiss(PrintStream out) {
        this.out = out;
    }

    void take(List<Remark> remarks) {
        for (Remark remark : remarks) {
            long count = counts.merge(remark.fault(), 1L, Long::sum);
            if (count <= SAID) {
                out.println(remark.words());
            } else if (count == SAID + 1) {
                out.println("  … and more like this one; each is an event of the run's file, with its line.");
            }
        }
    }

    void counts() {
        counts.forEach((fault, count) -> out.printf("%d × %s%n", count, fault.words()));
    }
}
