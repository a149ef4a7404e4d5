package rigwarden.pack;

import java.util.Arrays;

/** The contacts with their order lines on one coil supply, and the sounder's line. */
final class Contacts {
    private final Contact contactor;
    private final Contact precharge;
    private final Contact[] sources;
    private final Contact[] sinks;
    private boolean sounder;

    Contacts(CoilParameters p, int sources, int sinks) {
        contactor = new Contact(p);
        precharge = new Contact(p);
        this.sources = new Contact[sources];
        Arrays.setAll(this.sources, i -> new Contact(p));
        this.sinks = new Contact[sinks];
        Arrays.setAll(this.sinks, i -> new Contact(p));
    }

    Contacts(Contacts other) {
        contactor = new Contact(other.contactor);
        precharge = new Contact(other.precharge);
        sources = Arrays.stream(other.sources).map(Contact::new).toArray(Contact[]::new);
        sinks = Arrays.stream(other.sinks).map(Contact::new).toArray(Contact[]::new);
        sounder = other.sounder;
    }

    /** Sets a line; the heartbeat's has its own stage. */
    void line(Line line, boolean level) {
        switch (line.kind()) {
            case CONTACTOR, PRECHARGE, SOURCE_RELAY, SINK_RELAY -> of(line).order(level);
            case SOUNDER -> sounder = level;
            case HEARTBEAT -> { }
        }
    }

    void stick(Line line, boolean place) {
        of(line).stick(place);
    }

    private Contact of(Line line) {
        return switch (line.kind()) {
            case CONTACTOR -> contactor;
            case PRECHARGE -> precharge;
            case SOURCE_RELAY -> of(sources, line);
            case SINK_RELAY -> of(sinks, line);
            case HEARTBEAT, SOUNDER -> throw new IllegalArgumentException("no contact hangs on " + line);
        };
    }

    private static Contact of(Contact[] contacts, Line line) {
        if (line.index() >= contacts.length) {
            throw new IllegalArgumentException("no " + line + " among " + contacts.length);
        }
        return contacts[line.index()];
    }

    /** Feeds each coil whose line is high, if there is a supply, and moves the contacts whose lag is over. */
    void feed(boolean supply, long nanos) {
        contactor.feed(supply, nanos);
        precharge.feed(supply, nanos);
        for (Contact source : sources) {
            source.feed(supply, nanos);
        }
        for (Contact sink : sinks) {
            sink.feed(supply, nanos);
        }
    }

    /** When the next contact moves, or the end of time. */
    long dueNanos() {
        long due = Math.min(contactor.dueNanos(), precharge.dueNanos());
        for (Contact source : sources) {
            due = Math.min(due, source.dueNanos());
        }
        for (Contact sink : sinks) {
            due = Math.min(due, sink.dueNanos());
        }
        return due;
    }

    boolean contactor() {
        return contactor.closed();
    }

    boolean precharge() {
        return precharge.closed();
    }

    boolean source(int index) {
        return sources[index].closed();
    }

    boolean sink(int index) {
        return sinks[index].closed();
    }

    boolean sounder() {
        return sounder;
    }
}
