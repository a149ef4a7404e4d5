package rigwarden.rigfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.warden.Rule;
import rigwarden.warden.Rules;

/** Each kind of refusal is provoked by one edit of a reference file, and by nothing else that the edit does. */
class RefusalsTest {
    private static final String CONTACTOR = """
            kind = "contactor"
            rated_a = 200
            breaks_a = 200
            breaks_v = 60
            both_directions = true
            """;
    private static final String RELAY = """
            kind = "relay"
            device = "sink"
            rated_a = 200
            breaks_a = 200
            breaks_v = 60
            """;

    /** What one edit of a reference file provokes, and at which key. */
    private record Edit(RefusalKind kind, Subject subject, String key, String old, String replacement) {}

    private enum Subject {
        RIG,
        SPI,
        NIGHT,
        PACK,
        PACK_NIGHT,
        REGISTERS;

        List<Refusal> refusals(String old, String replacement) {
            return switch (this) {
                case SPI -> Reference.refusals(Reference.spi(old, replacement));
                case RIG -> Reference.refusals(Reference.rig(old, replacement));
                case NIGHT -> Reference.refusals(Reference.night(Reference.rig(), old, replacement));
                case PACK -> Reference.refusals(Reference.pack(old, replacement));
                case PACK_NIGHT ->
                    Reference.refusals(Reference.packNight(Reference.sound(Reference.pack()), old, replacement));
                case REGISTERS -> Reference.refusals(Reference.registers(old, replacement));
            };
        }
    }

    private static Edit rig(RefusalKind kind, String key, String old, String replacement) {
        return new Edit(kind, Subject.RIG, key, old, replacement);
    }

    private static String loose(String name, int address) {
        return "[[probe]]\nname = \"%s\"\nplace = \"loose\"\nbus = 3\naddress = %d\nuncertainty_k = 3.5\nlag_s = 30\nperiod_ms = 1000\n\n"
                .formatted(name, address);
    }

    private static Edit spi(RefusalKind kind, String key, String old, String replacement) {
        return new Edit(kind, Subject.SPI, key, old, replacement);
    }

    private static Edit night(RefusalKind kind, String key, String old, String replacement) {
        return new Edit(kind, Subject.NIGHT, key, old, replacement);
    }

    private static Edit pack(RefusalKind kind, String key, String old, String replacement) {
        return new Edit(kind, Subject.PACK, key, old, replacement);
    }

    private static Edit registers(RefusalKind kind, String key, String old, String replacement) {
        return new Edit(kind, Subject.REGISTERS, "source.source." + key, old, replacement);
    }

    private static Edit packNight(RefusalKind kind, String key, String old, String replacement) {
        return new Edit(kind, Subject.PACK_NIGHT, key, old, replacement);
    }

