package rigwarden.warden;

/** A direction of energy. */
public enum Way {
    CHARGE,
    DISCHARGE;

    /** +1 for current into the cells, −1 out of them. */
    public int sign() {
        return this == CHARGE ? 1 : -1;
    }
}
