package rigwarden.warden;

/** What the run machine would like. It says nothing about whether it will be granted. */
public sealed interface Wish {
    /** Nothing on. */
    record Nothing() implements Wish {}

    /** A way, as far as a stage, at a set point. */
    record Path(Way way, Closing stage, Setpoint set) implements Wish {}

    Wish NOTHING = new Nothing();
}