    private static final List<Edit> EDITS = List.of(
            spi(RefusalKind.PROBE_BARE, "probe.cell_01_c.insulated_v", "insulated_v = 500", "insulated_v = 0"),
            spi(RefusalKind.SELECT_MIXED, "probe.room_c.select", "select = 0", "select = 1"),
            spi(RefusalKind.SAME_ADDRESS, "probe.room_c.select", "select = 1\nselect_line = 4", "select = 0"),
            spi(RefusalKind.SELECT_TWICE, "probe.room_c.select",
                    "spi_bus = 0\nselect = 0", "spi_bus = 1\nselect = 1"),
            spi(RefusalKind.MODES_MIXED, "probe.cell_01_c.select", "chip = \"max31856\"\nspi_bus = 0\nselect = 1\nselect_line = 4\nmains_hz = 50",
                    "chip = \"max31855\"\nspi_bus = 0\nselect = 1\nselect_line = 4\ncouple = \"T\""),
            spi(RefusalKind.LINE_OFF_HEADER, "adc.taps.ready_line", "ready_line = 27", "ready_line = 112"),
            spi(RefusalKind.LINE_OFF_HEADER, "probe.cell_01_c.select_line", "select_line = 4", "select_line = 112"),
            spi(RefusalKind.PIN_DRIVES_ONLY, "panel.arm", "arm = 111", "arm = 115"),
            spi(RefusalKind.PROBE_HASTY, "probe.cell_01_c.period_ms", "period_ms = 260", "period_ms = 240"),
            spi(RefusalKind.REFERENCE_HIGH, "adc.taps.reference_v", "supply_v = 5.0", "supply_v = 4.0"),
            spi(RefusalKind.SUPPLY_TOO_LOW, "adc.taps.input.cell_01_v.divider", "reference = \"external\"\nreference_v = 4.096\nreference_percent = 0.04",
                    "reference = \"internal\""),
            spi(RefusalKind.SCALE_BEYOND_CHIP, "shunt.full_scale_a", "full_scale_a = 163", "full_scale_a = 164"),
            spi(RefusalKind.SAME_LINE, "adc.taps.select_line", "select_line = 17", "select_line = 26"),
            spi(RefusalKind.SAME_LINE, "probe.cell_01_c.select_line", "select_line = 4", "select_line = 27"),
            spi(RefusalKind.SAME_LINE, "expander.box.first_line", "[[expander]]",
                    "[[expander]]\nname = \"more\"\nbus = 1\naddress = 0x21\nfirst_line = 110\n\n[[expander]]"),
            spi(RefusalKind.ADDRESS_NOT_OF_CHIP, "expander.box.address", "address = 0x20", "address = 0x28"),
            spi(RefusalKind.UNKNOWN_BUS, "probe.room_c.spi_bus", "spi_bus = 0\nselect = 0", "spi_bus = 1\nselect = 0"),
            spi(RefusalKind.BUS_TOO_FAST, "probe.room_c.spi_bus", "hertz = 1000000", "hertz = 6000000"),
            spi(RefusalKind.OUT_OF_RANGE, "probe.cell_01_c.mains_hz", "mains_hz = 50", "mains_hz = 55"),
            spi(RefusalKind.MISSING_KEY, "probe.cell_01_c.insulated_v", "insulated_v = 500\n", "\n"),
            spi(RefusalKind.UNKNOWN_WORD, "probe.cell_01_c.chip", "chip = \"max31856\"", "chip = \"max31865\""),
            rig(RefusalKind.TOO_DEEP, "", "scan_ms = 100",
                    "scan_ms = [[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[[["),
            rig(RefusalKind.NAME_NO_COLUMN, "probe.Room C.name", "name = \"room_c\"",
                    "name = \"Room C\""),
            rig(RefusalKind.NAME_WITHOUT_UNIT, "probe.room.name", "name = \"room_c\"",
                    "name = \"room\""),
            rig(RefusalKind.NAME_RESERVED, "adc.taps.input.pack_v.name", "name = \"bus_v\"",
                    "name = \"pack_v\""),
            rig(RefusalKind.TEXT_UNREADABLE, "name", "name = \"hut bench, one cell\"",
                    "name = \"hut \\u0007bench\""),
            rig(RefusalKind.SAME_PORT, "sink.sink.port", "/dev/rigwarden-sink",
                    "/dev/rigwarden-source"),
            rig(RefusalKind.PORT_NO_DEVICE, "source.source.port", "/dev/rigwarden-source",
                    "COM3"),
            rig(RefusalKind.BAUD_SLOW, "source.source.baud", "baud = 115200",
                    "baud = 2400"),
            pack(RefusalKind.CHARGER_STRONG, "source.charger.amps", "amps = 20",
                    "amps = 80"),
            pack(RefusalKind.FINISH_HIGH, "source.charger.finish_a", "finish_a = 2",
                    "finish_a = 20"),
            pack(RefusalKind.FLOAT_HIGH, "source.charger.float_v", "floats = false",
                    "floats = true\nfloat_v = 29"),
            pack(RefusalKind.SOURCE_LOW, "source.charger.volts", "volts = 28.8",
                    "volts = 14.4"),
            rig(RefusalKind.SOURCE_LOW, "source.source.max_v", "max_v = 3.65",
                    "max_v = 3.3"),
            pack(RefusalKind.SINK_LOW, "sink.sink.max_v", "max_v = 60",
                    "max_v = 20"),
            pack(RefusalKind.WATTS_BEYOND, "sink.inverter.watts", "lead_ohms = 0.002",
                    "lead_ohms = 0.1"),
            pack(RefusalKind.INVERTER_STRONG, "sink.inverter.watts", "watts = 1500",
                    "watts = 2500"),
            pack(RefusalKind.QUIT_EARLY, "sink.inverter.quit_v", "quit_v = 21.0",
                    "quit_v = 25.8\n"),
            pack(RefusalKind.FARADS_FORGOTTEN, "bus_side.farads", "farads = 0.030",
                    "farads = 0.0002"),
            pack(RefusalKind.HEATER_UNGUARDED, "guards.loop_contacts", ", \"heater_cutout\"",
                    ""),
            rig(RefusalKind.STOPS_WITHOUT_CONTACTOR, "source.source.stops", "stops = [\"contactor\", \"relay\"]",
                    "stops = [\"output\", \"relay\"]"),
            rig(RefusalKind.RELAY_UNRATED, "sink.sink.stops", "kind = \"relay\"\ndevice = \"sink\"",
                    "kind = \"contactor\"\nboth_directions = true"),
            pack(RefusalKind.BLEED_HOT, "bus_side.bleed_watts", "bleed_watts = 8",
                    "bleed_watts = 2"),
            pack(RefusalKind.PRECHARGE_HOT, "bus_side.precharge_joules", "precharge_joules = 25",
                    "precharge_joules = 5"),
            pack(RefusalKind.PRECHARGE_PEAK, "bus_side.precharge_ohms", "precharge_ohms = 10",
                    "precharge_ohms = 0.5"),
            rig(RefusalKind.HOLD_AND_SCAN, "scan_ms", "heartbeat_shortest_s = 0.6",
                    "heartbeat_shortest_s = 0.2"),
            pack(RefusalKind.NO_SUCH_BAR, "probe.bar_07_c.cell", "place = \"bar\"\ncell = 7",
                    "place = \"bar\"\ncell = 8"),
            rig(RefusalKind.PLACE_TWICE, "probe.terminal_01n_c.place", "pole = \"negative\"",
                    "pole = \"positive\""),
            rig(RefusalKind.LOOSE_TWICE, "probe.second_c.place", "[panel]", loose("first_c", 0x66) + loose("second_c", 0x67) + "[panel]"),
            rig(RefusalKind.DIVIDER_COARSE, "adc.taps.input.cell_01_v.divider", "divider = 1.0",
                    "divider = 20"),
            rig(RefusalKind.CALIBRATION_TOO_GOOD, "adc.taps.input.cell_01_v.calibration", "# calibration = { gain = 1.0, offset_v = 0.0, gain_u = 0.0002",
                    "calibration = { gain = 1.0, offset_v = 0.0, gain_u = 0.000001"),
            pack(RefusalKind.ISLANDS_JOINED, "adc.upper_island.bus", "bus = 11\naddress = 0x48",
                    "bus = 10\naddress = 0x49"),
            pack(RefusalKind.ISLAND_ON_GROUND, "adc.upper_island.bus", "bus = 11\naddress = 0x48",
                    "bus = 1\naddress = 0x49"),
            rig(RefusalKind.SHUNT_MISMATCH, "path.shunt.rated_a", "kind = \"shunt\"\nrated_a = 150",
                    "kind = \"shunt\"\nrated_a = 500"),
            pack(RefusalKind.BRANCH_UNFUSED, "path.sink_cable.rated_a", "[[path]]\nname = \"sink_relay\"",
                    "[[path]]\nname = \"sink_cable\"\nkind = \"cable\"\ndevice = \"sink\"\nrated_a = 40\n\n[[path]]\nname = \"sink_relay\""),
            rig(RefusalKind.CELL_OHMS_ODD, "cell.ohms", "ohms = 0.00020",
                    "ohms = 0.02"),
            rig(RefusalKind.LOOP_TWICE, "guards.loop_contacts", "\"thermal_cutout\", ",
                    "\"thermal_cutout\", \"thermal_cutout\", "),
            rig(RefusalKind.ROOM_LATER, "rehearsal.room_drift_k_per_h", "room_drift_k_per_h = 0",
                    "room_drift_k_per_h = 2"),
            night(RefusalKind.DISCHARGE_OF_EMPTY, "step.5.kind", "kind = \"charge\"\nrate_c = 0.2\nceiling_v = 3.60\ntaper_c = 0.05\n\n[[step]]\nkind = \"rest\"\nat_least_min = 120\nat_most_min = 180\n\n[[step]]\nkind = \"discharge\"\nrate_c = 0.5",
                    "kind = \"discharge\"\nrate_c = 0.5"),
            night(RefusalKind.CHARGE_OF_FULL, "step.3.kind", "kind = \"discharge\"\nrate_c = 0.1\ncut_off_v = 2.50",
                    "kind = \"charge\"\nrate_c = 0.2\nceiling_v = 3.60\ntaper_c = 0.05"),
            packNight(RefusalKind.TAPER_UNDER_FINISH, "step.1", "taper_amps = 3.0",
                    "taper_amps = 1.5"),
            rig(RefusalKind.TRIP_INSIDE_PROGRAMME, "guards.cell_high_trip_v", "latching = true",
                    "latching = true\ncell_high_trip_v = 3.60"),
            rig(RefusalKind.TRIP_INSIDE_PROGRAMME, "guards.cell_low_trip_v", "latching = true",
                    "latching = true\ncell_low_trip_v = 2.60"),
            rig(RefusalKind.OUT_OF_RANGE, "guards.joint_trip_c", "latching = true",
                    "latching = true\njoint_trip_c = 70"),
            night(RefusalKind.CURRENT_FAINT, "step.3.kind", "rate_c = 0.1",
                    "rate_c = 0.018"),
            night(RefusalKind.EMPTY_AND_PARKED, "leave_empty", "leave_empty = false",
                    "leave_empty = true"),
            night(RefusalKind.TOO_LONG, "step", "rate_c = 0.1",
                    "rate_c = 0.012"),
            rig(RefusalKind.COMMAND_WRONG, "source.source.commands.set", "limit_read_back = true",
                    "limit_read_back = true\ncommands = { set = \"SOUR:VOLT {volts}\" }"),
            rig(RefusalKind.COMMAND_WRONG, "source.source.commands.poll", "limit_read_back = true",
                    "limit_read_back = true\ncommands = { poll = \"MEAS:VOLT\" }"),
            rig(RefusalKind.COMMAND_WRONG, "source.source.commands.ask_error", "limit_read_back = true",
                    "limit_read_back = true\ncommands = { ask_error = \"SYST:ERR\" }"),
            registers(RefusalKind.TWO_SPEECHES, "commands", "limit_read_back = true",
                    "limit_read_back = true\ncommands = { on = \"OUTP 1\" }"),
            registers(RefusalKind.REGISTER_MISFIT, "modbus.volts.function", "function = 4", "function = 2"),
            registers(RefusalKind.REGISTER_MISFIT, "modbus.set_volts.function",
                    "function = 6\naddress = 0x0100\ntype = \"u16\"",
                    "function = 6\naddress = 0x0100\ntype = \"u32\"\norder = \"high_first\""),
            registers(RefusalKind.REGISTER_MISFIT, "modbus.switch.function", "function = 5", "function = 6"),
            registers(RefusalKind.REGISTER_BEYOND, "modbus.amps.address", "address = 0x0001\ntype = \"s16\"",
                    "address = 0xFFFF\ntype = \"s32\"\norder = \"high_first\""),
            registers(RefusalKind.REGISTER_TWICE, "modbus", "address = 0x0101", "address = 0x0100"),
            registers(RefusalKind.REGISTER_NARROW, "modbus.amps", "unit = \"mA\"\nscale = 10.0", "unit = \"mA\"\nscale = 1.0"),
            registers(RefusalKind.REGISTER_COARSE, "modbus.limit", "address = 0x0110\ntype = \"u16\"\nunit = \"mV\"\nscale = 1.0",
                    "address = 0x0110\ntype = \"u16\"\nunit = \"V\"\nscale = 0.1"),
            registers(RefusalKind.LINK_TIME_SHORT, "modbus.link_s", "link_s = 2.0", "link_s = 0.6"),
            registers(RefusalKind.STATION_BAUD, "baud", "baud = 115200", "baud = 2400"),
            registers(RefusalKind.MISSING_KEY, "modbus.link_time", "[source.modbus.link_time]", "[source.modbus.link_times]"),
            registers(RefusalKind.UNKNOWN_WORD, "modbus.amps.type", "\"s16\"", "\"i16\""),
            registers(RefusalKind.OUT_OF_RANGE, "modbus.station", "station = 7", "station = 248"),
            night(RefusalKind.ATTENDED_STEP, "unattended", "kind = \"discharge\"\nrate_c = 0.1\ncut_off_v = 2.50",
                    "kind = \"recover\"\nrate_c = 0.05\nuntil_v = 2.6"),
            night(RefusalKind.NOT_GENTLE, "step.3.rate_c", "kind = \"discharge\"\nrate_c = 0.1\ncut_off_v = 2.50",
                    "kind = \"recover\"\nrate_c = 0.1\nuntil_v = 2.6"),
            packNight(RefusalKind.NEEDS_SET_POINT, "step.3.kind",
                    "kind = \"discharge\"\nwith = \"sink\"\nrate_c = 0.1\ncut_off_v = 2.50",
                    "kind = \"recover\"\nuntil_v = 2.6"),
            night(RefusalKind.PULSE_FLAT, "step.3.rate_c", "kind = \"discharge\"\nrate_c = 0.1\ncut_off_v = 2.50",
                    "kind = \"pulse\"\nwith = \"sink\"\nrate_c = 0.1\nbase_rate_c = 0.2\nbase_s = 10\npulse_s = 1"),
            night(RefusalKind.PROOF_BLIND, "step.3.kind", "kind = \"discharge\"\nrate_c = 0.1\ncut_off_v = 2.50",
                    "kind = \"prove_protection\"\nwith = \"sink\"\nrate_c = 0.05"),
            night(RefusalKind.REPEAT_DEEP, "step.2.step.1.step.1.step.1.kind",
                    "kind = \"rest\"\nat_least_min = 120\nat_most_min = 180", """
                    kind = "repeat"
                    times = 2
                    [[step.step]]
                    kind = "repeat"
                    times = 2
                    [[step.step.step]]
                    kind = "repeat"
                    times = 2
                    [[step.step.step.step]]
                    kind = "rest"
                    at_least_min = 30
                    at_most_min = 60
                    """),
            pack(RefusalKind.TAP_IN_PACK, "adc.lower_island.input.tap_01_v.measures", "measures = \"tap\"",
                    "measures = \"cell\""),
            pack(RefusalKind.ISLAND_GAP, "adc.lower_island", "name = \"tap_04_v\"\nmeasures = \"tap\"\ncell = 4",
                    "name = \"tap_04_v\"\nmeasures = \"tap\"\ncell = 5"),
            pack(RefusalKind.SUPPLY_TOO_LOW, "adc.lower_island.input.tap_04_v.divider", "divider = 4.0", "divider = 3.0"),
            pack(RefusalKind.RESTART_LOW, "sink.inverter.restart_v", "restart_v = 24.5", "restart_v = 20"),
            pack(RefusalKind.SOURCE_LIMIT_HIGH, "source.charger.volts", "volts = 28.8", "volts = 29.2"),
            pack(RefusalKind.NO_STUD_PAIR, "probe", "place = \"bar\"\ncell = 3", "place = \"bar\"\ncell = 4"),
            packNight(RefusalKind.WHICH_DEVICE, "step.3.with", "with = \"sink\"\n", "\n"),
            packNight(RefusalKind.NO_SET_POINT, "step.1.amps", "taper_amps = 3.0", "taper_amps = 3.0\namps = 10"),
            packNight(RefusalKind.HEAT_RUN_LONG, "step.7.at_most_min", "at_most_min = 150", ""),
            rig(RefusalKind.NOT_TOML, "", "scan_ms = 100", "scan_ms = = 100"),
            rig(RefusalKind.TWICE, "", "scan_ms = 100", "scan_ms = 100\nscan_ms = 50"),
            rig(RefusalKind.UNKNOWN_KEY, "cell.ceilling_v", "charge_c = 0.5", "ceilling_v = 3.6\ncharge_c = 0.5"),
            rig(RefusalKind.MISSING_KEY, "cell.rated_ah", "rated_ah = 105", ""),
            rig(RefusalKind.WRONG_TYPE, "cell.rated_ah", "rated_ah = 105", "rated_ah = \"105\""),
            rig(RefusalKind.OUT_OF_RANGE, "cell.ceiling_v", "ceiling_v = 3.65", "ceiling_v = 4.2"),
            rig(RefusalKind.OUT_OF_RANGE, "cell.ceiling_v", "ceiling_v = 3.65", "ceiling_v = nan"),
            rig(RefusalKind.UNIT_MISTAKE, "cell.ceiling_v", "ceiling_v = 3.65", "ceiling_v = 3650"),
            rig(RefusalKind.UNIT_MISTAKE, "source.source.max_a", "max_a = 60", "max_a = 60000"),
            rig(RefusalKind.UNKNOWN_WORD, "path.cable.kind", "kind = \"cable\"", "kind = \"cabel\""),
            rig(RefusalKind.UNKNOWN_WORD, "source.source.stops", "\"relay\"]", "\"k2\"]"),
            rig(RefusalKind.UNKNOWN_WORD, "source.source.stops", "\"relay\"]", "\"output\"]"),
            rig(RefusalKind.PART_OF_NOTHING, "path.source_relay.device", "device = \"source\"", "device = \"sours\""),
            rig(RefusalKind.PART_OF_NOTHING, "path.sink_relay.device", "device = \"sink\"\n", "\n"),
            rig(RefusalKind.SAME_NAME, "probe.cell_01_v.name", "name = \"room_c\"", "name = \"cell_01_v\""),
            rig(RefusalKind.CELL_LABELS, "cell.labels", "rated_ah = 105", "labels = [\"A7\", \"A9\"]\nrated_ah = 105"),
            rig(RefusalKind.SAME_ADDRESS, "probe.terminal_01p_c.address", "0x61", "0x60"),
            rig(RefusalKind.SAME_ADDRESS, "adc.taps.input.bus_v.pin", "pin = 1", "pin = 0"),
            rig(RefusalKind.SAME_LINE, "panel.arm", "arm = 25", "arm = 5"),
            rig(RefusalKind.UNKNOWN_BUS, "probe.cell_01_c.bus", "bus = 3", "bus = 4"),
            rig(RefusalKind.BUS_TOO_FAST, "probe.cell_01_c.bus", "hertz = 100000", "hertz = 400000"),
            rig(RefusalKind.ADDRESS_NOT_OF_CHIP, "shunt.address", "address = 0x40", "address = 0x50"),
            rig(RefusalKind.ADDRESS_NOT_OF_CHIP, "adc.taps.address", "address = 0x48", "address = 0x4c"),
            rig(RefusalKind.ADDRESS_NOT_OF_CHIP, "probe.room_c.address", "address = 0x65", "address = 0x68"),
            rig(RefusalKind.SUPPLY_MISSING, "adc.taps.supply_v", "supply_v = 5.0", ""),
            rig(RefusalKind.SUPPLY_TOO_LOW, "adc.taps.input.cell_01_v.divider", "supply_v = 5.0", "supply_v = 3.3"),
            rig(RefusalKind.NO_TAP, "adc", "measures = \"cell\"\ncell = 1", "measures = \"bus\""),
            rig(RefusalKind.NO_BODY_PROBE, "probe", "place = \"body\"", "place = \"stud\"\npole = \"positive\""),
            rig(RefusalKind.NO_STUD_PAIR, "probe", "pole = \"negative\"\n", "pole = \"positive\"\n"),
            rig(RefusalKind.NO_ROOM_PROBE, "probe", "place = \"room\"", "place = \"shunt\""),
            rig(RefusalKind.NO_CONTACTOR, "path", CONTACTOR, RELAY),
            rig(RefusalKind.NO_FUSE_OR_SHUNT, "path", "kind = \"shunt\"", "kind = \"bar\""),
            rig(RefusalKind.RATING_MISSING, "path.cable.rated_a", "rated_a = 130", ""),
            rig(RefusalKind.SCALE_TOO_SHORT, "shunt.full_scale_a", "full_scale_a = 163.84", "full_scale_a = 120"),
            rig(RefusalKind.SCALE_BEYOND_CHIP, "shunt.full_scale_a", "full_scale_a = 163.84", "full_scale_a = 400"),
            rig(RefusalKind.FUSE_OVER_CABLE, "path.fuse.rated_a", "rated_a = 130", "rated_a = 110"),
            rig(RefusalKind.FUSE_CANNOT_BREAK, "path.fuse.breaks_a", "breaks_a = 20000", "breaks_a = 6000"),
            rig(RefusalKind.CONTACTOR_CANNOT_BREAK, "path.contactor.breaks_a", "breaks_a = 200\n", "breaks_a = 40\n"),
            rig(RefusalKind.CONTACTOR_CANNOT_BREAK, "path.contactor.both_directions", "both_directions = true",
                    "both_directions = false"),
            rig(RefusalKind.SAME_STOP, "source.source.stops", "\"relay\"]", "\"contactor\"]"),
            rig(RefusalKind.NO_PRECHARGE, "bus_side.precharge_ohms", "precharge_ohms = 1.0", ""),
            rig(RefusalKind.NO_PRECHARGE, "panel.precharge", "precharge = 6\n", "\n"),
            rig(RefusalKind.PRECHARGE_SLOW, "bus_side.precharge_ohms", "precharge_ohms = 1.0", "precharge_ohms = 10"),
            rig(RefusalKind.DECAY_SHORT, "bus_side.decay_s", "decay_s = 4", "decay_s = 2"),
            rig(RefusalKind.LOOP_NOT_LATCHING, "guards.latching", "latching = true", "latching = false"),
            rig(RefusalKind.LOOP_CONTACT_MISSING, "guards.loop_contacts", "\"thermal_cutout\", ", ""),
            rig(RefusalKind.HEARTBEAT_HOLD, "guards.heartbeat_longest_s", "longest_s = 1.0", "longest_s = 2.5"),
            rig(RefusalKind.SOURCE_LIMIT_HIGH, "source.source.max_v", "max_v = 3.65", "max_v = 15"),
            rig(RefusalKind.SINK_QUITS_EARLY, "sink.sink.min_v", "min_v = 2.0", "min_v = 2.8"),
            rig(RefusalKind.WIRE_TIME, "scan_ms", "hertz = 100000", "hertz = 10000"),
            rig(RefusalKind.PROBE_SLOW, "probe.cell_01_c.period_ms", "period_ms = 200", "period_ms = 5000"),
            night(RefusalKind.CEILING_HIGH, "step.1.ceiling_v", "ceiling_v = 3.60", "ceiling_v = 3.645"),
            night(RefusalKind.CUT_OFF_LOW, "step.3.cut_off_v", "cut_off_v = 2.50", "cut_off_v = 2.40"),
            night(RefusalKind.OVER_WEAKEST, "step.3.rate_c", "rate_c = 0.1\n", "rate_c = 0.98\n"),
            night(RefusalKind.CHARGE_FAST, "step.1.rate_c", "rate_c = 0.2\n", "rate_c = 0.6\n"),
            night(RefusalKind.TAPER_NOT_BELOW, "step.1.taper_c", "taper_c = 0.05", "taper_c = 0.2"),
            night(RefusalKind.REST_SHORT, "step.2.at_least_min", "at_least_min = 120", "at_least_min = 10"),
            night(RefusalKind.REST_SHORT, "step.2.at_most_min", "at_most_min = 180", "at_most_min = 60"),
            night(RefusalKind.PARK_SHARE, "step.9.share", "share = 0.40", "share = 0.80"),
            night(RefusalKind.NOT_PARKED, "step.9.kind", "kind = \"park\"\nrate_c = 0.2\nshare = 0.40",
                    "kind = \"charge\"\nrate_c = 0.2\ntaper_c = 0.05"),
            night(RefusalKind.TWO_RATES, "step.1.amps", "rate_c = 0.2\n", "rate_c = 0.2\namps = 21\n"));

