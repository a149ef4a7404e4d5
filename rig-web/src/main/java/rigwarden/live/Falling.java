package rigwarden.live;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.OptionalDouble;

/** How fast an ordered current falls near the end of a charge: marks of the last minutes, an exponential through them. */
final class Falling {
    private static final long EVERY_NANOS = 30_000_000_000L;
    private static final int MARKS = 12;

    private record Mark(long nanos, double amps) {}

    private final Deque<Mark> marks = new ArrayDeque<>();

    void forget() {
        marks.clear();
    }

    void take(long nanos, double amps) {
        if (!marks.isEmpty() && nanos - marks.getLast().nanos() < EVERY_NANOS) {
            return;
        }
        marks.addLast(new Mark(nanos, amps));
        if (marks.size() > MARKS) {
            marks.removeFirst();
        }
    }

    /** Hours until the current has fallen to this; none while it does not fall. */
    OptionalDouble hoursTo(double amps) {
        if (marks.size() < 3) {
            return OptionalDouble.empty();
        }
        Mark first = marks.getFirst();
        Mark last = marks.getLast();
        if (!(last.amps() < 0.98 * first.amps()) || last.amps() <= 0) {
            return OptionalDouble.empty();
        }
        double rate = Math.log(first.amps() / last.amps()) / ((last.nanos() - first.nanos()) / 3600e9);
        return OptionalDouble.of(Math.max(0, Math.log(last.amps() / amps) / rate));
    }
}
