package rigwarden.run;

import java.util.Set;
import java.util.TreeSet;

/**
 * One step so far.
 *
 * @param step index in the programme, from 0
 * @param sinceNanos when it began, later by as long as it has waited for its cells
 * @param account exact sums since then
 * @param point last point of the trapezoid
 * @param amps set point now, A
 * @param controlNanos when the set point was last looked at
 * @param ceilingNanos when the highest cell first met its ceiling, in a balance since when the current has been small there; {@link Long#MAX_VALUE} before
 * @param flowedNanos when more than 1 A flowed last; {@link Long#MIN_VALUE} before any in this path
 * @param window lowest cell, mean of the last second
 * @param top highest cell, mean of the last second
 * @param still minute marks of a rest
 * @param pausedAmpHours account at its last pause, Ah
 * @param idle pauses in a row between which next to nothing was moved
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
        long flowedNanos,
        Window window,
        Window top,
        Still still,
        double pausedAmpHours,
        int idle,
        Carried carried) {

    /**
     * What outlives a step.
     *
     * @param heartbeats how often the heartbeat stage has let go in this run, each time from the other level
     * @param shown switched sources that have shown their no-load voltage in this run, by place in the rig's list
     * @param measuredAmpHours what the last discharge to the cut-off gave, Ah; 0 before
     * @param zeroKelvin by body: its probe over the room's at the start, before any current
     * @param before what the step that runs gave before it was broken off, in another run; nothing in every other step
     */
    record Carried(int heartbeats, Set<Integer> shown, double measuredAmpHours, double[] zeroKelvin, Account before) {
        static Carried fresh(double[] zeroKelvin) {
            return new Carried(0, Set.of(), 0, zeroKelvin, Account.EMPTY);
        }

        Carried proved() {
            return new Carried(heartbeats + 1, shown, measuredAmpHours, zeroKelvin, before);
        }

        /** For the step that comes next. */
        Carried onward() {
            return new Carried(heartbeats, shown, measuredAmpHours, zeroKelvin, Account.EMPTY);
        }

        Carried showed(int source) {
            Set<Integer> more = new TreeSet<>(shown);
            more.add(source);
            return new Carried(heartbeats, Set.copyOf(more), measuredAmpHours, zeroKelvin, before);
        }

        Carried measured(double ampHours) {
            return new Carried(heartbeats, shown, ampHours, zeroKelvin, before);
        }
    }

    /** One end of a trapezoid. */
    record Point(long nanos, double amps, double watts, double volts) {}

    /** A mean over one second, then over the next; before the first, no comparison with it holds. */
    record Window(long sinceNanos, double sum, int count, double mean) {
        static Window from(long nanos) {
            return new Window(nanos, 0, 0, Double.NaN);
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
        return new Progress(step, nanos, Account.EMPTY, point, 0, nanos, Long.MAX_VALUE, Long.MIN_VALUE,
                Window.from(nanos), Window.from(nanos), Still.EMPTY, 0, 0, carried);
    }

    /** The step that was broken off, with the time that it has spent and what outlived the steps before it. */
    static Progress pickedUp(PickUp from, long nanos, Point point) {
        Progress begun = begin(from.step() - 1, nanos, point, from.carried());
        return new Progress(begun.step, nanos - from.spentNanos(), Account.EMPTY, point, 0, nanos,
                from.topNanos() < 0 ? Long.MAX_VALUE : nanos - from.topNanos(), Long.MIN_VALUE, begun.window, begun.top,
                Still.EMPTY, 0, 0, begun.carried);
    }

    /** Charge and energy of the whole step, what it gave before it was broken off included. */
    Account whole() {
        return account.plus(carried.before());
    }

    /** Whether current has flowed in this path. */
    boolean flowed() {
        return flowedNanos != Long.MIN_VALUE;
    }

    Progress accounted(Account sums, Point now, long flowed, Window low, Window high) {
        return new Progress(step, sinceNanos, sums, now, amps, controlNanos, ceilingNanos, flowed, low, high, still,
                pausedAmpHours, idle, carried);
    }

    Progress ordering(double order, long control, long ceiling) {
        return new Progress(step, sinceNanos, account, point, order, control, ceiling, flowedNanos, window, top, still,
                pausedAmpHours, idle, carried);
    }

    Progress with(Still marks) {
        return new Progress(step, sinceNanos, account, point, amps, controlNanos, ceilingNanos, flowedNanos, window, top,
                marks, pausedAmpHours, idle, carried);
    }

    Progress with(Carried more) {
        return new Progress(step, sinceNanos, account, point, amps, controlNanos, ceilingNanos, flowedNanos, window, top,
                still, pausedAmpHours, idle, more);
    }

    /** Time in which the step could not do anything does not count against it. */
    Progress waited(long nanos) {
        return new Progress(step, sinceNanos + nanos, account, point, amps, controlNanos, ceilingNanos, flowedNanos, window,
                top, still, pausedAmpHours, idle, carried);
    }

    /** The same step goes on after a pause. */
    Progress resumed(long nanos) {
        return new Progress(step, sinceNanos, account, point, 0, nanos, ceilingNanos, Long.MIN_VALUE, Window.from(nanos),
                Window.from(nanos), still, pausedAmpHours, idle, carried);
    }

    /** The step pauses; less than this since the last pause, Ah, is no progress. */
    Progress paused(double leastAmpHours) {
        boolean moved = Math.abs(account.ampHours() - pausedAmpHours) >= leastAmpHours;
        return new Progress(step, sinceNanos, account, point, amps, controlNanos, ceilingNanos, flowedNanos, window, top, still,
                account.ampHours(), moved ? 0 : idle + 1, carried);
    }
}
