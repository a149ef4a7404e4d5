package rigwarden.chip.max31856;

/** Types by their letters (MAX31856, CR1 bits 3…0). */
public enum Thermocouple {
    B(0),
    E(1),
    J(2),
    K(3),
    N(4),
    R(5),
    S(6),
    T(7);

    private final int code;

    Thermocouple(int code) {
        this.code = code;
    }

    int code() {
        return code;
    }
}