    /** Provoked by a test of their own below, of calibrations in {@link CalibrationKeysTest}. */
    private static final Set<RefusalKind> APART = EnumSet.of(RefusalKind.NOT_READABLE, RefusalKind.NOT_UTF8,
            RefusalKind.TAP_POOR, RefusalKind.TAP_NAMED, RefusalKind.ONE_STOP, RefusalKind.NO_WINDOW,
            RefusalKind.NO_STEPS, RefusalKind.PROTECTION_LATE, RefusalKind.TOO_LARGE, RefusalKind.UTF_16,
            RefusalKind.BYTE_ORDER_MARK, RefusalKind.NUL_BYTES, RefusalKind.PARK_FROM_UNKNOWN, RefusalKind.TOO_MANY_STEPS,
            RefusalKind.QUIT_LATE, RefusalKind.CONTACT_SLOW, RefusalKind.PROTECTION_SLOW, RefusalKind.PROBE_LAGS,
            RefusalKind.PROBE_POOR, RefusalKind.NO_REST, RefusalKind.CEILING_LOW, RefusalKind.TAPER_HIGH,
            RefusalKind.PROTECTION_INSIDE, RefusalKind.EMPTIED_AFTER_RECOVERY, RefusalKind.PART_DIES,
            RefusalKind.NO_PROOF_OF_LIFE, RefusalKind.NO_SECOND_SUM,
            RefusalKind.CALIBRATION_ALTERED, RefusalKind.CALIBRATION_STRANGE, RefusalKind.CALIBRATION_TWICE, RefusalKind.CALIBRATION_EXPIRED);

