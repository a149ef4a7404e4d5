package rigwarden.bench;

import com.pi4j.context.Context;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rigwarden.bus.BusFailure;
import rigwarden.bus.Chip;
import rigwarden.bus.ReadyLine;
import rigwarden.chip.ads1115.Ads1115;
import rigwarden.chip.ads1115.Ads1115Config;
import rigwarden.chip.ads1220.Ads1220;
import rigwarden.chip.ads1220.Ads1220Config;
import rigwarden.chip.ads1220.VoltageReference;
import rigwarden.chip.ina226.Ina226;
import rigwarden.chip.ina226.Ina226Config;
import rigwarden.chip.ina228.AdcRange;
import rigwarden.chip.ina228.Ina228;
import rigwarden.chip.ina228.Ina228Codec;
import rigwarden.chip.ina228.Ina228Config;
import rigwarden.chip.ina228.Ina228State;
import rigwarden.chip.max31855.Couple;
import rigwarden.chip.max31855.Max31855;
import rigwarden.chip.max31856.MainsFilter;
import rigwarden.chip.max31856.Max31856;
import rigwarden.chip.max31856.Max31856Config;
import rigwarden.chip.max31856.Max31856State;
import rigwarden.chip.mcp9601.Mcp9601;
import rigwarden.chip.mcp9601.Mcp9601Config;
import rigwarden.loop.Clock;
import rigwarden.rig.Channel;
import rigwarden.rig.Converter;
import rigwarden.rig.Probe;
import rigwarden.rig.ProbeChip;
import rigwarden.rig.Rig;
import rigwarden.rig.VoltageInput;

/** Opens the chips that a rig names and ties them to their channels. */
final class Board {
    /** Probes take their turns behind shunt and converters. */
    private static final int PROBES_PLACE = 20;

    private final Rig rig;
    private final Context context;
    private final Clock clock;
    private final SpiNodes nodes;

    Board(Rig rig, Context context, Clock clock) {
        this.rig = rig;
        this.context = context;
        this.clock = clock;
        nodes = new SpiNodes(rig, context);
    }

    /** The shunt's chip: identified and configured, or as it was when its state was taken. */
    ShuntSense shunt(Table table, Optional<BenchState> before) throws BusFailure {
        Chip chip = Chip.at(context, rig.shunt().bus(), rig.shunt().address());
        return switch (rig.shunt().chip()) {
            case INA228 -> new ShuntChannels(ina228(chip, before.flatMap(BenchState::shunt)), rig, table);
            case INA226 -> {
                Ina226 plain = new Ina226(chip, Ina226Config.LARGE_CELLS);
                if (before.isEmpty()) {
                    plain.configure();
                }
                yield new PlainShunt(plain, rig, table);
            }
        };
    }

    private Ina228 ina228(Chip chip, Optional<Ina228State> before) throws BusFailure {
        Ina228Codec codec = new Ina228Codec(rig.shunt().fullScaleAmps(), rig.shunt().ohms(), AdcRange.WIDE);
        return before.isPresent()
                ? new Ina228(chip, clock, Ina228Config.LARGE_CELLS, codec, before.get())
                : Ina228.started(chip, clock, Ina228Config.LARGE_CELLS, codec);
    }

    List<TapChip> taps(Table table, boolean configure) throws BusFailure {
        Map<Converter, List<TapChip.Tap>> places = new LinkedHashMap<>();
        int place = 0;
        for (VoltageInput input : rig.inputs()) {
            Turn turn = Turn.of(input.periodNanos(), rig.scanNanos(), place++);
            places.computeIfAbsent(input.converter(), p -> new ArrayList<>())
                    .add(new TapChip.Tap(channel(input.name()), input.input(), turn));
        }
        List<TapChip> chips = new ArrayList<>();
        for (Map.Entry<Converter, List<TapChip.Tap>> entry : places.entrySet()) {
            int turn = 1 + chips.size();
            chips.add(switch (entry.getKey()) {
                case Converter.Ads1115 own -> ads1115(own, entry.getValue(), table, turn, configure);
                case Converter.Ads1220 own -> ads1220(own, entry.getValue(), table, turn, configure);
            });
        }
        return chips;
    }

