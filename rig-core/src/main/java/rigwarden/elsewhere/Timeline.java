package rigwarden.elsewhere;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.function.Consumer;

/**
 * Puts lines on one time. A line whose time lies before that of the line before waits for the next one: where that goes on,
 * it was astray and is left out; else the clock was set.
 */
final class Timeline {
    /**
     * A line with its place in time.
     *
     * @param nanos in one time for the whole log; goes back only where the log's own clock did within a step
     */
    record Timed(LogLine line, long nanos) {}

    private static final double LEAST_SECONDS = 1e-3;

    private final Consumer<Timed> on;
    private final Consumer<Remark> said;
    private LogLine last;
    private LogLine waiting;
    private double base;
    private double spacing = 1;

    Timeline(Consumer<Timed> on, Consumer<Remark> said) {
        this.on = on;
        this.said = said;
    }

    void take(LogLine line) {
        if (waiting != null) {
            LogLine before = waiting;
            waiting = null;
            if (line.seconds() > last.seconds()) {
                astray(before);
            } else {
                say(before, Fault.TIME_WENT_BACK, "its time is %s s, and that of the line before %s s: a clock that was set, or a second one");
                accept(before);
            }
        }
        if (last == null || line.seconds() > last.seconds()) {
            accept(line);
        } else if (line.seconds() == last.seconds()) {
            say(line, Fault.TIME_REPEATED, "its time, %s s, is that of the line before, %s s");
        } else if (!line.step().equals(last.step())) {
            say(line, Fault.TIME_BEGAN_ANEW, "its time is %s s after %s s, at a new step");
            base += last.seconds() + spacing - line.seconds();
            accept(line);
        } else {
            waiting = line;
        }
    }

    private void accept(LogLine line) {
        if (last != null && line.seconds() > last.seconds()) {
            spacing = Math.max(LEAST_SECONDS, line.seconds() - last.seconds());
        }
        last = line;
        on.accept(new Timed(line, Math.round((line.seconds() + base) * 1e9)));
    }

    private void astray(LogLine line) {
        say(line, Fault.TIME_ASTRAY, "its time is %s s, and that of the line before %s s");
    }

    /** No more lines come. */
    void end() {
        if (waiting != null) {
            astray(waiting);
            waiting = null;
        }
    }

    private void say(LogLine line, Fault fault, String words) {
        said.accept(new Remark(line.line(), fault, String.format(Locale.ROOT, words, plain(line.seconds()), plain(last.seconds()))));
    }

    /** To a microsecond, without the zeros behind it. */
    private static String plain(double seconds) {
        return BigDecimal.valueOf(seconds).setScale(6, RoundingMode.HALF_UP).stripTrailingZeros().toPlainString();
    }
}
