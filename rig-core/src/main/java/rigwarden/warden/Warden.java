package rigwarden.warden;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Channel;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/**
 * Judges every scan, and alone can grant energy. Nothing switches it off; a rig file may only tighten it. Pure: what it
 * knows of the past is in the {@link Guard} that it is handed.
 */
public final class Warden {
    private static final long CLEAR_QUIET_NANOS = 2_000_000_000L;
    private static final long CLEAR_WARM_NANOS = 300_000_000_000L;
    private static final double CLEAR_BELOW_K = 5;

    private final Rig rig;
    private final Rule[] rules;
    private final Places places;
    private final GrantRules grants;

    /** A warden with every rule there is. */
    public Warden(Rig rig) {
        this(rig, Rules.of(rig));
    }

    /** For the leave-one-out proof: a warden with a shorter list. */
    Warden(Rig rig, List<Rule> rules) {
        this.rig = rig;
        this.rules = rules.toArray(Rule[]::new);
        this.places = new Places(rig);
        this.grants = new GrantRules(places);
    }

    /** The guard before the first scan. */
    public Guard fresh(long nanos) {
        return new Guard.Watching(Memory.blank(rules.length, rig, nanos));
    }

    /**
     * Judges a scan.
     *
     * @param guard what the last judgement, or grant, left
     * @param scan the scan
     * @param inForce the orders under which it was taken
     * @param inbox what people want
     */
    public Judged judge(Guard guard, Scan scan, Orders inForce, Inbox inbox) {
        Memory before = guard.memory();
        Memory seen = seen(before, scan, inForce);
        View view = new View(places, scan, seen);
        long[] since = before.since();
        boolean[] said = before.said();
        boolean breached = false;
        List<Trip> trips = List.of();
        List<Warning> warnings = List.of();
        for (int i = 0; i < rules.length; i++) {
            Rule rule = rules[i];
            Breach breach = rule.check().look(view);
            if (!breach.found()) {
                if (since[i] != Memory.NEVER) {
                    since = with(since, before.since(), i, Memory.NEVER);
                    said = with(said, before.said(), i, false);
                }
                continue;
            }
            if (since[i] == Memory.NEVER) {
                since = with(since, before.since(), i, scan.nanos());
            }
            breached |= rule.severity() != Severity.WARNS;
            if (scan.nanos() - since[i] < rule.holdNanos()) {
                continue;
            }
            Channel where = places.of(breach.channel());
            if (rule.severity() == Severity.WARNS) {
                if (!said[i]) {
                    said = with(said, before.said(), i, true);
                    warnings = added(warnings, new Warning(rule, where, breach.value(), breach.limit()));
                }
            } else {
                trips = added(trips,
                        new Trip(rule, where, breach.value(), breach.limit(), since[i], scan.number()));
            }
        }
        boolean started = (seen.started() || inbox.has(Request.START) && view.on(places.arm)) && !inbox.stop();
        Memory memory = new Memory(scan, before.last(), since, said, seen.inForce(), seen.trail(),
                started && trips.isEmpty() && guard instanceof Guard.Watching,
                breached ? scan.nanos() : before.breachNanos());
        return switch (guard) {
            case Guard.Watching _ -> watched(memory, trips, warnings, scan, inbox);
            case Guard.Tripped tripped -> stillTripped(tripped, memory, trips, view, inbox);
        };
    }

    private Memory seen(Memory before, Scan scan, Orders inForce) {
        double room = scan.readings().get(places.room.index()) instanceof Reading.Valid valid ? valid.value() : 0;
        InForce now = before.inForce().then(inForce, before.last().nanos(), room);
        Trail trail = before.trail().due(scan.nanos())
                ? before.trail().with(scan, places.temperatures)
                : before.trail();
        return new Memory(before.last(), before.earlier(), before.since(), before.said(), now, trail,
                before.started(), before.breachNanos());
    }

    private Judged watched(Memory memory, List<Trip> trips, List<Warning> warnings, Scan scan, Inbox inbox) {
        if (!trips.isEmpty()) {
            Trip first = firstOf(trips);
            List<Trip> also = trips.stream().filter(t -> t != first).toList();
            return new Judged(new Guard.Tripped(first, also, memory), new Verdict.Unhealthy(first, also));
        }
        Guard guard = new Guard.Watching(memory);
        if (inbox.stop()) {
            return new Judged(guard, new Verdict.Stopped(warnings));
        }
        double charge = Math.min(chargeCeiling(scan), memory.inForce().chargeCeilingAmps());
        return new Judged(guard, new Verdict.Healthy(
                new Lease(scan.number(), charge, rig.dischargeCeilingAmps()), warnings));
    }

