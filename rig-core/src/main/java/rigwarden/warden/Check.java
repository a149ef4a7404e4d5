package rigwarden.warden;

/** Looks at one scan for one kind of breach. */
@FunctionalInterface
public interface Check {
    /** The breach with the worst value, or {@link Breach#NONE}. */
    Breach look(View view);
}
