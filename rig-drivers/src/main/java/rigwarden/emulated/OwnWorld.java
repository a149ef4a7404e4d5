package rigwarden.emulated;

import rigwarden.bench.OwnReadings;

/** What the emulated computer knows of itself; a fault changes it. */
final class OwnWorld implements OwnReadings {
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

    @Override
    public double recorderLagSeconds() {
        return lagSeconds;
    }

    @Override
    public long freeBytes() {
        return freeBytes;
    }

    @Override
    public double latenessSeconds() {
        return lateSeconds;
    }
}
