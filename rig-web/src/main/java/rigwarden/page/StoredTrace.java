package rigwarden.page;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import rigwarden.live.History;
import rigwarden.live.Trace;
import rigwarden.logbook.RunReader;
import rigwarden.logbook.Thinned;
import rigwarden.rig.Channel;

/** A part of a stored run for the charts. */
final class StoredTrace {
    private StoredTrace() {}

    /** From one elapsed time to another, s; a run that is still written is read up to what is stored. */
    static String json(Path file, double fromSeconds, double toSeconds, int buckets) {
        try (RunReader reader = RunReader.open(file)) {
            List<Channel> drawn = reader.channels().stream().filter(History::drawn).toList();
            long origin = reader.about().originNanos();
            Thinned thinned = reader.thinned(drawn, origin + nanos(fromSeconds), origin + nanos(toSeconds), buckets);
            double[] seconds = new double[thinned.nanos().length];
            for (int i = 0; i < seconds.length; i++) {
                seconds[i] = (thinned.nanos()[i] - origin) * 1e-9;
            }
            List<Trace.Line> lines = new ArrayList<>();
            for (int line = 0; line < thinned.low().length; line++) {
                lines.add(new Trace.Line(drawn.get(line), thinned.low()[line], thinned.high()[line]));
            }
            return TraceJson.of(new Trace(seconds, lines));
        }
    }

    private static long nanos(double seconds) {
        return (long) (Math.clamp(seconds, 0, 1e8) * 1e9);
    }
}
