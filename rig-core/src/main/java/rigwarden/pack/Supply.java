package rigwarden.pack;

/** What kind of source hangs on the bus. */
public sealed interface Supply {
    /** Delivers the ordered current until the cells' outer studs have the ordered voltage, by remote sense. */
    record Programmable() implements Supply {}
}
