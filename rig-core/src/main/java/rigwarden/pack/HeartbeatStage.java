package rigwarden.pack;

import java.util.Optional;

/** Holds the coil supply while its input keeps toggling; a level that stays, high or low, lets it drop. */
final class HeartbeatStage {
    private static final double NANOS = 1e9;

    private final CoilParameters p;
    private long holdNanos;
    private boolean level;
    private boolean stuck;
    private Optional<Boolean> holding = Optional.empty();
    private boolean alive;
    private int edges;
    private long lastEdgeNanos;

    HeartbeatStage(CoilParameters p) {
        this.p = p;
        this.holdNanos = Math.round(p.holdSeconds() * NANOS);
    }

    HeartbeatStage(HeartbeatStage other) {
        p = other.p;
        holdNanos = other.holdNanos;
        level = other.level;
        stuck = other.stuck;
        holding = other.holding;
        alive = other.alive;
        edges = other.edges;
        lastEdgeNanos = other.lastEdgeNanos;
    }

    void line(boolean now, long nanos) {
        if (stuck || now == level) {
            return;
        }
        level = now;
        boolean quick = edges > 0 && nanos - lastEdgeNanos <= p.edgeGapSeconds() * NANOS;
        edges = quick || alive ? edges + 1 : 1;
        alive = alive || edges >= p.edges();
        lastEdgeNanos = nanos;
    }

    void stick(boolean atLevel, long nanos) {
        line(atLevel, nanos);
        stuck = true;
    }

    void heldBy(boolean atLevel) {
        holding = Optional.of(atLevel);
    }

    void hold(double seconds) {
        holdNanos = Math.round(seconds * NANOS);
    }

    /** Drops if its time is up. */
    void reach(long nanos) {
        if (dueNanos() <= nanos) {
            alive = false;
            edges = 0;
        }
    }

    boolean alive() {
        return alive;
    }

    /** When the stage will drop if no edge comes, or the end of time. */
    long dueNanos() {
        boolean drops = alive && holding.map(held -> held != level).orElse(true);
        return drops ? lastEdgeNanos + holdNanos : Long.MAX_VALUE;
    }
}
