package rigwarden.quantity;

/** What a channel measures; decides its unit wherever it is printed, stored or exported. */
public enum Quantity {
    /** Ampere, positive into the cells. */
    CURRENT("a", "A"),
    /** Coulomb, positive into the cells. */
    CHARGE("as", "A·s"),
    /** Volt. */
    VOLTAGE("v", "V"),
    /** Degree Celsius. */
    TEMPERATURE("c", "°C"),
    /** 1 closed, on, present; 0 open, off, absent. */
    SWITCH("on", ""),
    /** Second. */
    TIME("s", "s"),
    /** Byte. */
    SIZE("bytes", "bytes"),
    /** A pure number. */
    RATIO("1", "");

    private final String suffix;
    private final String symbol;

    Quantity(String suffix, String symbol) {
        this.suffix = suffix;
        this.symbol = symbol;
    }

    /** Last part of a column's name. */
    public String suffix() {
        return suffix;
    }

    /** Unit as printed for a person. */
    public String symbol() {
        return symbol;
    }
}
