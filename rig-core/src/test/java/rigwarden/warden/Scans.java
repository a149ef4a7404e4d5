package rigwarden.warden;

import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** Builds scans for tests: a healthy bench at rest, then changed channel by channel. */
public final class Scans {
    private static final long HOLD_NANOS = 700_000_000L;

    private final Rig rig;
    private final List<Reading> readings = new ArrayList<>();
    private final long nanos;
    private long breachNanos;
    private double apart;

    /** Everything as it is on a bench at rest with the contactor open. */
    public Scans(Rig rig, long nanos) {
        this.rig = rig;
        this.nanos = nanos;
        for (Channel channel : rig.channels()) {
            double usual = atRest(channel.role()) * (channel.role() == Role.PACK_VOLTS ? rig.cells().series() : 1);
            readings.add(Reading.of(channel, Math.round((usual - channel.shift()) / channel.scale()),
                    nanos));
        }
    }

    private static double atRest(Role role) {
        return switch (role) {
            case CLOCK_RATIO, LOOP -> 1;
            case PACK_VOLTS, CELL_VOLTS, TAP_VOLTS -> 3.3;
            case BODY, STUD, BAR, SHUNT_BODY, CONTACTOR_BODY, ROOM, LOOSE -> 22;
            case FREE_SPACE -> 1e11;
            case ARM -> 1;
            case CURRENT, ACCUMULATED, BUS_VOLTS, COIL_FEED, FEEDBACK, SOURCE_VOLTS, SOURCE_AMPS, SOURCE_ON, SINK_VOLTS,
                    SINK_AMPS, SINK_ON, RECORDER_LAG, LATENESS -> 0;
        };
    }

    /** Sets every channel of a role, in the channel's unit. */
    public Scans set(Role role, double value) {
        for (Channel channel : rig.channels(role)) {
            set(channel, value);
        }
        return this;
    }

    /** A closed contactor ties the bus to the pack: what sets the pack sets the bus too, which may be set otherwise after it. */
    public Scans set(Channel channel, double value) {
        readings.set(channel.index(),
                Reading.of(channel, Math.round((value - channel.shift()) / channel.scale()), nanos));
        boolean tied = channel.role() == Role.PACK_VOLTS
                && readings.get(rig.channel(Role.FEEDBACK).index()) instanceof Reading.Valid feedback && feedback.value() > 0.5;
        return tied ? set(Role.BUS_VOLTS, value) : this;
    }

    /** Remembers when a breach began, for what must say since when. */
    public Scans since(long began) {
        breachNanos = began;
        return this;
    }

    public long breachNanos() {
        return breachNanos;
    }

    public long nanos() {
        return nanos;
    }

    public Scans old(Channel channel, long ageNanos) {
        Reading.Valid valid = (Reading.Valid) readings.get(channel.index());
        readings.set(channel.index(), new Reading.Valid(valid.code(), valid.value(), nanos - ageNanos));
        return this;
    }

    public Scans failed(Channel channel, Failure why, long sinceNanos) {
        readings.set(channel.index(), new Reading.Failed(why, sinceNanos));
        return this;
    }

    /** What an obedient rig shows under these orders, in force for so long, with the current that they ask for. */
    public Scans obeying(Orders orders, long ageNanos) {
        return switch (orders) {
            case Orders.Off _ -> this;
            case Orders.Energised on -> obeying(on, ageNanos);
        };
    }

    private Scans obeying(Orders.Energised on, long ageNanos) {
        if (on.stage() == Closing.NO_LOAD) {
            return set(Role.COIL_FEED, 1).set(Role.BUS_VOLTS, rig.devices().get(on.through()).highestVolts());
        }
        boolean holds = on.beats() || ageNanos < HOLD_NANOS;
        set(Role.COIL_FEED, holds ? 1 : 0);
        set(Role.BUS_VOLTS, 3.3 * rig.cells().series());
        boolean closed = on.stage() != Closing.PRECHARGE && on.stage() != Closing.CONTACTOR_ALONE;
        set(Role.FEEDBACK, holds && closed ? 1 : 0);
        if (on.stage() == Closing.CURRENT) {
            carrying(on, on.way().sign() * on.set().amps());
        }
        return this;
    }

    /** This current, A, positive into the cells, and the device that works says the same of it. */
    public Scans carrying(Orders orders, double amps) {
        if (orders instanceof Orders.Energised on) {
            rig.column(rig.devices().get(on.through()).name() + "_a").ifPresent(said -> set(said, Math.abs(amps)));
        }
        return set(Role.CURRENT, amps);
    }

    public Reading reading(Channel channel) {
        return readings.get(channel.index());
    }

    /** The shunt monitor will have summed up so much more than flowed, A·s. */
    public Scans apart(double ampSeconds) {
        apart = ampSeconds;
        return this;
    }

    /** Shows what the shunt monitor has summed up. */
    public Scans summed(ChipSum sum) {
        return set(Role.ACCUMULATED, sum.ampSeconds() + apart);
    }

    public Scan scan(long number) {
        return new Scan(number, nanos, List.copyOf(readings));
    }
}
