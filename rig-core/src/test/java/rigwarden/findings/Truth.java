package rigwarden.findings;

import java.util.List;
import java.util.Optional;
import rigwarden.findings.trace.Warmth;

/**
 * What was true of a step of a model night that was opened.
 *
 * @param ampHours through the cells' terminals, positive into them
 * @param ohms between each cell's taps after 0.1, 1 and 10 s, by delay and cell
 * @param celsius of each body at the end
 * @param barCelsius of each bar
 * @param early what was kept of the warmth when a part of the step was over
 * @param hours how long it took
 * @param squareAmps mean of the current's square in the part that was still to come, A²
 * @param walk at that early moment; of a step that nobody looked at, none
 */
record Truth(double ampHours, double[][] ohms, double[] celsius, double[] barCelsius, List<Warmth> early, double hours, double squareAmps,
        Optional<Walk> walk) {
    /** Of a step of which nothing but the charge is asked. */
    static Truth of(double ampHours) {
        return new Truth(ampHours, new double[0][], new double[0], new double[0], List.of(), 0, 0, Optional.empty());
    }

    /**
     * What a hand meter would have met between the studs of each bar.
     *
     * @param volts truly there, by bar
     * @param amps that truly flowed
     * @param readAmps in that scan
     */
    record Walk(double[] volts, double amps, double readAmps) {}
}
