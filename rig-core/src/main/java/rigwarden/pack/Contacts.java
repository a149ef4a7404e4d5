package rigwarden.pack;

import java.util.Arrays;

/** Coil supply, heartbeat stage and the four contacts, with their times. */
final class Contacts {
    static final long NEVER = Long.MAX_VALUE;
    private static final int EDGES_TO_LIVE = 3;
    private static final long EDGE_GAP_NANOS = 500_000_000L;
    private static final int COUNT = Line.values().length;

    private final WorldParameters.Contacts times;
    private final boolean[] ordered = new boolean[COUNT];
    private final boolean[] closed = new boolean[COUNT];
    private final boolean[] target = new boolean[COUNT];
    private final long[] changeNanos = new long[COUNT];
    private final boolean[] welded = new boolean[COUNT];
    private final boolean[] stuckOpen = new boolean[COUNT];
    private long holdNanos;
    private long lastEdgeNanos = Long.MIN_VALUE / 2;
    private int edges;
    private boolean alive;
    private boolean heartbeatStuck;
    boolean loopClosed = true;

    Contacts(WorldParameters.Contacts times) {
        this.times = times;
        holdNanos = times.heartbeatHoldNanos();
        Arrays.fill(changeNanos, NEVER);
    }

    Contacts(Contacts other) {
        this(other.times);
        System.arraycopy(other.ordered, 0, ordered, 0, COUNT);
        System.arraycopy(other.closed, 0, closed, 0, COUNT);
        System.arraycopy(other.target, 0, target, 0, COUNT);
        System.arraycopy(other.changeNanos, 0, changeNanos, 0, COUNT);
        System.arraycopy(other.welded, 0, welded, 0, COUNT);
        System.arraycopy(other.stuckOpen, 0, stuckOpen, 0, COUNT);
        holdNanos = other.holdNanos;
        lastEdgeNanos = other.lastEdgeNanos;
        edges = other.edges;
        alive = other.alive;
        heartbeatStuck = other.heartbeatStuck;
        loopClosed = other.loopClosed;
    }

    void order(Line line, boolean level, long nanos) {
        boolean changed = ordered[line.index] != level;
        ordered[line.index] = level;
        if (line == Line.HEARTBEAT && changed && !heartbeatStuck) {
            edges = nanos - lastEdgeNanos <= EDGE_GAP_NANOS ? edges + 1 : 1;
            lastEdgeNanos = nanos;
            alive |= edges >= EDGES_TO_LIVE;
        }
        settle(nanos);
    }

    void stickHeartbeat() {
        heartbeatStuck = true;
    }

    void hold(long nanos) {
        holdNanos = nanos;
    }

    void weld(Line line, long nanos) {
        welded[line.index] = true;
        settle(nanos);
    }

    void stickOpen(Line line, long nanos) {
        stuckOpen[line.index] = true;
        settle(nanos);
    }

    boolean feed() {
        return loopClosed && alive;
    }

    boolean closed(Line line) {
        return closed[line.index];
    }

    /** The next instant at which something here changes by itself. */
    long nextNanos() {
        long next = alive ? lastEdgeNanos + holdNanos : NEVER;
        for (long change : changeNanos) {
            next = Math.min(next, change);
        }
        return next;
    }

    /** Lets everything happen that is due at this instant. */
    void settle(long nanos) {
        if (alive && nanos >= lastEdgeNanos + holdNanos) {
            alive = false;
            edges = 0;
        }
        boolean feed = feed();
        for (Line line : LINES) {
            if (!line.hasContact()) {
                continue;
            }
            int i = line.index;
            boolean coil = ordered[i] && feed;
            if (coil != target[i]) {
                target[i] = coil;
                changeNanos[i] = nanos + (coil ? times.closeNanos() : times.openNanos());
            }
            if (changeNanos[i] <= nanos) {
                changeNanos[i] = NEVER;
                closed[i] = target[i] || (welded[i] && closed[i]);
            }
            if (stuckOpen[i]) {
                closed[i] = false;
            }
        }
    }

    private static final Line[] LINES = Line.values();
}
