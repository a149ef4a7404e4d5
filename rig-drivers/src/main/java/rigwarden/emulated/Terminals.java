package rigwarden.emulated;

/** What a serial instrument's power terminals are bolted to. */
public interface Terminals {
    /**
     * What the instrument does from now on; told after every accepted order, changed or not.
     *
     * @param on whether its output or input is switched on
     * @param volts its voltage setting, at least 0; 0 for a sink
     * @param amps its current setting, at least 0: out of a source, into a sink
     */
    void order(boolean on, double volts, double amps);

    /** Volts between the sense leads. */
    double volts();

    /** Amperes out of a source or into a sink; positive in the instrument's own way. */
    double amps();
}
