package rigwarden.emulated;

import rigwarden.bench.OwnReadings;

/** What the emulated computer knows of itself; a fault changes it. */
final class OwnWorld {
    double lagSeconds;
    long freeBytes = 100_000_000_000L;
    double lateSeconds;

    OwnWorld copy() {
        OwnWorld other = new OwnWorld();
        other.lagSeconds = lagSeconds;
        other.freeBytes = freeBytes;
        other.lateSeconds = lateSeconds;
        return other;
    }

    OwnReadings readings() {
        return new OwnReadings(() -> lagSeconds, () -> freeBytes, () -> lateSeconds);
    }
}
