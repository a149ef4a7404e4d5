package rigwarden.live;

import java.util.Locale;
import java.util.OptionalDouble;
import rigwarden.program.Step;

/** What will end each kind of step, in words, and when, about. */
final class Endings {
    private static final double LEAST_AMPS = 0.05;

    private Endings() {}

    /** Switched tells whether the step works through a device that does as it likes, and so may end it by itself. */
    static Forecast of(Step step, boolean switched, Doing doing, Level level, Falling falling, long nanos) {
        return switch (step) {
            case Step.Charge s -> charge(s, switched, doing, level, falling);
            case Step.Discharge s -> discharge(s, s.cutOffVolts(), switched, doing, level);
            case Step.HeatRun s -> heatRun(s, switched, doing, level, nanos);
            case Step.Pulse s -> Forecast.about("its two currents for their times",
                    (s.baseNanos() + s.pulseNanos()) / 3600e9, "as the programme says");
            case Step.Balance s -> Forecast.open(say("cells alike at %.2f V: the current small for %.0f min, or the first"
                    + " cell there", s.ceilingVolts(), s.holdNanos() / 60e9), "it waits for the cells");
            case Step.ProveProtection s -> Forecast.open(say("the battery's protection opening, or the first cell at %.2f V",
                    s.limitVolts()), "it waits for the protection");
            case Step.ProveStop _ -> Forecast.open("one element alone, which must stop the current", "it waits for the device to start");
            case Step.Recover s -> Forecast.open(say("the lowest cell at %.2f V", s.untilVolts()), "it waits for the cells");
            case Step.Rest s -> rest(s, doing, nanos);
            case Step.Park s -> park(s, doing, level);
        };
    }

    private static Forecast charge(Step.Charge step, boolean switched, Doing doing, Level level, Falling falling) {
        String ends = switched
                ? say("the charger itself (full below %.1f A), or before that the first cell at %.2f V: then not quite full",
                        step.taperAmps(), step.ceilingVolts())
                : say("full, when the current has fallen to %.1f A with the highest cell at %.2f V",
                        step.taperAmps(), step.ceilingVolts());
        OptionalDouble falls = falling.hoursTo(step.taperAmps());
        if (falls.isPresent()) {
            return Forecast.about(ends, falls.getAsDouble(), "by how fast the current falls now");
        }
        double amps = Math.max(Math.abs(doing.setAmps()), step.amps());
        String basis = level.known()
                ? say("%.1f Ah to go at %.1f A, then the taper", level.toFull(), amps)
                : "how full the cells were at the start is not known; half is assumed";
        return Forecast.about(ends, Outlook.hours(step, level), basis);
    }

    private static Forecast discharge(Step.Flowing step, double cutOffVolts, boolean switched, Doing doing, Level level) {
        String ends = say("the first cell at %.2f V", cutOffVolts) + (switched ? ", or the load giving up" : "");
        double amps = Math.abs(doing.setAmps()) > LEAST_AMPS ? Math.abs(doing.setAmps()) : step.amps();
        if (level.toEmpty() <= 0) {
            return Forecast.open(ends, "it has given more than was counted on");
        }
        String stands = level.measured() ? "by the capacity measured in this run" : "by the rated capacity";
        String basis = say("%.1f Ah to go at %.1f A, %s", level.toEmpty(), amps, stands);
        return Forecast.about(ends, level.toEmpty() / amps, level.known() ? basis : basis + ", if they began full");
    }

    private static Forecast heatRun(Step.HeatRun step, boolean switched, Doing doing, Level level, long nanos) {
        Forecast byCharge = discharge(step, step.cutOffVolts(), switched, doing, level);
        long most = Math.max(0, doing.stepNanos() + step.atMostNanos() - nanos);
        String ends = byCharge.ends() + say(", or %.0f min", step.atMostNanos() / 60e9);
        return byCharge.leftNanos().orElse(Long.MAX_VALUE) < most
                ? new Forecast(ends, byCharge.leftNanos(), byCharge.basis())
                : Forecast.about(ends, most / 3600e9, "its time is over first");
    }

    private static Forecast rest(Step.Rest step, Doing doing, long nanos) {
        double most = step.atMostNanos() / 60e9;
        long left = doing.stepNanos() + step.atLeastNanos() - nanos;
        String ends = say("cells settled and at the room's temperature, after %.0f min at the latest", most);
        return left > 0
                ? Forecast.about(ends, left / 3600e9, say("its least time is %.0f min", step.atLeastNanos() / 60e9))
                : Forecast.about(ends, Math.max(0, doing.stepNanos() + step.atMostNanos() - nanos) / 3600e9,
                        "its least time is over; it waits for the cells, at most so long");
    }

    private static Forecast park(Step.Park step, Doing doing, Level level) {
        double goal = step.share() * level.capacityAmpHours();
        String ends = say("%.1f Ah put in (%.0f %% of the capacity)", goal, 100 * step.share());
        double amps = Math.abs(doing.setAmps()) > LEAST_AMPS ? Math.abs(doing.setAmps()) : step.amps();
        double toGo = Math.max(0, goal - level.stepAmpHours());
        return Forecast.about(ends, toGo / amps, say("%.1f Ah to go at %.1f A", toGo, amps));
    }

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
