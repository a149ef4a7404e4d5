package rigwarden.run;

/**
 * One step so far.
 *
 * @param step index in the programme, from 0
 * @param sinceNanos when it began
 * @param account exact sums since then
 * @param point last point of the trapezoid
 * @param amps set point now, A
 * @param controlNanos when the set point was last looked at
 * @param ceilingNanos when the highest cell first met its ceiling; {@link Long#MAX_VALUE} before
 * @param window mean of the last second
 * @param still minute marks of a rest
 * @param carried what outlives the step
 */
record Progress(
        int step,
        long sinceNanos,
        Account account,
        Point point,
        double amps,
        long controlNanos,
        long ceilingNanos,
        Window window,
        Still still,
        Carried carried) {

    /**
     * What outlives a step.
     *
     * @param heartbeatProved whether the heartbeat stage was proved in this run
     * @param measuredAmpHours what the last discharge to the cut-off gave, Ah; 0 before
     * @param zeroKelvin by body: its probe over the room's at the start, before any current
     */
    record Carried(boolean heartbeatProved, double measuredAmpHours, double[] zeroKelvin) {
        static Carried fresh(double[] zeroKelvin) {
            return new Carried(false, 0, zeroKelvin);
        }

        Carried proved() {
            return new Carried(true, measuredAmpHours, zeroKelvin);
        }

        Carried measured(double ampHours) {
            return new Carried(heartbeatProved, ampHours, zeroKelvin);
        }
    }

    /** One end of a trapezoid. */
    record Point(long nanos, double amps, double watts, double volts) {}

    /** A mean over one second, then over the next. */
    record Window(long sinceNanos, double sum, int count, double mean) {
        static Window from(long nanos) {
            return new Window(nanos, 0, 0, Double.POSITIVE_INFINITY);
        }

        Window with(long nanos, double value) {
            double total = sum + value;
            int n = count + 1;
            return nanos - sinceNanos >= 1_000_000_000L
                    ? new Window(nanos, 0, 0, total / n)
                    : new Window(sinceNanos, total, n, mean);
        }
    }

    static Progress begin(int step, long nanos, Point point, Carried carried) {
        return new Progress(step, nanos, Account.EMPTY, point, 0, nanos, Long.MAX_VALUE, Window.from(nanos),
                Still.EMPTY, carried);
    }

    Progress with(Account account, Point point, Window window) {
        return new Progress(step, sinceNanos, account, point, amps, controlNanos, ceilingNanos, window, still,
                carried);
    }

    Progress ordering(double amps, long controlNanos, long ceilingNanos) {
        return new Progress(step, sinceNanos, account, point, amps, controlNanos, ceilingNanos, window, still,
                carried);
    }

    Progress with(Still still) {
        return new Progress(step, sinceNanos, account, point, amps, controlNanos, ceilingNanos, window, still,
                carried);
    }

    Progress with(Carried carried) {
        return new Progress(step, sinceNanos, account, point, amps, controlNanos, ceilingNanos, window, still,
                carried);
    }

    /** The same step goes on after a pause. */
    Progress resumed(long nanos) {
        return new Progress(step, sinceNanos, account, point, 0, nanos, ceilingNanos, Window.from(nanos), still,
                carried);
    }
}
