package rigwarden.rig;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import rigwarden.quantity.Quantity;

/** Works out the channels of a scan from the parts, in one fixed order, with the uncertainty that each chain has. */
public final class Channels {
    /** Expanded (k = 2) from limits of a rectangular distribution: 2 / √3. */
    private static final double FROM_LIMITS = 2 / Math.sqrt(3);
    /** INA228 gain error of the shunt input, limits, relative: 0.05 %; from memory (SLYS021A, electrical characteristics). */
    public static final double INA228_GAIN = 0.0005;
    /** INA228 offset of the shunt input, limits, V: 1 µV; from memory (SLYS021A, electrical characteristics). */
    public static final double INA228_OFFSET_VOLTS = 1e-6;
    /** INA228 gain error of the bus input, limits, relative: 0.05 %; from memory (SLYS021A). */
    public static final double INA228_BUS_GAIN = 0.0005;
    /** Codes of the current register at full scale: 2^19 (SLYS021A, equation for CURRENT_LSB). */
    public static final double INA228_FULL_SCALE_CODES = 524288;
    /** Bus input, V a code: 195.3125 µV (SLYS021A, Table 8-1). */
    public static final double INA228_BUS_VOLTS = 195.3125e-6;
    /** ADS1115 at ± 4.096 V: 125 µV a code (SBAS444E, full-scale range table). */
    public static final double ADS1115_VOLTS = 125e-6;
    /** ADS1115 gain error, limits, relative: 0.15 % (SBAS444E, electrical characteristics). */
    public static final double ADS1115_GAIN = 0.0015;
    /** ADS1115 offset, limits, codes at this range; from memory (SBAS444E, electrical characteristics: ± 3 LSB at ± 2.048 V). */
    public static final double ADS1115_OFFSET_CODES = 3;
    /** Highest voltage at an input of the ADS1115 in that range, V. */
    public static final double ADS1115_REACH_VOLTS = 4.096;
    /** Step in which a difference of two taps is stored beside their own codes, V. */
    public static final double CELL_STEP_VOLTS = 10e-6;
    /** MCP9601 hot junction, °C a code (DS20005426, section on the temperature registers). */
    public static final double MCP9601_CELSIUS = 0.0625;
    /** Ratio of host clock to chip clock, one part in 10^9 a code. */
    public static final double RATIO_STEP = 1e-9;

    private final List<Channel> made = new ArrayList<>();
    private final Map<String, ChannelCalibration> calibrations = new HashMap<>();

    private Channels(List<ChannelCalibration> calibrations) {
        calibrations.forEach(one -> this.calibrations.put(one.channel(), one));
    }

    /** The channels of a rig, index = place in the list. */
    public static List<Channel> of(
            long scanNanos,
            ShuntMonitor shunt,
            List<VoltageInput> inputs,
            List<Probe> probes,
            List<Device> devices) {
        return of(scanNanos, shunt, inputs, probes, devices, List.of());
    }

    /** The same, corrected by the calibrations that lie beside the rig file. */
    public static List<Channel> of(long scanNanos, ShuntMonitor shunt, List<VoltageInput> inputs, List<Probe> probes,
            List<Device> devices, List<ChannelCalibration> calibrations) {
        Channels channels = new Channels(calibrations);
        channels.shunt(scanNanos, shunt);
        inputs.forEach(channels::input);
        inputs.stream().filter(i -> i.role() == Role.TAP_VOLTS).forEach(i -> channels.cell(i, inputs));
        probes.forEach(channels::probe);
        channels.switches(scanNanos);
        devices.forEach(channels::device);
        channels.own(scanNanos);
        return List.copyOf(channels.made);
    }

    private void shunt(long period, ShuntMonitor shunt) {
        ShuntChip chip = shunt.chip();
        double gain = FROM_LIMITS * Math.hypot(shunt.toleranceRelative(), chip.gain());
        double offset = FROM_LIMITS * Math.hypot(chip.offsetVolts(), shunt.thermoVolts()) / shunt.ohms();
        double step = shunt.ampsPerCode();
        double reach = shunt.fullScaleAmps();
        add(Calibratable.CURRENT, Role.CURRENT, 0, period, step, 0, gain, offset, -reach, reach, 0);
        if (chip.accumulates()) {
            ChannelCalibration found = calibrations.get(Calibratable.CURRENT);
            add("charge_as", Role.ACCUMULATED, 0, period, found == null ? step : step * found.gain(), 0,
                    found == null ? gain : found.doubt().gainU(), 0, -1e9, 1e9, 0);
            add("clock_ratio", Role.CLOCK_RATIO, 0, period, RATIO_STEP, 1, 0, 0, 0.98, 1.02, 0);
        }
        add(Calibratable.PACK, Role.PACK_VOLTS, 0, period, chip.busVoltsPerCode(), 0, FROM_LIMITS * chip.busGain(),
                FROM_LIMITS * chip.busOffsetVolts(), -1, chip.busBearsVolts(), 0);
    }

    private void input(VoltageInput input) {
        double divider = input.divider() * input.calibration().gain();
        double step = input.converter().voltsPerCode() * divider;
        double reach = Math.min(input.converter().reachVolts(), input.supplyVolts()) * divider;
        double lowest = switch (input.role()) {
            case CELL_VOLTS, TAP_VOLTS -> 1.0;
            default -> -0.5;
        };
        add(input.name(), input.role(), input.cell(), input.periodNanos(), step, input.calibration().offset(),
                gainU(input), offsetU(input), lowest, reach - step, 0);
    }

