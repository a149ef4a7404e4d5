package rigwarden.bench;

/** What the computer knows of itself; in a rehearsal the emulated world says it. */
public interface OwnReadings {
    /** How far the recorder lags, s. */
    double recorderLagSeconds();

    /** Free space where the run file is, bytes. */
    long freeBytes();

    /** How late this scan began, s. */
    double latenessSeconds();
}
