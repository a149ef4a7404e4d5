package rigwarden.rig;

/**
 * How orders are said to one instrument, as IEEE 488.2 program messages. The usual ones use SCPI-1999 commands only.
 *
 * @param identity how its answer to {@code *IDN?} begins; empty when it is not asked
 * @param set message that sets it, with {@code {volts}} and {@code {amps}} where the numbers go
 * @param on message that switches it on
 * @param off message that switches it off
 * @param limit message that sets its own limit, with {@code {limit}}: V of a source, A of a sink
 * @param askLimit question that is answered by that limit
 * @param poll question that is answered in one line by V, A, 1 or 0 for on, and the oldest error
 * @param askError question that takes the oldest error out of its queue: number, text; 0 when there is none
 */
public record Commands(
        String identity, String set, String on, String off, String limit, String askLimit, String poll,
        String askError) implements Speech {
    /** For a source: SOURce, OUTPut, MEASure and SYSTem of SCPI-1999 volume 2. */
    public static final Commands SOURCE = new Commands("", "SOUR:VOLT {volts};:SOUR:CURR {amps}", "OUTP 1", "OUTP 0",
            "SOUR:VOLT:PROT {limit}", "SOUR:VOLT:PROT?", "MEAS:VOLT?;CURR?;:OUTP?;:SYST:ERR?", "SYST:ERR?");

    /** For a sink: SOURce, INPut, MEASure and SYSTem of SCPI-1999 volume 2. */
    public static final Commands SINK = new Commands("", "SOUR:CURR {amps}", "INP 1", "INP 0", "SOUR:CURR:PROT {limit}",
            "SOUR:CURR:PROT?", "MEAS:VOLT?;CURR?;:INP?;:SYST:ERR?", "SYST:ERR?");

    /** The usual ones of a source or a sink. */
    public static Commands usual(boolean source) {
        return source ? SOURCE : SINK;
    }
}