    /** Expanded, relative: of the calibration, or of gain and divider by their limits. */
    private static double gainU(VoltageInput input) {
        return input.calibration().known()
                ? input.calibration().gainU()
                : FROM_LIMITS * Math.hypot(input.converter().gain(), input.dividerRelative());
    }

    private static double offsetU(VoltageInput input) {
        return input.calibration().known()
                ? input.calibration().offsetU()
                : FROM_LIMITS * input.converter().offsetVolts() * input.divider();
    }

    /** Expanded uncertainty of a tap at a voltage over its island's ground, V. */
    private double expanded(VoltageInput tap, double volts) {
        ChannelCalibration found = calibrations.get(tap.name());
        return found == null ? Math.hypot(gainU(tap) * volts, offsetU(tap)) : found.doubt().expanded(volts);
    }

    /** A cell of an island: its tap less the tap below, or the tap itself where the island's ground is below. */
    private void cell(VoltageInput tap, List<VoltageInput> inputs) {
        Optional<VoltageInput> below = below(tap, inputs);
        int place = 1;
        for (Optional<VoltageInput> next = below; next.isPresent(); next = below(next.get(), inputs)) {
            place++;
        }
        double upper = expanded(tap, place * Envelope.CEILING_V);
        double lower = below.isPresent() ? expanded(below.get(), (place - 1) * Envelope.CEILING_V) : 0;
        add(cellName(tap.cell()), Role.CELL_VOLTS, tap.cell(), tap.periodNanos(), CELL_STEP_VOLTS, 0, 0,
                Math.hypot(upper, lower), 1.0, ADS1115_REACH_VOLTS + 0.5, 0);
    }

    /** The tap below this one on the same island: the one of the next lower cell on the same chip. */
    public static Optional<VoltageInput> below(VoltageInput tap, List<VoltageInput> inputs) {
        return inputs.stream()
                .filter(i -> i.role() == Role.TAP_VOLTS && i.cell() == tap.cell() - 1)
                .filter(i -> i.converter().equals(tap.converter()))
                .findFirst();
    }

    /** Column of a cell's voltage. */
    public static String cellName(int cell) {
        return String.format(Locale.ROOT, "cell_%02d_v", cell);
    }

    private void probe(Probe probe) {
        add(probe.name(), probe.place(), probe.cell(), probe.periodNanos(), probe.chip().celsiusPerCode(), 0, 0,
                probe.uncertaintyKelvin(), -40, 125, probe.lagSeconds());
    }

    private void switches(long period) {
        add("loop_on", Role.LOOP, 0, period, 1, 0, 0, 0, 0, 1, 0);
        add("coil_feed_on", Role.COIL_FEED, 0, period, 1, 0, 0, 0, 0, 1, 0);
        add("contactor_on", Role.FEEDBACK, 0, period, 1, 0, 0, 0, 0, 1, 0);
        add("arm_on", Role.ARM, 0, period, 1, 0, 0, 0, 0, 1, 0);
    }

    private void device(Device device) {
        switch (device) {
            case Device.Programmed p -> instrument(p);
            case Device.PlainCharger _, Device.Inverter _ -> { }
        }
    }

    private void instrument(Device.Programmed device) {
        Instrument instrument = device.instrument();
        String name = device.name();
        long period = instrument.pollNanos();
        double highest = 1.2 * instrument.maxVolts() + 1;
        double most = 1.2 * instrument.maxAmps() + 1;
        boolean source = device.charges();
        add(name + "_v", source ? Role.SOURCE_VOLTS : Role.SINK_VOLTS, 0, period, 1e-4, 0, instrument.voltsU(), 0.01, -1,
                highest, 0);
        add(name + "_a", source ? Role.SOURCE_AMPS : Role.SINK_AMPS, 0, period, 1e-4, 0, instrument.ampsU(), 0.05, -most,
                most, 0);
        add(name + "_on", source ? Role.SOURCE_ON : Role.SINK_ON, 0, period, 1, 0, 0, 0, 0, 1, 0);
    }

    private void own(long period) {
        add("recorder_lag_s", Role.RECORDER_LAG, 0, period, 1e-3, 0, 0, 0, 0, 1e6, 0);
        add("free_bytes", Role.FREE_SPACE, 0, period, 1, 0, 0, 0, 0, 1e18, 0);
        add("lateness_s", Role.LATENESS, 0, period, 1e-6, 0, 0, 0, -1, 1e6, 0);
    }

    private void add(String name, Role role, int cell, long period, double scale, double shift, double gainU,
            double offsetU, double lowest, double highest, double lag) {
        boolean exact = role.quantity() == Quantity.SWITCH;
        ChannelCalibration found = calibrations.get(name);
        if (found == null) {
            made.add(new Channel(made.size(), name, role, cell, period, scale, shift, exact ? 0 : gainU,
                    exact ? 0 : offsetU, lowest, highest, lag));
        } else {
            made.add(new Channel(made.size(), name, role, cell, period, scale * found.gain(), found.corrected(shift),
                    found.doubt().gainU(), found.doubt().offsetU(), found.corrected(lowest), found.corrected(highest), lag,
                    Optional.of(found.doubt())));
        }
    }
}
