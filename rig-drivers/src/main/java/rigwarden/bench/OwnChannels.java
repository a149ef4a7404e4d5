package rigwarden.bench;

import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** The program's own channels. */
final class OwnChannels {
    private final OwnReadings own;
    private final Table table;
    private final Channel lag;
    private final Channel free;
    private final Channel lateness;

    OwnChannels(OwnReadings own, Rig rig, Table table) {
        this.own = own;
        this.table = table;
        lag = rig.channel(Role.RECORDER_LAG);
        free = rig.channel(Role.FREE_SPACE);
        lateness = rig.channel(Role.LATENESS);
    }

    void read() {
        table.measure(lag, () -> Math.round(own.recorderLagSeconds().getAsDouble() / lag.scale()));
        table.measure(free, () -> own.freeBytes().getAsLong());
        table.measure(lateness, () -> Math.round(own.latenessSeconds().getAsDouble() / lateness.scale()));
    }
}
