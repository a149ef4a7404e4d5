package rigwarden.warden.planted;

/** What no class of the warden may do; the architecture test must find it. */
public final class PlantedThread {
    /** Asks a clock, and makes a thread. */
    public long seconds() {
        return System.nanoTime() + new Thread("planted").threadId();
    }
}
