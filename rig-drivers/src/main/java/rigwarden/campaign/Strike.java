package rigwarden.campaign;

/**
 * A fault with its time.
 *
 * @param what the fault
 * @param scan of the night after which it is there
 */
public record Strike(Injection what, long scan) {}
