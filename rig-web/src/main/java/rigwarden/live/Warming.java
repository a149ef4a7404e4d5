package rigwarden.live;

import java.util.ArrayDeque;
import java.util.Comparator;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.stat.regression.SimpleRegression;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Trips;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/**
 * Looks ahead to the end of the running step with two clocks: what carries the current follows within minutes, the cells' bodies within
 * hours. How long exactly is not asked of the data: a rise that has lasted a short part of an hour does not tell, and one exponential
 * through its beginning is confidently wrong. Both clocks are given a range instead, and the forecast an interval.
 */
final class Warming {
    private static final long EVERY_NANOS = 30_000_000_000L;
    private static final int MARKS = 21;
    private static final int FAST_MARKS = 11;
    private static final double NANOS_PER_HOUR = 3600e9;
    /** Time constant of a body, h: one to four for large cells, alone or packed (common practice; no source). */
    private static final double SHORT_HOURS = 1;
    private static final double LIKELY_HOURS = 2.3;
    private static final double LONG_HOURS = 4;
    /** The same of a joint over its cell, and of shunt and contactor over the room, h (assumption of the pack model). */
    private static final double FAST_HOURS = 0.08;
    private static final double SLOW_HOURS = 0.25;
    /** A reading's own noise and the ends of a span of marks, K: no forecast is better than this. */
    private static final double LEAST_K = 0.5;

    private record Mark(long nanos, double[] celsius) {}

    private final List<Channel> places;
    private final Channel[] reference;
    private final Trips trips;
    private final Deque<Mark> marks = new ArrayDeque<>();

    Warming(Rig rig) {
        trips = rig.guards().trips();
        places = rig.channels().stream()
                .filter(c -> c.role() == Role.BODY || c.role() == Role.ROOM || c.role().warmsByCurrent()).toList();
        reference = new Channel[places.size()];
        Channel room = rig.channel(Role.ROOM);
        for (int i = 0; i < reference.length; i++) {
            Channel place = places.get(i);
            reference[i] = place.role().joint()
                    ? rig.channels(Role.BODY).stream().filter(b -> b.cell() == place.cell()).findFirst().orElse(room)
                    : room;
        }
    }

    /** A step begins or ends: what was seen before says nothing of it. */
    void forget() {
        marks.clear();
    }

    void take(Scan scan) {
        if (!marks.isEmpty() && scan.nanos() - marks.getLast().nanos() < EVERY_NANOS) {
            return;
        }
        marks.addLast(new Mark(scan.nanos(), places.stream().mapToDouble(c -> value(scan, c)).toArray()));
        if (marks.size() > MARKS) {
            marks.removeFirst();
        }
    }

    private static double value(Scan scan, Channel channel) {
        return scan.readings().get(channel.index()) instanceof Reading.Valid valid ? valid.value() : Double.NaN;
    }

    /**
     * The place that will come nearest to its limit, or go farthest beyond it.
     *
     * @param charging whether the cells are charged, which has its own limit
     * @param growth the heating's factor from now to the end of the step, from 1: a load of constant power draws more as the cells empty
     * @param leftNanos until the end of the step
     * @return none before the current has flowed for ten minutes, or where the places cannot be read
     */
    Optional<Ahead> nearest(boolean charging, double growth, long leftNanos) {
        if (marks.size() < MARKS) {
            return Optional.empty();
        }
        double hours = leftNanos / NANOS_PER_HOUR;
        return places.stream().filter(c -> c.role() != Role.ROOM)
                .map(c -> ahead(c, charging, growth, hours, leftNanos)).flatMap(Optional::stream)
                .min(Comparator.comparingDouble(Ahead::margin));
    }

    private Optional<Ahead> ahead(Channel where, boolean charging, double growth, double hours, long leftNanos) {
        int place = places.indexOf(where);
        int base = places.indexOf(reference[place]);
        double u = where.offsetU();
        Span below = new Span(base, -1);
        double end;
        double low;
        double high;
        if (where.role() == Role.BODY) {
            Span body = new Span(place, -1);
            end = body.after(hours, LIKELY_HOURS, (1 + growth) / 2);
            low = body.after(hours, SHORT_HOURS, 1);
            high = body.after(hours, LONG_HOURS, growth);
        } else {
            boolean room = reference[place].role() == Role.ROOM;
            Span over = new Span(place, base);
            end = (room ? below.last() : below.after(hours, LIKELY_HOURS, (1 + growth) / 2)) + over.after(hours, FAST_HOURS, 1) * growth;
            low = (room ? below.last() : below.after(hours, SHORT_HOURS, 1)) + Math.min(over.last(), over.after(hours, FAST_HOURS, 1));
            high = (room ? below.last() : below.after(hours, LONG_HOURS, growth)) + Math.max(over.last(), over.after(hours, SLOW_HOURS, 1)) * growth;
        }
        double room = marks.getLast().celsius()[places.indexOf(roomOf())];
        double limit = where.role() == Role.BODY
                ? charging ? trips.chargingHighCelsius() : trips.dischargingHighCelsius()
                : Math.min(trips.jointCelsius(), room + trips.jointOverRoomKelvin());
        return Double.isNaN(end) || Double.isNaN(limit)
                ? Optional.empty()
                : Optional.of(new Ahead(where, end, Math.min(low, end) - LEAST_K, Math.max(high, end) + LEAST_K, limit - u, leftNanos));
    }

    private Channel roomOf() {
        return places.stream().filter(c -> c.role() == Role.ROOM).findFirst().orElseThrow();
    }

    /** One place, or its warmth over another, over the marks. */
    private final class Span {
        private final double last;
        private final double perHour;
        private final double fastPerHour;

        Span(int place, int base) {
            last = at(marks.getLast(), place, base);
            perHour = slope(place, base, MARKS);
            fastPerHour = slope(place, base, FAST_MARKS);
        }

        double last() {
            return last;
        }

        /** So many hours on, when it settles with a time constant and its rise is so many times what it is now. */
        double after(double hours, double constantHours, double factor) {
            double rate = constantHours < SHORT_HOURS ? fastPerHour : perHour;
            return last + rate * factor * constantHours * -Math.expm1(-hours / constantHours);
        }

        private double at(Mark mark, int place, int base) {
            return mark.celsius()[place] - (base < 0 ? 0 : mark.celsius()[base]);
        }

        /** Least squares over the newest marks, K/h. */
        private double slope(int place, int base, int newest) {
            SimpleRegression line = new SimpleRegression();
            Iterator<Mark> backwards = marks.descendingIterator();
            for (int i = 0; i < newest && backwards.hasNext(); i++) {
                Mark mark = backwards.next();
                double celsius = at(mark, place, base);
                if (!Double.isNaN(celsius)) {
                    line.addData((mark.nanos() - marks.getLast().nanos()) / NANOS_PER_HOUR, celsius);
                }
            }
            return line.getSlope();
        }
    }
}
