package rigwarden.pack;

/** A contact that follows its coil with a lag, unless it is stuck. */
final class Contact {
    private final CoilParameters p;
    private boolean ordered;
    private boolean coil;
    private boolean closed;
    private boolean stuck;
    private long dueNanos = Long.MAX_VALUE;

    Contact(CoilParameters p) {
        this.p = p;
    }

    Contact(Contact other) {
        p = other.p;
        ordered = other.ordered;
        coil = other.coil;
        closed = other.closed;
        stuck = other.stuck;
        dueNanos = other.dueNanos;
    }

    void order(boolean level) {
        ordered = level;
    }

    /** Feeds the coil if ordered; a coil that comes back before the contact moved leaves it where it is. */
    void feed(boolean supply, long nanos) {
        boolean on = ordered && supply;
        if (on != coil) {
            coil = on;
            boolean moves = !stuck && closed != on;
            dueNanos = moves ? nanos + (on ? p.closeNanos() : p.openNanos()) : Long.MAX_VALUE;
        }
        if (dueNanos <= nanos) {
            closed = coil;
            dueNanos = Long.MAX_VALUE;
        }
    }

    void stick(boolean place) {
        stuck = true;
        closed = place;
        dueNanos = Long.MAX_VALUE;
    }

    boolean closed() {
        return closed;
    }

    /** When the contact moves next, or the end of time. */
    long dueNanos() {
        return dueNanos;
    }
}
