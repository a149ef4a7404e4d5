package rigwarden.rig;

/**
 * A source or sink that takes orders over a serial line.
 *
 * @param port name of the serial port
 * @param baud bits a second
 * @param maxAmps continuous rating, A
 * @param maxVolts highest voltage, V
 * @param minVolts lowest voltage at which the rated current still flows, V
 * @param pollNanos time between two polls
 * @param ampsU expanded relative uncertainty of its own current figure
 * @param voltsU expanded relative uncertainty of its own voltage figure
 * @param speech how orders are said to it
 */
public record Instrument(
        String port,
        int baud,
        double maxAmps,
        double maxVolts,
        double minVolts,
        long pollNanos,
        double ampsU,
        double voltsU,
        Speech speech) {}
