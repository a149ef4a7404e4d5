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
    private final Rig rig;
    private final Rule[] rules;
    private final Places places;
    private final GrantRules grants;
    private final double chargeAmps;
    private final double dischargeAmps;
    private final int[][] reads;

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
        this.chargeAmps = rig.chargeCeilingAmps();
        this.dischargeAmps = rig.dischargeCeilingAmps();
        this.reads = rules.stream()
                .map(rule -> rig.channels().stream()
                        .filter(c -> rule.reads().contains(c.role()))
                        .mapToInt(Channel::index)
                        .toArray())
                .toArray(int[][]::new);
    }

    /** The guard before the first scan of a run that begins anew. */
    public Guard fresh(long nanos) {
        return fresh(nanos, Swing.NONE);
    }

    /** The guard before the first scan of a run that goes on where another had counted so much. */
    public Guard fresh(long nanos, Swing before) {
        return new Guard.Watching(Memory.blank(rules.length, rig, nanos, before));
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
        Reading[] readings = scan.readings().toArray(Reading[]::new);
        Memory seen = seen(before, scan, readings, inForce);
        View view = new View(places, scan, readings, seen);
        long[] since = before.since();
        Breach[] found = before.found();
        boolean[] said = before.said();
        boolean breached = false;
        List<Trip> trips = List.of();
        List<Warning> warnings = List.of();
        for (int i = 0; i < rules.length; i++) {
            Rule rule = rules[i];
            Breach breach = rule.check().look(view);
            boolean goesOn = since[i] != Memory.NEVER;
            if (!breach.found() && goesOn && view.anyFailed() && unseen(view, i)) {
                breach = found[i];
            }
            if (!breach.found()) {
                if (goesOn) {
                    since = with(since, before.since(), i, Memory.NEVER);
                    said = with(said, before.said(), i, false);
                }
                continue;
            }
            if (!goesOn) {
                since = with(since, before.since(), i, scan.nanos());
            }
            if (found[i] != breach) {
                found = found == before.found() ? found.clone() : found;
                found[i] = breach;
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
        Started started = inbox.stop() ? Started.NOT : seen.started().with(inbox, view.on(places.arm));
        boolean stands = trips.isEmpty() && guard instanceof Guard.Watching;
        Memory memory = new Memory(scan, before.last(), since, found, seen.unsure(), said, seen.inForce(), seen.past(),
                stands ? started : Started.NOT,
                breached ? scan.nanos() : before.breachNanos());
        return switch (guard) {
            case Guard.Watching _ -> watched(memory, trips, warnings, scan, inbox);
            case Guard.Tripped tripped -> stillTripped(tripped, memory, trips, view, inbox);
        };
    }

    /** A breach that goes on is not over because a channel that the rule reads cannot be seen just now. */
    private boolean unseen(View view, int rule) {
        for (int channel : reads[rule]) {
            if (!view.valid(places.of(channel))) {
                return true;
            }
        }
        return false;
    }

    private Memory seen(Memory before, Scan scan, Reading[] readings, Orders inForce) {
        // of the scan on which the path was granted, which needs it valid
        double room = View.past(before.last(), places.room, 0);
        InForce now = before.inForce().then(inForce, before.last().nanos(), room);
        return new Memory(before.last(), before.earlier(), before.since(), before.found(),
                unsure(before.unsure(), readings), before.said(), now, before.past().then(scan, readings, places, now), before.started(),
                before.breachNanos());
    }

    /** Three more for a scan without a valid reading, one less for a scan with; never below nothing. */
    private static int[] unsure(int[] before, Reading[] readings) {
        int[] now = before;
        for (int i = 0; i < before.length; i++) {
            boolean failed = readings[i] instanceof Reading.Failed;
            if (failed || before[i] > 0) {
                now = now == before ? before.clone() : now;
                now[i] = failed ? before[i] + 3 : before[i] - 1;
            }
        }
        return now;
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
        double charge = Math.min(chargeCeiling(scan, memory), memory.inForce().chargeCeilingAmps());
        Lease lease = new Lease(scan.number(), charge, dischargeAmps, !memory.pending(rules));
        return new Judged(guard, new Verdict.Healthy(lease, warnings));
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

    /** By the coldest body that can be seen, and nothing while one is hot; where none can, what the path had, and nothing without a path. */
    private double chargeCeiling(Scan scan, Memory memory) {
        double coldest = Double.MAX_VALUE;
        boolean hot = false;
        for (Channel body : places.bodies) {
            if (scan.readings().get(body.index()) instanceof Reading.Valid valid) {
                coldest = Math.min(coldest, valid.value() - body.uncertainty(valid.value()));
                hot |= valid.value() + body.uncertainty(valid.value()) > Envelope.CHARGING_RUN_HIGH_C;
            }
        }
        if (coldest == Double.MAX_VALUE) {
            return memory.inForce().energised() ? memory.inForce().chargeCeilingAmps() : 0;
        }
        double byTemperature = hot ? 0 : Math.min(Envelope.chargeCeilingC(coldest), lowCeilingC(scan, memory));
        return Math.min(chargeAmps, byTemperature * rig.cells().ratedAmpHours());
    }

    /**
     * Cells below the lowest voltage of any other charge get a twentieth of their capacity an hour, or no path at all. In a
     * path of another kind the rule on low cells judges them.
     */
    private double lowCeilingC(Scan scan, Memory memory) {
        boolean recovering = memory.started() == Started.RECOVERING;
        if (memory.inForce().energised() && !recovering) {
            return Double.MAX_VALUE;
        }
        for (Channel cell : places.cells) {
            if (scan.readings().get(cell.index()) instanceof Reading.Valid valid
                    && valid.value() < Envelope.LOW_CHARGING_V) {
                return recovering ? Envelope.RECOVER_C : 0;
            }
        }
        return Double.MAX_VALUE;
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
        return view.on(places.arm) && over(first, memory, view) && also.stream().allMatch(t -> over(t, memory, view));
    }

    /** Whether the cause of one trip is gone for as long, and as far, as its rule asks. */
    private static boolean over(Trip trip, Memory memory, View view) {
        Clearing clears = trip.rule().clears();
        if (view.nanos() - memory.breachNanos() < clears.quietNanos) {
            return false;
        }
        double wanted = trip.limit() + clears.marginKelvin;
        return switch (clears) {
            case QUIET, CALM, BY_ITSELF -> true;
            case COOLED -> view.valid(trip.where()) && view.value(trip.where()) <= wanted;
            case WARMED -> view.valid(trip.where()) && view.value(trip.where()) >= wanted;
            case PROOF -> false;
        };
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