    @TestFactory
    Stream<DynamicTest> one_edit_provokes_this_refusal_at_this_key() {
        return EDITS.stream().map(edit -> DynamicTest.dynamicTest(
                edit.kind().number() + " " + edit.key() + ": " + edit.kind().sentence(), () -> provoke(edit)));
    }

    private static void provoke(Edit edit) {
        List<Refusal> refusals = edit.subject().refusals(edit.old(), edit.replacement());

        assertThat(refusals).as(String.valueOf(Reference.printed(refusals)))
                .anySatisfy(refusal -> {
                    assertThat(refusal.kind()).isEqualTo(edit.kind());
                    assertThat(refusal.key()).isEqualTo(edit.key());
                    assertThat(refusal.line()).isPositive();
                    assertThat(refusal.why()).isNotEmpty();
                    assertThat(refusal.print()).doesNotContain("null", "Exception", "org.tomlj", "\n");
                });
    }

    @Test
    void every_kind_is_provoked() {
        Set<RefusalKind> provoked = EnumSet.copyOf(APART);
        EDITS.forEach(edit -> provoked.add(edit.kind()));

        assertThat(provoked).containsExactlyInAnyOrder(RefusalKind.values());
        assertThat(Arrays.stream(RefusalKind.values()).map(kind -> Integer.valueOf(kind.number().substring(1))))
                .doesNotHaveDuplicates().isSorted();
        assertThat(Arrays.stream(RefusalKind.values()).map(RefusalKind::sentence)).doesNotHaveDuplicates();
    }

