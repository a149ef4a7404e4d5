package rigwarden.warden;

import rigwarden.quantity.Quantity;
import rigwarden.rig.Channel;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Trips;

/** The channels of a rig sorted once by what rules ask for. */
final class Places {
    final Rig rig;
    final Channel[] all;
    final long[] staleNanos;
    /** All but the instruments' and the loose probe's. */
    final Channel[] own;
    final Channel[] instruments;
    final Channel[] cells;
    final Channel[] bodies;
    final Channel[] studs;
    final Channel[] bars;
    final Channel[] joints;
    final Channel[] warmed;
    final Channel[] temperatures;
    final Channel current;
    /** The chip's own sum and its clock; null in this package only, for a chip that sums nothing. */
    final Channel accumulated;
    final Channel ratio;
    final Channel pack;
    final Channel bus;
    final Channel room;
    /** The probe that a person carries; none or one. */
    final Channel[] carried;
    final Channel loop;
    final Channel coilFeed;
    final Channel feedback;
    final Channel arm;
    final Trips trips;
    /** What the instruments say of their outputs. */
    final Channel[] outputs;
    /** The same by device; null in this package only, for a device that says nothing. */
    private final Channel[] outputOf;
    /** What the instruments say of their current, by device; null in this package only, for a device that says nothing. */
    private final Channel[] ampsOf;
    private final double[] deviceAmps;
    /** Highest voltage that a source may be told, or may show, V. */
    final double mostVolts;

    Places(Rig rig) {
        this.rig = rig;
        trips = rig.guards().trips();
        all = rig.channels().toArray(Channel[]::new);
        staleNanos = rig.channels().stream().mapToLong(Channel::staleNanos).toArray();
        own = rig.channels().stream().filter(c -> !c.role().ofInstrument() && !c.role().carried()).toArray(Channel[]::new);
        instruments = rig.channels().stream().filter(c -> c.role().ofInstrument()).toArray(Channel[]::new);
        cells = of(Role.CELL_VOLTS);
        bodies = of(Role.BODY);
        studs = of(Role.STUD);
        bars = of(Role.BAR);
        joints = rig.channels().stream().filter(c -> c.role().joint()).toArray(Channel[]::new);
        warmed = rig.channels().stream().filter(c -> c.role().warmsByCurrent()).toArray(Channel[]::new);
        temperatures = rig.channels().stream()
                .filter(c -> c.quantity() == Quantity.TEMPERATURE && !c.role().carried())
                .toArray(Channel[]::new);
        current = rig.channel(Role.CURRENT);
        accumulated = rig.possible(Role.ACCUMULATED).orElse(null);
        ratio = rig.possible(Role.CLOCK_RATIO).orElse(null);
        pack = rig.channel(Role.PACK_VOLTS);
        bus = rig.channel(Role.BUS_VOLTS);
        room = rig.channel(Role.ROOM);
        carried = of(Role.LOOSE);
        loop = rig.channel(Role.LOOP);
        coilFeed = rig.channel(Role.COIL_FEED);
        feedback = rig.channel(Role.FEEDBACK);
        arm = rig.channel(Role.ARM);
        outputs = rig.channels().stream()
                .filter(c -> c.role() == Role.SOURCE_ON || c.role() == Role.SINK_ON)
                .toArray(Channel[]::new);
        mostVolts = rig.cells().series() * Envelope.CEILING_V;
        deviceAmps = rig.devices().stream().mapToDouble(rig::ceilingAmps).toArray();
        ampsOf = rig.devices().stream().map(d -> rig.column(d.name() + "_a").orElse(null)).toArray(Channel[]::new);
        outputOf = rig.devices().stream().map(d -> rig.column(d.name() + "_on").orElse(null)).toArray(Channel[]::new);
    }

    /** What the device in force says of its own current; null where it says nothing. */
    Channel ampsSaid(InForce inForce) {
        return ampsOf[inForce.through()];
    }

    private Channel[] of(Role role) {
        return rig.channels(role).toArray(Channel[]::new);
    }

    Device device(InForce inForce) {
        return rig.devices().get(inForce.through());
    }

    /** What the wished device may carry, A; nothing where the way is not the device's. */
    double deviceAmps(Wish.Path wish) {
        Device device = rig.devices().get(wish.through());
        return device.charges() == (wish.way() == Way.CHARGE) ? deviceAmps[wish.through()] : -1;
    }

    /** Only a switched source has a no-load voltage to show: a programmable one is told its own. */
    boolean hasNoLoad(Wish.Path wish) {
        return wish.way() == Way.CHARGE && rig.devices().get(wish.through()).switched();
    }

    /** Whether this output belongs to another device than the one in force. */
    boolean rests(Channel output, InForce inForce) {
        return output != outputOf[inForce.through()];
    }

    Channel of(int index) {
        return all[index];
    }
}
