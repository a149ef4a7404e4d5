package rigwarden.bus;

import rigwarden.warden.Failure;

/** Why a chip gave no reading this time; thrown inside drivers and turned into a failed reading by the bench. */
public final class NoReading extends Exception {
    private static final long serialVersionUID = 1L;
    private final Failure why;

    public NoReading(Failure why) {
        super(why.name(), null, false, false);
        this.why = why;
    }

    public Failure why() {
        return why;
    }
}