    @Test
    void a_millivolt_mistake_is_printed_with_line_reason_and_the_volts_that_were_meant() {
        List<Refusal> refusals = Reference.refusals(Reference.rig("ceiling_v = 3.65", "ceiling_v = 3650"));

        assertThat(Reference.printed(refusals)).containsExactly("one-cell.toml:12: cell.ceiling_v = 3650: allowed"
                + " 3…3.65 V, because above it an LFP cell's electrolyte suffers. Did you mean 3.65 V? [R09]");
    }

    @Test
    void a_part_that_would_die_on_the_pack_is_refused_with_both_voltages() {
        List<String> lines = Reference.printed(Reference.refusals(Reference.pack("series = 8", "series = 16",
                "[shunt]", "[shunt]\nchip = \"ina226\"")));

        assertThat(lines).anySatisfy(line -> assertThat(line).contains("shunt.chip = 36 V part on 16 cells: 59.2 V",
                "at most 9 cells", "because its bus pin is on the pack", "[R151]"));
        assertThat(Reference.refusals(Reference.pack("[shunt]", "[shunt]\nchip = \"ina228\""))).isEmpty();
    }

    @Test
    void a_chip_without_an_accumulator_is_named_and_its_rig_has_no_rule_that_compares_two_sums() {
        Read.Sound<Rig> rig = Reference.sound(Reference.spi());

        assertThat(rig.warnings()).extracting(Refusal::kind).containsExactly(RefusalKind.NO_SECOND_SUM);
        assertThat(Rules.of(rig.value())).extracting(Rule::number).contains(9).doesNotContain(37);
        assertThat(rig.value().channels()).extracting(Channel::role).doesNotContain(Role.ACCUMULATED, Role.CLOCK_RATIO);
        assertThat(Limits.of(rig.value()).lines()).anyMatch(line -> line.contains("no charge accumulator"));
        assertThat(Limits.of(Reference.rig().value()).lines()).noneMatch(line -> line.contains("no charge accumulator"));
    }