    /** The breach that began first is the cause; of several at once the weightier, then the lower number. */
    private static Trip firstOf(List<Trip> trips) {
        Trip first = trips.getFirst();
        for (Trip trip : trips) {
            boolean weightier = trip.rule().severity().compareTo(first.rule().severity()) > 0;
            if (trip.sinceNanos() < first.sinceNanos() || trip.sinceNanos() == first.sinceNanos() && weightier) {
                first = trip;
            }
        }
        return first;
    }

    private double chargeCeiling(Scan scan) {
        double coldest = Double.MAX_VALUE;
        for (Channel body : places.bodies) {
            if (scan.readings().get(body.index()) instanceof Reading.Valid valid) {
                coldest = Math.min(coldest, valid.value() - body.uncertainty(valid.value()));
            }
        }
        double byTemperature = coldest == Double.MAX_VALUE ? 0 : Envelope.chargeCeilingC(coldest);
        return Math.min(rig.chargeCeilingAmps(), byTemperature * rig.cells().ratedAmpHours());
    }

    private Judged stillTripped(Guard.Tripped tripped, Memory memory, List<Trip> trips, View view, Inbox inbox) {
        List<Trip> also = tripped.also();
        for (Trip trip : trips) {
            boolean known = trip.rule().equals(tripped.first().rule())
                    || also.stream().anyMatch(t -> t.rule().equals(trip.rule()));
            if (!known) {
                also = added(also, trip);
            }
        }
        if (inbox.has(Request.CLEAR) && !inbox.stop() && clearable(tripped.first(), also, memory, view)) {
            Guard guard = new Guard.Watching(memory);
            return new Judged(guard, new Verdict.Stopped(List.of()));
        }
        return new Judged(new Guard.Tripped(tripped.first(), also, memory),
                new Verdict.Unhealthy(tripped.first(), also));
    }

    private boolean clearable(Trip first, List<Trip> also, Memory memory, View view) {
        boolean needsProof = first.rule().severity() == Severity.TRIPS_UNTIL_PROVED
                || also.stream().anyMatch(t -> t.rule().severity() == Severity.TRIPS_UNTIL_PROVED);
        if (needsProof || !view.on(places.arm)) {
            return false;
        }
        boolean warm = first.where().role().quantity() == Role.BODY.quantity();
        long quiet = view.nanos() - memory.breachNanos();
        boolean cooled = !warm
                || first.value() < first.limit()
                || view.valid(first.where()) && view.value(first.where()) <= first.limit() - CLEAR_BELOW_K;
        return cooled && quiet >= (warm ? CLEAR_WARM_NANOS : CLEAR_QUIET_NANOS);
    }

    /**
     * Grants a wish or turns it into Off.
     *
     * @param guard what the judgement of this scan left
     * @param verdict the verdict on this scan
     * @param scan this scan
     * @param wish what the machine would like
     */
    public Granted grant(Guard guard, Verdict verdict, Scan scan, Wish wish) {
        return switch (verdict) {
            case Verdict.Unhealthy _ -> new Granted(Orders.OFF_NOW, guard);
            case Verdict.Stopped _ -> new Granted(Orders.OFF_NOW, guard);
            case Verdict.Healthy healthy -> switch (wish) {
                case Wish.Nothing _ -> new Granted(Orders.OFF, guard);
                case Wish.Path path -> grants.grant(guard, healthy.lease(), scan, path);
            };
        };
    }

    private static long[] with(long[] now, long[] before, int index, long value) {
        long[] changed = now == before ? now.clone() : now;
        changed[index] = value;
        return changed;
    }

    private static boolean[] with(boolean[] now, boolean[] before, int index, boolean value) {
        boolean[] changed = now == before ? now.clone() : now;
        changed[index] = value;
        return changed;
    }

    private static <T> List<T> added(List<T> list, T element) {
        List<T> longer = new ArrayList<>(list);
        longer.add(element);
        return List.copyOf(longer);
    }
}
