package rigwarden.emulated;

/** What hangs on a digital output: a coil driver, a pulse stage, a lamp. */
@FunctionalInterface
public interface LineSink {
    /** Told the initial level when the line is claimed, and the level of every write after that, changed or not. */
    void level(boolean high);
}