    @Test
    void a_chip_that_cannot_prove_its_life_refuses_only_the_unattended_night() {
        attendedOnly(Reference.sound(Reference.spi("chip = \"max31856\"\nspi_bus = 0\nselect = 0\nmains_hz = 50",
                "chip = \"max31855\"\nspi_bus = 0\nselect = 0\ncouple = \"T\"")), RefusalKind.NO_PROOF_OF_LIFE);
    }

    @Test
    void a_mistyped_key_names_the_one_that_was_meant_and_the_one_that_is_missing() {
        List<Refusal> refusals = Reference.refusals(Reference.rig("rated_ah = 105", "rated_ha = 105"));

        assertThat(refusals).extracting(Refusal::kind)
                .containsExactlyInAnyOrder(RefusalKind.UNKNOWN_KEY, RefusalKind.MISSING_KEY);
        assertThat(Reference.printed(refusals)).anyMatch(line -> line.contains("Did you mean rated_ah?"));
    }

    @Test
    void all_that_is_wrong_is_found_in_one_reading_in_order_of_line() {
        List<Refusal> refusals = Reference.refusals(Reference.rig("scan_ms = 100", "scan_ms = 1000",
                "kind = \"lug\"", "kind = \"lugg\"", "decay_s = 4", "decay_s = true"));

        assertThat(refusals).extracting(Refusal::kind).containsExactly(RefusalKind.OUT_OF_RANGE,
                RefusalKind.UNKNOWN_WORD, RefusalKind.WRONG_TYPE);
    }

    @Test
    void a_value_that_is_refused_has_no_consequences() {
        for (List<String> edit : List.of(List.of("cut_off_v = 2.50", "cut_off_v = 250"),
                List.of("at_least_min = 120", "at_least_min = -1"), List.of("share = 0.40", "share = \"half\""),
                List.of("rate_c = 0.2\n", "rate_c = 99\n"), List.of("kind = \"rest\"", "kind = \"rests\""))) {
            List<Refusal> refusals =
                    Reference.refusals(Reference.night(Reference.rig(), edit.getFirst(), edit.getLast()));
            assertThat(refusals).as(edit + " " + Reference.printed(refusals)).hasSize(1);
        }
    }

    @Test
    void a_tap_behind_a_poor_divider_is_named_and_refuses_only_the_unattended_night() {
        Read.Sound<Rig> rig = Reference.sound(Reference.rig("divider_percent = 0.0", "divider_percent = 0.5",
                "divider = 1.0", "divider = 2.0"));

        assertThat(rig.warnings()).extracting(Refusal::kind).containsExactly(RefusalKind.TAP_POOR);
        attendedOnly(rig, RefusalKind.TAP_POOR);
    }

    @Test
    void a_calibrated_tap_is_not_named() {
        Read.Sound<Rig> rig = Reference.sound(Reference.rig("# calibration", "calibration"));

        assertThat(rig.warnings()).isEmpty();
    }

    @Test
    void a_way_with_one_stop_refuses_only_the_unattended_night() {
        attendedOnly(Reference.sound(Reference.rig(", \"relay\"]", "]")), RefusalKind.ONE_STOP);
    }

    @Test
    void no_window_and_no_limits_read_back_refuse_only_the_unattended_night() {
        Read.Sound<Rig> readBack =
                Reference.sound(Reference.rig("window_high_v = 3.75", "", "window_low_v = 2.30", ""));
        assertThat(Reference.refusals(Reference.night(readBack))).isEmpty();

        attendedOnly(Reference.sound(Reference.rig("window_high_v = 3.75", "", "window_low_v = 2.30", "",
                "limit_read_back = true", "limit_read_back = false")), RefusalKind.NO_WINDOW);
    }

