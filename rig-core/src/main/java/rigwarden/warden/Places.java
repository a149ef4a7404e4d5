package rigwarden.warden;

import rigwarden.quantity.Quantity;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** The channels of a rig sorted once by what rules ask for. */
final class Places {
    final Rig rig;
    final Channel[] all;
    final long[] staleNanos;
    final Channel[] own;
    final Channel[] instruments;
    final Channel[] cells;
    final Channel[] bodies;
    final Channel[] studs;
    final Channel[] warmed;
    final Channel[] temperatures;
    final Channel current;
    final Channel pack;
    final Channel bus;
    final Channel room;
    final Channel loop;
    final Channel coilFeed;
    final Channel feedback;
    final Channel arm;
    final Channel sourceOn;
    final Channel sinkOn;

    Places(Rig rig) {
        this.rig = rig;
        all = rig.channels().toArray(Channel[]::new);
        staleNanos = rig.channels().stream().mapToLong(Channel::staleNanos).toArray();
        own = rig.channels().stream().filter(c -> !c.role().ofInstrument()).toArray(Channel[]::new);
        instruments = rig.channels().stream().filter(c -> c.role().ofInstrument()).toArray(Channel[]::new);
        cells = of(Role.CELL_VOLTS);
        bodies = of(Role.BODY);
        studs = of(Role.STUD);
        warmed = rig.channels().stream().filter(c -> c.role().warmsByCurrent()).toArray(Channel[]::new);
        temperatures = rig.channels().stream()
                .filter(c -> c.quantity() == Quantity.TEMPERATURE)
                .toArray(Channel[]::new);
        current = rig.channel(Role.CURRENT);
        pack = rig.channel(Role.PACK_VOLTS);
        bus = rig.channel(Role.BUS_VOLTS);
        room = rig.channel(Role.ROOM);
        loop = rig.channel(Role.LOOP);
        coilFeed = rig.channel(Role.COIL_FEED);
        feedback = rig.channel(Role.FEEDBACK);
        arm = rig.channel(Role.ARM);
        sourceOn = rig.channel(Role.SOURCE_ON);
        sinkOn = rig.channel(Role.SINK_ON);
    }

    private Channel[] of(Role role) {
        return rig.channels(role).toArray(Channel[]::new);
    }

    Channel of(int index) {
        return all[index];
    }
}
