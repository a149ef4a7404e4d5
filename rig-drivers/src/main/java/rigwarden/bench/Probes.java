package rigwarden.bench;

import java.util.List;
import rigwarden.chip.mcp9601.Mcp9601;
import rigwarden.rig.Channel;

/** The thermocouples, a share of them in each scan. */
final class Probes {
    /**
     * One thermocouple.
     *
     * @param channel where its reading goes
     * @param chip that converts it
     * @param turn scans in which it is read
     * @param reference what the chip must always say
     */
    record Bead(Channel channel, Mcp9601 chip, Turn turn, Reference reference) {}

    private final List<Bead> beads;
    private final Table table;

    Probes(List<Bead> beads, Table table) {
        this.beads = List.copyOf(beads);
        this.table = table;
    }

    void read(long scan) {
        for (Bead bead : beads) {
            if (bead.turn().isDue(scan)) {
                table.measure(bead.channel(), () -> {
                    bead.reference().check(scan);
                    return bead.chip().read();
                });
            }
        }
    }
}