    @Test
    void a_protection_as_delivered_refuses_only_the_unattended_night() {
        for (List<String> edit : List.of(List.of("high_v = 3.65", "high_v = 3.75"), List.of("low_v = 2.45", "low_v = 2.2"))) {
            Read.Sound<Rig> rig = Reference.sound(Reference.pack(edit.getFirst(), edit.getLast()));

            assertThat(Reference.refusals(Reference.packNight(rig))).extracting(Refusal::kind)
                    .contains(RefusalKind.PROTECTION_LATE);
            assertThat(Reference.refusals(Reference.packNight(rig, "unattended = true", "unattended = false"))).isEmpty();
        }
    }

    @Test
    void uncalibrated_taps_of_a_pack_are_worse_the_higher_they_sit_and_refused_unattended() {
        String[] edits = new String[16];
        for (int i = 0; i < 16; i += 2) {
            edits[i] = "calibration = ";
            edits[i + 1] = "# ";
        }
        Read.Sound<Rig> rig = Reference.sound(Reference.pack(edits));

        assertThat(rig.warnings()).extracting(Refusal::kind).contains(RefusalKind.TAP_POOR);
        assertThat(rig.value().channels(Role.CELL_VOLTS)).extracting(c -> c.uncertainty(3.65))
                .satisfies(u -> assertThat(u.get(0)).isBetween(0.006, 0.007))
                .satisfies(u -> assertThat(u.get(3)).isBetween(0.020, 0.040))
                .satisfies(u -> assertThat(u.get(1)).isLessThan(u.get(2)));
        assertThat(Reference.rig().value().channels(Role.CELL_VOLTS)).hasSize(1);
    }

    @Test
    void what_makes_a_rig_worse_is_named_and_refuses_the_night_that_nobody_watches_where_it_must() {
        for (Object[] row : new Object[][] {
            {RefusalKind.PROBE_LAGS, "lag_s = 8", "lag_s = 30"},
            {RefusalKind.PROBE_POOR, "uncertainty_k = 1.8", "uncertainty_k = 4"},
            {RefusalKind.PROTECTION_SLOW, "delay_s = 3\n", "delay_s = 30\n"},
        }) {
            Read.Sound<Rig> rig = Reference.sound(Reference.pack((String) row[1], (String) row[2]));
            assertThat(rig.warnings()).extracting(Refusal::kind).contains((RefusalKind) row[0]);
            assertThat(Reference.refusals(Reference.packNight(rig))).extracting(Refusal::kind).contains((RefusalKind) row[0]);
        }
        for (Object[] row : new Object[][] {
            {RefusalKind.QUIT_LATE, "quit_v = 21.0", "quit_v = 18.0"},
            {RefusalKind.CONTACT_SLOW, "contact_lag_s = 0.03", "contact_lag_s = 0.2"},
        }) {
            Read.Sound<Rig> rig = Reference.sound(Reference.pack((String) row[1], (String) row[2]));
            assertThat(rig.warnings()).extracting(Refusal::kind).containsExactly((RefusalKind) row[0]);
        }
    }

    @Test
    void what_makes_a_night_worth_less_is_named_and_refuses_nothing() {
        for (Object[] row : new Object[][] {
            {RefusalKind.CEILING_LOW, "ceiling_v = 3.60", "ceiling_v = 3.40"},
            {RefusalKind.TAPER_HIGH, "taper_amps = 3.0", "taper_amps = 12"},
            {RefusalKind.NO_REST, "[[step]]\nkind = \"rest\"\nat_least_min = 120\nat_most_min = 180\n", ""},
        }) {
            Read.Sound<Program> night = Reference.sound(
                    Reference.packNight(Reference.sound(Reference.pack()), (String) row[1], (String) row[2]));
            assertThat(night.warnings()).extracting(Refusal::kind).contains((RefusalKind) row[0]);
        }
        Read.Sound<Program> inside = Reference.sound(
                Reference.packNight(Reference.sound(Reference.pack("high_v = 3.65", "high_v = 3.61"))));
        assertThat(inside.warnings()).extracting(Refusal::kind).contains(RefusalKind.PROTECTION_INSIDE);
        assertThat(Reference.sound(Reference.packNight(Reference.sound(Reference.pack()))).warnings()).isEmpty();
    }

    @Test
    void cells_that_were_never_empty_are_not_parked() {
        Read<Program> read = ProgramFile.read("park.toml", """
                name = "park"
                unattended = false
                [[step]]
                kind = "park"
                rate_c = 0.2
                share = 0.4
                ceiling_v = 3.6
                """, Reference.rig());

        assertThat(Reference.refusals(read)).extracting(Refusal::kind).containsExactly(RefusalKind.PARK_FROM_UNKNOWN);
    }

    @Test
    void cells_that_were_recovered_are_not_emptied_in_the_same_programme() {
        Read<Program> read = ProgramFile.read("programme.toml", """
                name = "up and down"
                unattended = false
                leave_empty = true
                [[step]]
                kind = "recover"
                with = "source"
                rate_c = 0.05
                until_v = 2.6
                [[step]]
                kind = "discharge"
                rate_c = 0.1
                cut_off_v = 2.50
                """, Reference.rig());

        assertThat(Reference.refusals(read)).extracting(Refusal::kind).containsExactly(RefusalKind.EMPTIED_AFTER_RECOVERY);
    }

    @Test
    void a_programme_of_a_thousand_steps_is_refused() {
        Read<Program> read = ProgramFile.read("many.toml", """
                name = "many"
                unattended = false
                leave_empty = true
                [[step]]
                kind = "repeat"
                times = 100
                """ + "[[step.step]]\nkind = \"rest\"\nat_least_min = 30\nat_most_min = 60\n".repeat(10), Reference.rig());

        assertThat(Reference.refusals(read)).extracting(Refusal::kind).containsExactly(RefusalKind.TOO_MANY_STEPS);
    }

    @Test
    void an_encoding_that_an_editor_chose_is_called_by_its_name(@TempDir Path folder) throws IOException {
        String text = Reference.text(Reference.RIG);
        Path file = folder.resolve("rig.toml");
        record Case(RefusalKind kind, byte[] bytes) {}
        for (Case c : List.of(
                new Case(RefusalKind.UTF_16, text.getBytes(StandardCharsets.UTF_16)),
                new Case(RefusalKind.UTF_16, text.getBytes(StandardCharsets.UTF_16LE)),
                new Case(RefusalKind.UTF_16, text.getBytes(StandardCharsets.UTF_16BE)),
                new Case(RefusalKind.BYTE_ORDER_MARK, ("\uFEFF" + text).getBytes(StandardCharsets.UTF_8)),
                new Case(RefusalKind.NUL_BYTES, (text + "\0").getBytes(StandardCharsets.UTF_8)),
                new Case(RefusalKind.NOT_UTF8, text.getBytes(StandardCharsets.ISO_8859_1)),
                new Case(RefusalKind.TOO_LARGE, new byte[10_000_000]))) {
            Files.write(file, c.bytes());
            assertThat(Reference.refusals(RigFile.read(file))).extracting(Refusal::kind).containsExactly(c.kind());
        }
    }

