package rigwarden.live;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import rigwarden.findings.Heat;
import rigwarden.findings.Reach;
import rigwarden.findings.Reversible;
import rigwarden.findings.trace.Numbers;
import rigwarden.findings.trace.Warmth;
import rigwarden.findings.trace.WarmthWatch;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Trips;
import rigwarden.warden.Scan;

/**
 * Looks ahead to the end of the running step, by the forecast that the findings make: what carries the current follows within
 * minutes, the cells' bodies within hours, and how long exactly is not asked of the beginning of a rise.
 */
final class Warming {
    /** A forecast costs the board a part of a second, and hours change little in half a minute. */
    private static final long EVERY_NANOS = 30_000_000_000L;
    /** Before that nothing has risen that tells anything. */
    private static final long LEAST_NANOS = 600_000_000_000L;
    private static final double NANOS_PER_HOUR = 3600e9;

    private final Trips trips;
    private final Channel room;
    private final Numbers now;
    private final WarmthWatch watch;
    private double roomCelsius = Double.NaN;
    private double square;
    private boolean begun;
    private long sinceNanos;
    private Optional<Ahead> told = Optional.empty();
    private long toldNanos = Long.MIN_VALUE;

    Warming(Rig rig) {
        trips = rig.guards().trips();
        room = rig.channel(Role.ROOM);
        now = new Numbers(rig);
        watch = new WarmthWatch(now.warm());
    }

    /** A step begins or ends: what was seen before says nothing of it. */
    void forget() {
        begun = false;
        told = Optional.empty();
        toldNanos = Long.MIN_VALUE;
    }

    void take(Scan scan) {
        now.read(scan);
        roomCelsius = now.celsius[now.warm().indexOf(room)];
        square = Double.isNaN(now.amps) ? square : now.amps * now.amps;
        if (begun) {
            watch.take(now);
        } else {
            begun = true;
            sinceNanos = now.nanos;
            watch.begin(now);
        }
    }

    /**
     * The place that will come nearest to its limit, or go farthest beyond it.
     *
     * @param charging whether the cells are charged, which has its own limit
     * @param growth the heating's factor from now to the end of the step, from 1: a load of constant power draws more as the cells empty
     * @param leftNanos until the end of the step
     * @param reversible the heat that comes with the state of charge, where that was known when the step began
     * @return none before the current has flowed for ten minutes, or where the places cannot be read
     */
    Optional<Ahead> nearest(boolean charging, double growth, long leftNanos, Optional<Reversible> reversible) {
        if (!begun || now.nanos - sinceNanos < LEAST_NANOS) {
            return Optional.empty();
        }
        if (toldNanos == Long.MIN_VALUE || now.nanos - toldNanos >= EVERY_NANOS) {
            double endHours = (now.nanos - sinceNanos + leftNanos) / NANOS_PER_HOUR;
            double mean = square * (1 + growth) / 2;
            List<Warmth> seen = watch.end();
            told = Heat.ahead(seen, endHours, mean, reversible).stream()
                    .map(place -> ahead(place, charging, leftNanos)).flatMap(Optional::stream).min(Comparator.comparingDouble(Ahead::margin))
                    .map(one -> reaching(one, Reach.of(seen, one.where(), one.limit(), endHours, mean, reversible)));
            toldNanos = now.nanos;
        }
        return told.map(one -> one.after(now.nanos - toldNanos, leftNanos));
    }

    private static Ahead reaching(Ahead one, Reach reach) {
        return new Ahead(one.where(), one.celsius(), one.low(), one.high(), one.limit(), one.leftNanos(), nanos(reach.earliestHours()),
                nanos(reach.latestHours()));
    }

    private static OptionalLong nanos(OptionalDouble hours) {
        return hours.isPresent() ? OptionalLong.of(Math.round(hours.getAsDouble() * NANOS_PER_HOUR)) : OptionalLong.empty();
    }

    /** Readings are held against the reading at which the warden trips: the probe's own error is in that. When it gets there is not asked yet. */
    private Optional<Ahead> ahead(Heat.Ahead place, boolean charging, long leftNanos) {
        double limit = place.where().role() == Role.BODY
                ? charging ? trips.chargingHighCelsius() : trips.dischargingHighCelsius()
                : Math.min(trips.jointCelsius(), roomCelsius + trips.jointOverRoomKelvin());
        return Double.isNaN(limit) || Double.isNaN(place.celsius()) ? Optional.empty()
                : Optional.of(new Ahead(place.where(), place.celsius(), place.celsius() - place.readKelvin(), place.celsius() + place.readKelvin(),
                        limit - place.where().offsetU(), leftNanos, OptionalLong.empty(), OptionalLong.empty()));
    }
}
