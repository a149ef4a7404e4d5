package rigwarden.elsewhere;

import rigwarden.run.Account;

/** The sums of a step of a log, by the trapezoid from its own first row to its own last. */
final class StepSums {
    private Account charge = Account.EMPTY;
    private Account energy = Account.EMPTY;
    private double lastAmps = Double.NaN;
    private long ampsNanos;
    private double lastWatts = Double.NaN;
    private double lastVolts = Double.NaN;
    private long wattsNanos;

    /** The next row: current, and the sum of the cells' voltages; NaN where there is none, and the row before counts on. */
    void take(long nanos, double amps, double volts) {
        if (Double.isNaN(amps)) {
            return;
        }
        if (!Double.isNaN(lastAmps)) {
            charge = charge.plus(Math.max(0, nanos - ampsNanos), (amps + lastAmps) / 2, 0, 0);
        }
        lastAmps = amps;
        ampsNanos = nanos;
        if (Double.isNaN(volts)) {
            return;
        }
        if (!Double.isNaN(lastWatts)) {
            energy = energy.plus(Math.max(0, nanos - wattsNanos), 0, (amps * volts + lastWatts) / 2, (volts + lastVolts) / 2);
        }
        lastWatts = amps * volts;
        lastVolts = volts;
        wattsNanos = nanos;
    }

    Account account() {
        return new Account(charge.nanos(), charge.inNanoAmpSeconds(), charge.outNanoAmpSeconds(), energy.inMicroWattSeconds(),
                energy.outMicroWattSeconds(), energy.microVoltSeconds());
    }
}