    @Test
    void there_are_at_least_a_hundred_and_twenty_kinds() {
        assertThat(RefusalKind.values()).hasSizeGreaterThanOrEqualTo(120);
    }

    private static void attendedOnly(Read.Sound<Rig> rig, RefusalKind kind) {
        List<Refusal> unattended = Reference.refusals(Reference.night(rig));
        List<Refusal> attended = Reference.refusals(
                Reference.night(rig, "unattended = true", "unattended = false"));

        assertThat(unattended).extracting(Refusal::kind).contains(kind);
        assertThat(unattended).filteredOn(r -> r.kind() == kind).extracting(Refusal::file)
                .allMatch(file -> file.startsWith("one-cell") && !file.contains("night")).isNotEmpty();
        assertThat(attended).extracting(Refusal::kind).doesNotContain(kind);
    }

    @Test
    void a_programme_without_steps_is_refused() {
        for (String steps : List.of("", "step = []\n")) {
            String text = "name = \"n\"\nunattended = false\n" + steps;
            assertThat(Reference.refusals(ProgramFile.read("empty.toml", text, Reference.rig())))
                    .extracting(Refusal::kind).containsExactly(RefusalKind.NO_STEPS);
        }
    }

    @Test
    void a_repeat_is_its_steps_as_often_as_it_says() {
        Read<Program> read = ProgramFile.read("repeat.toml", """
                name = "pulses"
                unattended = false
                leave_empty = true
                [[step]]
                kind = "repeat"
                times = 3
                [[step.step]]
                kind = "pulse"
                with = "sink"
                base_amps = 10
                base_s = 10
                amps = 50
                pulse_s = 1
                [[step.step]]
                kind = "rest"
                at_least_min = 30
                at_most_min = 60
                """, Reference.rig());

        assertThat(Reference.sound(read).value().steps()).hasSize(6).startsWith(
                new Step.Pulse(1, 10, 10_000_000_000L, 50, 1_000_000_000L),
                new Step.Rest(1_800_000_000_000L, 3_600_000_000_000L));
    }

    @Test
    void a_programme_may_leave_cells_empty_if_it_says_so() {
        Read<?> read = ProgramFile.read("short.toml", """
                name = "down"
                unattended = false
                leave_empty = true
                [[step]]
                kind = "discharge"
                amps = 10
                cut_off_v = 2.5
                """, Reference.rig());

        assertThat(Reference.refusals(read)).isEmpty();
    }

    @Test
    void a_missing_file_a_folder_and_bytes_that_are_no_text_are_refused(@TempDir Path folder) throws IOException {
        Path bytes = folder.resolve("bytes.toml");
        Files.write(bytes, new byte[] {'n', (byte) 0xff, (byte) 0xfe});

        assertThat(Reference.refusals(RigFile.read(folder.resolve("none.toml")))).extracting(Refusal::print)
                .containsExactly("none.toml: no such file: allowed a readable file, because without it nothing is known"
                        + " about the rig or the test. Check the name and its permissions. [R01]");
        assertThat(Reference.refusals(RigFile.read(folder))).extracting(Refusal::kind)
                .containsExactly(RefusalKind.NOT_READABLE);
        assertThat(Reference.refusals(RigFile.read(bytes))).extracting(Refusal::kind)
                .containsExactly(RefusalKind.NOT_UTF8);
    }

    @Test
    void every_key_of_the_rig_file_is_missed_when_its_line_is_left_out() {
        List<String> lines = Reference.text(Reference.RIG).lines().toList();
        int keys = 0;
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).matches("[a-z_]+ = .*")) {
                List<String> without = new ArrayList<>(lines);
                without.set(i, "");
                assertThat(Reference.refusals(RigFile.read("rig", String.join("\n", without)))).as(lines.get(i))
                        .isNotEmpty();
                keys++;
            }
        }
        assertThat(keys).isGreaterThan(100);
    }

    @Test
    void no_mutilation_of_the_file_throws_and_every_refusal_is_one_line() {
        Random random = new Random(20_261_125);
        String text = Reference.text(Reference.RIG);
        String letters = "[]{}=\"'.,#_-0179aex\n\\\t \u0007é";
        int refused = 0;
        for (int i = 0; i < 600; i++) {
            StringBuilder mutilated = new StringBuilder(text);
            for (int n = random.nextInt(3); n >= 0; n--) {
                mutilated.setCharAt(random.nextInt(text.length()), letters.charAt(random.nextInt(letters.length())));
            }
            List<Refusal> refusals = Reference.refusals(RigFile.read("rig", mutilated.toString()));
            assertThat(refusals).allSatisfy(refusal -> assertThat(refusal.print()).doesNotContain("\n"));
            refused += refusals.isEmpty() ? 0 : 1;
        }
        assertThat(refused).isBetween(100, 599);
    }

    @Test
    void brackets_in_brackets_without_end_and_quoted_keys_with_line_ends_are_refused_in_one_line() {
        String deep = "a = " + "[".repeat(200_000);
        assertThat(Reference.refusals(RigFile.read("rig", deep))).extracting(Refusal::kind)
                .containsExactly(RefusalKind.TOO_DEEP);
        assertThat(Reference.printed(Reference.refusals(RigFile.read("rig", "\"a\\nb\" = 1\n"))))
                .anyMatch(line -> line.contains("a·b"))
                .noneMatch(line -> line.contains("\n"));
    }

    @Test
    void a_file_that_ends_anywhere_before_its_last_table_is_refused_and_nothing_is_thrown() {
        String text = Reference.text(Reference.RIG);
        int last = text.indexOf("[guards]");
        for (int cut = 0; cut < last; cut += 61) {
            assertThat(Reference.refusals(RigFile.read("rig", text.substring(0, cut)))).isNotEmpty();
        }
    }
}
