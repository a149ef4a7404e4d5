package rigwarden.pack;

import java.util.Arrays;

/** All sources and sinks on the bus. */
final class Devices {
    private final Source[] sources;
    private final Sink[] sinks;

    Devices(PathParameters path) {
        sources = path.supplies().stream().map(supply -> Source.of(supply, path)).toArray(Source[]::new);
        sinks = path.loads().stream().map(load -> Sink.of(load, path)).toArray(Sink[]::new);
    }

    Devices(Devices other) {
        sources = Arrays.stream(other.sources).map(Source::copy).toArray(Source[]::new);
        sinks = Arrays.stream(other.sinks).map(Sink::copy).toArray(Sink[]::new);
    }

    /** Lets each take in its relay and the time. */
    void aim(Contacts contacts, long nanos) {
        for (int i = 0; i < sources.length; i++) {
            sources[i].aim(contacts.source(i), contacts.contactor(), nanos);
        }
        for (int j = 0; j < sinks.length; j++) {
            sinks[j].aim(contacts.sink(j), nanos);
        }
    }

    boolean moving() {
        for (Source source : sources) {
            if (source.limitAmps().moving()) {
                return true;
            }
        }
        for (Sink sink : sinks) {
            if (sink.ramp().moving()) {
                return true;
            }
        }
        return false;
    }

    void move(double seconds) {
        for (Source source : sources) {
            source.limitAmps().move(seconds);
        }
        for (Sink sink : sinks) {
            sink.ramp().move(seconds);
        }
    }

    /** Shows each what it does now; true if one of them means to do something of its own. */
    boolean saw(Path path, long nanos) {
        boolean changed = false;
        for (int i = 0; i < sources.length; i++) {
            changed |= sources[i].saw(path.sourceAmps(i), nanos);
        }
        for (int j = 0; j < sinks.length; j++) {
            changed |= sinks[j].saw(path.sinkVolts(j), path.sinkAmps(j), nanos);
        }
        return changed;
    }

    /** When the next one changes by itself, or the end of time. */
    long dueNanos() {
        long due = Long.MAX_VALUE;
        for (Source source : sources) {
            due = Math.min(due, source.dueNanos());
        }
        for (Sink sink : sinks) {
            due = Math.min(due, sink.dueNanos());
        }
        return due;
    }

    Source[] sources() {
        return sources;
    }

    Sink[] sinks() {
        return sinks;
    }

    Source source(int index) {
        if (index < 0 || index >= sources.length) {
            throw new IllegalArgumentException("no source " + index + " among " + sources.length);
        }
        return sources[index];
    }

    Sink sink(int index) {
        if (index < 0 || index >= sinks.length) {
            throw new IllegalArgumentException("no sink " + index + " among " + sinks.length);
        }
        return sinks[index];
    }
}
