package rigwarden.pack;

/** The four contacts with their order lines on one coil supply, and the sounder's line. */
final class Contacts {
    private final Contact contactor;
    private final Contact precharge;
    private final Contact source;
    private final Contact sink;
    private boolean sounder;

    Contacts(CoilParameters p) {
        contactor = new Contact(p);
        precharge = new Contact(p);
        source = new Contact(p);
        sink = new Contact(p);
    }

    Contacts(Contacts other) {
        contactor = new Contact(other.contactor);
        precharge = new Contact(other.precharge);
        source = new Contact(other.source);
        sink = new Contact(other.sink);
        sounder = other.sounder;
    }

    /** Sets a line; the heartbeat's has its own stage. */
    void line(Line line, boolean level) {
        switch (line) {
            case CONTACTOR, PRECHARGE, SOURCE_RELAY, SINK_RELAY -> of(line).order(level);
            case SOUNDER -> sounder = level;
            case HEARTBEAT -> { }
        }
    }

    void stick(Line line, boolean place) {
        of(line).stick(place);
    }

    private Contact of(Line line) {
        return switch (line) {
            case CONTACTOR -> contactor;
            case PRECHARGE -> precharge;
            case SOURCE_RELAY -> source;
            case SINK_RELAY -> sink;
            case HEARTBEAT, SOUNDER -> throw new IllegalArgumentException("no contact hangs on " + line);
        };
    }

    /** Feeds each coil whose line is high, if there is a supply, and moves the contacts whose lag is over. */
    void feed(boolean supply, long nanos) {
        contactor.feed(supply, nanos);
        precharge.feed(supply, nanos);
        source.feed(supply, nanos);
        sink.feed(supply, nanos);
    }

    /** When the next contact moves, or the end of time. */
    long dueNanos() {
        return Math.min(Math.min(contactor.dueNanos(), precharge.dueNanos()),
                Math.min(source.dueNanos(), sink.dueNanos()));
    }

    boolean contactor() {
        return contactor.closed();
    }

    boolean precharge() {
        return precharge.closed();
    }

    boolean source() {
        return source.closed();
    }

    boolean sink() {
        return sink.closed();
    }

    boolean sounder() {
        return sounder;
    }
}
