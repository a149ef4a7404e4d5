package rigwarden.bus;

/** A transfer that did not happen whole. */
public final class BusFailure extends Exception {
    private static final long serialVersionUID = 1L;

    public BusFailure(String what) {
        super(what, null, false, false);
    }
}
