package rigwarden.warden;

import java.util.Arrays;
import java.util.List;
import java.util.function.UnaryOperator;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/**
 * One instant as the rules see it, told freely: what each channel reads, which orders are in force and since when, and what
 * is remembered. The scans before read the same, unless it is said otherwise.
 */
final class Moment {
    static final long SECOND = 1_000_000_000L;
    static final long NOW = 1_000_000 * SECOND;

    final Rig rig;
    final Places places;
    private final Reading[] readings;
    Scan last;
    Scan earlier;
    InForce inForce = InForce.off(NOW - 100_000 * SECOND);
    Started started = Started.USUAL;
    Past past;
    final int[] unsure;

    /** At rest with everything off for long, started. */
    Moment(Rig rig) {
        this.rig = rig;
        places = new Places(rig);
        Scans scans = new Scans(rig, NOW);
        readings = rig.channels().stream().map(scans::reading).toArray(Reading[]::new);
        unsure = new int[readings.length];
        past = Past.blank(new Scan(0, 0, List.of()), Swing.NONE);
    }

    Channel column(String name) {
        return rig.column(name).orElseThrow();
    }

    Moment set(Channel channel, double value) {
        readings[channel.index()] = new Reading.Valid(0, value, NOW);
        return this;
    }

    Moment set(Role role, double value) {
        rig.channels(role).forEach(channel -> set(channel, value));
        return this;
    }

    Moment set(String column, double value) {
        return set(column(column), value);
    }

    Moment old(Channel channel, long ageNanos) {
        readings[channel.index()] = new Reading.Valid(0, ((Reading.Valid) readings[channel.index()]).value(), NOW - ageNanos);
        return this;
    }

    Moment failed(Channel channel, long forNanos) {
        readings[channel.index()] = new Reading.Failed(Failure.NO_ANSWER, NOW - forNanos);
        return this;
    }

    Moment failed(Role role) {
        rig.channels(role).forEach(channel -> failed(channel, 0));
        return this;
    }

    /** Everything off for so long. */
    Moment off(long forNanos) {
        inForce = InForce.off(NOW - forNanos);
        return this;
    }

    /** A way through a device: its stage for so long, its path for so long. */
    Moment at(Closing stage, int through, long stageForNanos, long pathForNanos) {
        Way way = rig.devices().get(through).charges() ? Way.CHARGE : Way.DISCHARGE;
        inForce = new InForce(true, way, through, stage, NOW - stageForNanos, NOW - pathForNanos, 0, 0, NOW - stageForNanos,
                Double.MAX_VALUE, 22);
        return set(Role.COIL_FEED, 1).set(Role.FEEDBACK, stage == Closing.PRECHARGE || stage == Closing.NO_LOAD ? 0 : 1);
    }

    /** Current as ordered, for so long. */
    Moment flowing(int through, double amps, long forNanos) {
        at(Closing.CURRENT, through, forNanos, forNanos + SECOND);
        past = flowed(NOW);
        double pack = 3.3 * rig.cells().series();
        return ordered(amps, amps, forNanos).set(Role.CURRENT, inForce.way().sign() * amps).set(Role.BUS_VOLTS, pack);
    }

    /** A set point that replaced another so long ago. */
    Moment ordered(double amps, double before, long agoNanos) {
        InForce f = inForce;
        inForce = new InForce(true, f.way(), f.through(), f.stage(), f.sinceNanos(), f.pathSinceNanos(), amps, before,
                NOW - agoNanos, f.chargeCeilingAmps(), f.roomCelsius());
        return this;
    }

    Moment roomAtClosing(double celsius) {
        InForce f = inForce;
        inForce = new InForce(true, f.way(), f.through(), f.stage(), f.sinceNanos(), f.pathSinceNanos(), f.amps(), f.earlierAmps(),
                f.ampsSinceNanos(), f.chargeCeilingAmps(), celsius);
        return this;
    }

    private Past flowed(long nanos) {
        return new Past(past.trail(), past.half(), past.second(), past.third(), past.learnt(), nanos, past.rest(),
                past.counted(), past.slow(), past.minute(), past.older());
    }

    Moment flowedAgo(long nanos) {
        past = flowed(NOW - nanos);
        return this;
    }

    Moment trail(Trail trail) {
        past = new Past(trail, past.half(), past.second(), past.third(), past.learnt(), past.flowedNanos(), past.rest(),
                past.counted(), past.slow(), past.minute(), past.older());
        return this;
    }

    Moment learnt(Learnt learnt) {
        past = new Past(past.trail(), past.half(), past.second(), past.third(), learnt, past.flowedNanos(), past.rest(),
                past.counted(), past.slow(), past.minute(), past.older());
        return this;
    }

    Moment rest(RestTrail rest) {
        past = new Past(past.trail(), past.half(), past.second(), past.third(), past.learnt(), past.flowedNanos(), rest,
                past.counted(), past.slow(), past.minute(), past.older());
        return this;
    }

    Moment counted(Counted counted) {
        past = new Past(past.trail(), past.half(), past.second(), past.third(), past.learnt(), past.flowedNanos(), past.rest(),
                counted, past.slow(), past.minute(), past.older());
        return this;
    }

    /** What is read now was also read half a second, a second, half a minute and a minute ago, with this change. */
    Moment before(UnaryOperator<Moment> change) {
        Reading[] now = readings.clone();
        var _ = change.apply(this);
        Scan then = scan();
        System.arraycopy(now, 0, readings, 0, now.length);
        past = new Past(past.trail(), then, then, then, past.learnt(), past.flowedNanos(), past.rest(), past.counted(),
                then, new Scan(0, NOW - SECOND, then.readings()), then);
        return this;
    }

    Scan scan() {
        return new Scan(7, NOW, List.of(readings));
    }

    Memory memory() {
        Scan same = new Scan(6, NOW - rig.scanNanos(), List.of(readings));
        long[] since = new long[Rules.of(rig).size()];
        Arrays.fill(since, Memory.NEVER);
        return new Memory(last == null ? same : last, earlier == null ? same : earlier, since, new Breach[since.length],
                unsure, new boolean[since.length], inForce, past, started, 0);
    }

    View view() {
        return new View(places, scan(), readings.clone(), memory());
    }

    /** What a rule finds. */
    Breach look(int rule) {
        return Rules.of(rig).stream().filter(r -> r.number() == rule).findFirst().orElseThrow().check().look(view());
    }
}
