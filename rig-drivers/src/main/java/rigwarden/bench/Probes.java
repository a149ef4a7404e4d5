package rigwarden.bench;

import java.util.List;
import rigwarden.chip.max31856.Max31856;
import rigwarden.chip.max31856.Max31856State;
import rigwarden.rig.Channel;

/** The thermocouples, a share of them in each scan. */
final class Probes {
    /**
     * One thermocouple.
     *
     * @param channel where its reading goes
     * @param code what its chip says
     * @param turn scans in which it is read
     * @param reference what the chip must always say
     */
    record Bead(Channel channel, Table.Measure code, Turn turn, Reference reference) {}

    private final List<Bead> beads;
    private final List<Max31856> remembering;
    private final Table table;

    /**
     * Nothing read yet.
     *
     * @param remembering the chips whose drivers remember something, in the rig's order
     */
    Probes(List<Bead> beads, List<Max31856> remembering, Table table) {
        this.beads = List.copyOf(beads);
        this.remembering = List.copyOf(remembering);
        this.table = table;
    }

    void read(long scan) {
        for (Bead bead : beads) {
            if (bead.turn().isDue(scan)) {
                table.measure(bead.channel(), () -> {
                    bead.reference().check(scan);
                    return bead.code().code();
                });
            }
        }
    }

    List<Max31856State> states() {
        return remembering.stream().map(Max31856::state).toList();
    }
}
