package rigwarden.rig;

import java.util.List;
import java.util.Map;

/**
 * One rig as its file describes it, checked and complete. Made by {@code rigwarden.rigfile} only.
 *
 * @param name a person's name for it
 * @param scanNanos period of the scan
 * @param cells what is under test
 * @param path every part that carries the current
 * @param busHertz clock of each I2C bus, by bus number
 * @param shunt shunt and its chip
 * @param inputs cell taps and bus voltage
 * @param probes thermocouples
 * @param panel GPIO lines
 * @param source programmable source
 * @param sink electronic sink
 * @param busSide capacitors, pre-charge and bleed behind the contactor
 * @param guards hardware that works with the computer dead
 * @param channels every channel of a scan, by index; see {@link Channels}
 * @param roomCelsius temperature of the room for a rehearsal, °C
 */
public record Rig(
        String name,
        long scanNanos,
        Cells cells,
        List<PathPart> path,
        Map<Integer, Integer> busHertz,
        ShuntMonitor shunt,
        List<VoltageInput> inputs,
        List<Probe> probes,
        Panel panel,
        Instrument source,
        Instrument sink,
        BusSide busSide,
        Guards guards,
        List<Channel> channels,
        double roomCelsius) {

    /** The only channel of a role; a rig without it cannot have been built. */
    public Channel channel(Role role) {
        for (Channel channel : channels) {
            if (channel.role() == role) {
                return channel;
            }
        }
        throw new IllegalArgumentException("no channel has the role " + role);
    }

    /** All channels of a role, in order of index. */
    public List<Channel> channels(Role role) {
        return channels.stream().filter(c -> c.role() == role).toList();
    }

    /** The part of the path with the lowest continuous current. */
    public PathPart weakest() {
        PathPart weakest = path.getFirst();
        for (PathPart part : path) {
            if (part.continuousAmps() < weakest.continuousAmps()) {
                weakest = part;
            }
        }
        return weakest;
    }

    /** Highest charge current: path, cells, source; A. */
    public double chargeCeilingAmps() {
        return Math.min(Math.min(weakest().continuousAmps(), cells.chargeAmps()), source.maxAmps());
    }

    /** Highest discharge current: path, cells, sink; A. */
    public double dischargeCeilingAmps() {
        return Math.min(Math.min(weakest().continuousAmps(), cells.dischargeAmps()), sink.maxAmps());
    }
}
