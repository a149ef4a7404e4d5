package rigwarden.bench;

import com.pi4j.context.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.chip.ads1115.Ads1115;
import rigwarden.chip.ads1115.Ads1115Config;
import rigwarden.chip.ina228.AdcRange;
import rigwarden.chip.ina228.Ina228;
import rigwarden.chip.ina228.Ina228Codec;
import rigwarden.chip.ina228.Ina228Config;
import rigwarden.chip.ina228.Ina228State;
import rigwarden.chip.mcp9601.Mcp9601;
import rigwarden.chip.mcp9601.Mcp9601Config;
import rigwarden.loop.Clock;
import rigwarden.rig.Channel;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.VoltageInput;

/** Opens the chips that a rig names and ties them to their channels. */
final class Board {
    /** Probes take their turns behind shunt and converters. */
    private static final int PROBES_PLACE = 20;

    private record Place(int bus, int address) {}

    private final Rig rig;
    private final Context context;
    private final Clock clock;

    Board(Rig rig, Context context, Clock clock) {
        this.rig = rig;
        this.context = context;
        this.clock = clock;
    }

    /** The shunt's chip, identified and configured. */
    Ina228 startShunt() throws BusFailure {
        return Ina228.started(shuntChip(), clock, Ina228Config.LARGE_CELLS, codec());
    }

    /** The shunt's chip of a copied rig. */
    Ina228 resumeShunt(Ina228State state) throws BusFailure {
        return new Ina228(shuntChip(), clock, Ina228Config.LARGE_CELLS, codec(), state);
    }

    private Chip shuntChip() throws BusFailure {
        return Chip.at(context, rig.shunt().bus(), rig.shunt().address());
    }

    private Ina228Codec codec() {
        return new Ina228Codec(rig.shunt().fullScaleAmps(), rig.shunt().ohms(), AdcRange.WIDE);
    }

    List<TapChip> taps(Table table, boolean configure) throws BusFailure {
        Map<Place, List<TapChip.Tap>> places = new LinkedHashMap<>();
        int place = 0;
        for (VoltageInput input : rig.inputs()) {
            Turn turn = Turn.of(input.periodNanos(), rig.scanNanos(), place++);
            places.computeIfAbsent(new Place(input.bus(), input.address()), p -> new ArrayList<>())
                    .add(new TapChip.Tap(channel(input.name()), input.input(), turn));
        }
        List<TapChip> chips = new ArrayList<>();
        for (Map.Entry<Place, List<TapChip.Tap>> entry : places.entrySet()) {
            Chip chip = Chip.at(context, entry.getKey().bus(), entry.getKey().address());
            Ads1115 converter = new Ads1115(chip, Ads1115Config.CELL_TAPS);
            if (configure) {
                converter.configure();
            }
            chips.add(new TapChip(converter, entry.getValue(), clock, table,
                    new Reference(converter::reference, rig.scanNanos(), 1 + chips.size())));
        }
        return chips;
    }

    Probes probes(Table table, boolean configure) throws BusFailure {
        List<Probes.Bead> beads = new ArrayList<>();
        for (Probe probe : rig.probes()) {
            Mcp9601 chip = new Mcp9601(Chip.at(context, probe.bus(), probe.address()), Mcp9601Config.CELL_PROBE);
            if (configure) {
                chip.configure();
            }
            Turn turn = Turn.of(probe.periodNanos(), rig.scanNanos(), beads.size());
            beads.add(new Probes.Bead(channel(probe.name()), chip, turn,
                    new Reference(chip::reference, rig.scanNanos(), PROBES_PLACE + beads.size())));
        }
        return new Probes(beads, table);
    }

    private Channel channel(String name) {
        for (Channel channel : rig.channels()) {
            if (channel.name().equals(name)) {
                return channel;
            }
        }
        throw new IllegalArgumentException("no channel is named " + name);
    }
}
