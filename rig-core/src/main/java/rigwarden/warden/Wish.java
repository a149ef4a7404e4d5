package rigwarden.warden;

/** What the run machine would like. It says nothing about whether it will be granted. */
public sealed interface Wish {
    /** Nothing on. */
    record Nothing() implements Wish {}

    /** A way through one device, by its place in the rig's list, as far as a stage, at a set point. */
    record Path(Way way, int through, Closing stage, Setpoint set) implements Wish {}

    Wish NOTHING = new Nothing();
}
