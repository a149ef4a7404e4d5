package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rigwarden.rig.Calibration;
import rigwarden.rig.Channels;
import rigwarden.rig.Converter;
import rigwarden.rig.Envelope;
import rigwarden.rig.Probe;
import rigwarden.rig.ProbeChip;
import rigwarden.rig.Role;
import rigwarden.rig.VoltageInput;

/** Reads taps and probes. */
final class TapKeys {
    private static final Map<String, Role> PLACES = Map.of("body", Role.BODY, "stud", Role.STUD, "bar", Role.BAR, "shunt",
            Role.SHUNT_BODY, "contactor", Role.CONTACTOR_BODY, "room", Role.ROOM, "loose", Role.LOOSE);
    private static final Map<String, Role> MEASURES =
            new TreeMap<>(Map.of("cell", Role.CELL_VOLTS, "tap", Role.TAP_VOLTS, "bus", Role.BUS_VOLTS));
    private static final List<String> PLACE_WORDS = List.of("body", "stud", "bar", "shunt", "contactor", "room", "loose");
    private static final String SEES = "a scan must know what it reads";

    private final RigKeys rig;
    private final int series;
    private final int fastestMillis;
    private final int slowestMillis;
    private final List<VoltageInput> inputs = new ArrayList<>();
    private final List<Sketch.Adc> converters = new ArrayList<>();

    TapKeys(RigKeys rig, int series, int fastestMillis, int slowestMillis) {
        this.rig = rig;
        this.series = series;
        this.fastestMillis = fastestMillis;
        this.slowestMillis = slowestMillis;
    }

    static int bus(Keys keys) {
        return keys.whole("bus", "", 0, 99, "the chip is reached over it");
    }

    static int address(Keys keys) {
        return keys.whole("address", "", 0x03, 0x77, "I2C reserves the others");
    }

    void converters(Keys root) {
        for (Keys keys : root.tables("adc", RefusalKind.MISSING_KEY, "cells need taps")) {
            rig.name(keys);
            Converter converter = ConverterKeys.converter(keys);
            double supply = keys.number("supply_v", RefusalKind.SUPPLY_MISSING, "V", 2.0, 5.5,
                    "the supply clips the inputs and no reading betrays it");
            converters.add(new Sketch.Adc(keys.full("name").replaceFirst("[.]name$", ""), converter, supply));
            for (Keys input : keys.tables("input", RefusalKind.MISSING_KEY, "an ADC without inputs reads nothing")) {
                inputs.add(input(input, converter, supply));
                input.noOthers();
            }
            keys.noOthers();
        }
    }

    private VoltageInput input(Keys keys, Converter converter, double supply) {
        String name = rig.name(keys);
        Role role = MEASURES.get(keys.word("measures", List.copyOf(MEASURES.keySet()), SEES));
        return new VoltageInput(name, role, role == Role.BUS_VOLTS ? 0 : cell(keys), converter,
                keys.whole("pin", "", 0, 3, "the converter has four inputs"), supply,
                keys.number("divider", "", 1, 100, "it is measured voltage ÷ pin voltage"),
                keys.number("divider_percent", "%", 0, 5, "it is part of the tap's uncertainty") / 100,
                calibration(keys),
                keys.whole("period_ms", "ms", fastestMillis, slowestMillis, "voltage limits must act within 0.3 s")
                        * RigKeys.MILLI);
    }

    private int cell(Keys keys) {
        return keys.whole("cell", "", 1, series, "cells are numbered from 1 at B−");
    }

    private static Calibration calibration(Keys keys) {
        if (!keys.has("calibration")) {
            return Calibration.NONE;
        }
        Keys inner = keys.table("calibration", SEES).orElseGet(keys::none);
        Calibration calibration = new Calibration(
                inner.number("gain", "", 0.95, 1.05, "more than 5 % is a wrong divider"),
                inner.number("offset_v", "V", -0.1, 0.1, "more is a wiring fault"),
                inner.number("gain_u", "", 0, 0.01, "it is the reference meter's"),
                inner.number("offset_u_v", "V", 0, 0.1, "it is the reference meter's"),
                true);
        inner.noOthers();
        return calibration;
    }

    /** Asked where a bead on live metal could harm its chip. */
    private static double insulated(Keys keys, ProbeChip chip, String place) {
        boolean live = !place.equals("room");
        return switch (chip) {
            case ProbeChip.Mcp9601 _ -> 0;
            case ProbeChip.Max31856 _, ProbeChip.Max31855 _ -> live
                    ? keys.number("insulated_v", "V", 0, 5000, "the bead sits on live metal, and its wires end in the chip")
                    : 0;
        };
    }

    List<VoltageInput> inputs() {
        return List.copyOf(inputs);
    }

    List<Sketch.Adc> converters() {
        return List.copyOf(converters);
    }

    List<Probe> probes(Keys root) {
        List<Probe> probes = new ArrayList<>();
        for (Keys keys : root.tables("probe", RefusalKind.MISSING_KEY, "nothing may carry current unwatched")) {
            probes.add(probe(keys));
            keys.noOthers();
        }
        return List.copyOf(probes);
    }

    private Probe probe(Keys keys) {
        String name = rig.name(keys);
        String place = keys.word("place", PLACE_WORDS, "rules find probes by their place");
        boolean stud = place.equals("stud");
        ProbeChip chip = ConverterKeys.probeChip(keys);
        boolean ofCell = stud || place.equals("body") || place.equals("bar");
        return new Probe(name, PLACES.get(place), ofCell ? cell(keys) : 0,
                stud && keys.word("pole", List.of("positive", "negative"), SEES).equals("positive"),
                chip, insulated(keys, chip, place),
                keys.number("uncertainty_k", "K", 0.05, 5, "limits hold for the true temperature"),
                keys.number("lag_s", "s", 0, 60, "what the bead has not felt cannot trip"),
                keys.whole("period_ms", "ms", fastestMillis, 60_000, "a scan is the fastest that can be asked")
                        * RigKeys.MILLI);
    }

    /** Voltage that an input must be able to show, V: of one cell, of the bus, or of a tap over its island's ground. */
    static double neededVolts(VoltageInput input, List<VoltageInput> all, int series) {
        if (input.role() == Role.BUS_VOLTS) {
            return series * Envelope.REPRESENTABLE_V;
        }
        int cells = 1;
        for (Optional<VoltageInput> below = Channels.below(input, all); below.isPresent();
                below = Channels.below(below.get(), all)) {
            cells++;
        }
        return cells * Envelope.REPRESENTABLE_V;
    }
}
