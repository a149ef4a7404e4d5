package rigwarden.chip.mcp9601;

/** Types by their letters (DS20005426F, SENSOR CONFIGURATION register). */
public enum Thermocouple {
    K(0),
    J(1),
    T(2),
    N(3),
    S(4),
    E(5),
    B(6),
    R(7);

    private final int code;

    Thermocouple(int code) {
        this.code = code;
    }

    int code() {
        return code;
    }
}