    private TapChip ads1115(Converter.Ads1115 own, List<TapChip.Tap> taps, Table table, int turn, boolean configure)
            throws BusFailure {
        Ads1115 chip = new Ads1115(Chip.at(context, own.bus(), own.address()), Ads1115Config.CELL_TAPS);
        if (configure) {
            chip.configure();
        }
        return new TapChip(TapConverter.of(chip), taps, clock, table, new Reference(chip::reference, rig.scanNanos(), turn));
    }

    /** It has nothing to be known by but the four registers that each reading compares. */
    private TapChip ads1220(Converter.Ads1220 own, List<TapChip.Tap> taps, Table table, int turn, boolean configure)
            throws BusFailure {
        Ads1220Config config = new Ads1220Config(own.external() ? VoltageReference.EXTERNAL : VoltageReference.INTERNAL);
        Ads1220 chip = new Ads1220(nodes.chip(own.at(), SpiNodes.MODE_1), ReadyLine.at(context, own.readyLine()), clock, config);
        if (configure) {
            chip.configure();
        }
        return new TapChip(TapConverter.of(chip), taps, clock, table, new Reference(() -> { }, rig.scanNanos(), turn));
    }

    Probes probes(Table table, Optional<BenchState> before) throws BusFailure {
        List<Probes.Bead> beads = new ArrayList<>();
        List<Max31856> remembering = new ArrayList<>();
        for (Probe probe : rig.probes()) {
            beads.add(switch (probe.chip()) {
                case ProbeChip.Mcp9601 own -> mcp9601(probe, own, beads.size(), before.isEmpty());
                case ProbeChip.Max31855 own -> max31855(probe, own, beads.size(), before.isEmpty());
                case ProbeChip.Max31856 own -> {
                    int place = remembering.size();
                    Max31856 chip = max31856(own, before.map(state -> state.probes().get(place)));
                    remembering.add(chip);
                    yield bead(probe, chip::read, chip::reference, beads.size());
                }
            });
        }
        return new Probes(beads, remembering, table);
    }

    private Probes.Bead mcp9601(Probe probe, ProbeChip.Mcp9601 own, int place, boolean configure) throws BusFailure {
        Mcp9601 chip = new Mcp9601(Chip.at(context, own.bus(), own.address()), Mcp9601Config.CELL_PROBE);
        if (configure) {
            chip.configure();
        }
        return bead(probe, chip::read, chip::reference, place);
    }

    private Probes.Bead max31855(Probe probe, ProbeChip.Max31855 own, int place, boolean configure) throws BusFailure {
        Max31855 chip = new Max31855(nodes.chip(own.at(), SpiNodes.MODE_0), Couple.valueOf(String.valueOf(own.letter())));
        if (configure) {
            chip.reference();
        }
        return bead(probe, chip::read, chip::reference, place);
    }

    private Max31856 max31856(ProbeChip.Max31856 own, Optional<Max31856State> before) throws BusFailure {
        MainsFilter mains = own.mainsHertz() == 50 ? MainsFilter.HZ_50 : MainsFilter.HZ_60;
        Max31856 chip = new Max31856(nodes.chip(own.at(), SpiNodes.MODE_1), Max31856Config.cellProbe(mains, 0),
                before.orElse(Max31856State.FRESH));
        if (before.isEmpty()) {
            chip.configure();
        }
        return chip;
    }

    private Probes.Bead bead(Probe probe, Table.Measure code, Reference.Look look, int place) {
        return new Probes.Bead(channel(probe.name()), code, Turn.of(probe.periodNanos(), rig.scanNanos(), place),
                new Reference(look, rig.scanNanos(), PROBES_PLACE + place));
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
