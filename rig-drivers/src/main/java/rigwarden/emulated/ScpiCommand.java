package rigwarden.emulated;

/** What a header can stand for. */
enum ScpiCommand {
    BRANCH(false, false),
    ERROR(true, false),
    VERSION(true, false),
    VOLTS(true, true),
    AMPS(true, true),
    PROTECTION(true, true),
    SWITCH(true, true),
    MEASURED_VOLTS(true, false),
    MEASURED_AMPS(true, false);

    final boolean asks;
    final boolean orders;

    ScpiCommand(boolean asks, boolean orders) {
        this.asks = asks;
        this.orders = orders;
    }
}
