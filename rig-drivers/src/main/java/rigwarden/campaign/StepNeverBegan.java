package rigwarden.campaign;

/** A written case names a step to which the healthy night does not come. */
public final class StepNeverBegan extends RuntimeException {
    private static final long serialVersionUID = 1L;

    StepNeverBegan(String words) {
        super(words);
    }
}
