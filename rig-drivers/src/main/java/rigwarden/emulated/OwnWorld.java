package rigwarden.emulated;

import rigwarden.bench.OwnReadings;

/** What the emulated computer knows of itself; a fault changes it. */
final class OwnWorld {
    double lagSeconds;
    long freeBytes = 100_000_000_000L;
    double lateSeconds;
    /** When a stall of the card began, and until when it lasts; none by itself. */
    long stalledSinceNanos;
    long stalledToNanos;
    /** When the last scan began. */
    long scanNanos;
    /** Scans for which the monotonic clock still shows the same. */
    int clockStands;

    /** Lag of the recorder, s: as stated, or as old as the stall. */
    double lag(long nanos) {
        return nanos < stalledToNanos ? (nanos - stalledSinceNanos) * 1e-9 : lagSeconds;
    }

    OwnWorld copy() {
        OwnWorld other = new OwnWorld();
        other.stalledSinceNanos = stalledSinceNanos;
        other.stalledToNanos = stalledToNanos;
        other.lagSeconds = lagSeconds;
        other.freeBytes = freeBytes;
        other.lateSeconds = lateSeconds;
        other.clockStands = clockStands;
        other.scanNanos = scanNanos;
        return other;
    }

    OwnReadings readings(VirtualClock clock) {
        return new OwnReadings(() -> lag(clock.nanos()), () -> freeBytes, () -> lateSeconds);
    }
}
