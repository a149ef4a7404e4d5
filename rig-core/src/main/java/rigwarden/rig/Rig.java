package rigwarden.rig;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One rig as its file describes it, checked and complete. Made by {@code rigwarden.rigfile} only.
 *
 * @param name a person's name for it
 * @param scanNanos period of the scan
 * @param cells what is under test
 * @param path every part that carries the current
 * @param wires its buses, and lines that are not the header's own
 * @param shunt shunt and its chip
 * @param inputs cell taps and bus voltage
 * @param probes thermocouples
 * @param panel GPIO lines
 * @param devices sources and sinks, in the file's order; orders name them by their place in this list
 * @param busSide capacitors, pre-charge and bleed behind the contactor
 * @param guards hardware that works with the computer dead
 * @param protection the battery's own protection; empty where there is none
 * @param channels every channel of a scan, by index; see {@link Channels}
 * @param rehearsed what a rehearsal assumes
 * @param calibrations that lie beside its file, in the order of their channels; the channels have them already
 */
public record Rig(
        String name,
        long scanNanos,
        Cells cells,
        List<PathPart> path,
        Wires wires,
        ShuntMonitor shunt,
        List<VoltageInput> inputs,
        List<Probe> probes,
        Panel panel,
        List<Device> devices,
        BusSide busSide,
        Guards guards,
        Optional<Protection> protection,
        List<Channel> channels,
        Rehearsed rehearsed,
        List<ChannelCalibration> calibrations)
        implements Traced {
    public Rig {
        devices = List.copyOf(devices);
        calibrations = List.copyOf(calibrations);
    }

    /** A rig without calibrations beside its file. */
    public Rig(String name, long scanNanos, Cells cells, List<PathPart> path, Wires wires, ShuntMonitor shunt,
            List<VoltageInput> inputs, List<Probe> probes, Panel panel, List<Device> devices, BusSide busSide, Guards guards,
            Optional<Protection> protection, List<Channel> channels, Rehearsed rehearsed) {
        this(name, scanNanos, cells, path, wires, shunt, inputs, probes, panel, devices, busSide, guards, protection, channels,
                rehearsed, List.of());
    }

    /** A rig with I2C buses only, and every line on the header. */
    public Rig(String name, long scanNanos, Cells cells, List<PathPart> path, Map<Integer, Integer> busHertz,
            ShuntMonitor shunt, List<VoltageInput> inputs, List<Probe> probes, Panel panel, List<Device> devices,
            BusSide busSide, Guards guards, Optional<Protection> protection, List<Channel> channels, Rehearsed rehearsed) {
        this(name, scanNanos, cells, path, new Wires(busHertz, Map.of(), List.of()), shunt, inputs, probes, panel, devices,
                busSide, guards, protection, channels, rehearsed);
    }

    /** Clock of each I2C bus, by bus number. */
    public Map<Integer, Integer> busHertz() {
        return wires.i2cHertz();
    }

    /** The same rig with other channels. */
    public Rig with(List<Channel> others) {
        return new Rig(name, scanNanos, cells, path, wires, shunt, inputs, probes, panel, devices, busSide, guards,
                protection, others, rehearsed, calibrations);
    }

    /** The same rig, read with these calibrations: its channels are worked out anew. */
    public Rig calibrated(List<ChannelCalibration> others) {
        return new Rig(name, scanNanos, cells, path, wires, shunt, inputs, probes, panel, devices, busSide, guards,
                protection, Channels.of(scanNanos, shunt, inputs, probes, devices, others), rehearsed, others);
    }

    /** The calibration of a channel; empty where none lies beside the file. */
    public Optional<ChannelCalibration> calibration(String channel) {
        return calibrations.stream().filter(one -> one.channel().equals(channel)).findFirst();
    }

    /** The part with the lowest continuous current, of those that carry this device's: common ones and its own. */
    public PathPart weakest(Device device) {
        PathPart weakest = null;
        for (PathPart part : path) {
            boolean carries = part.common() || part.device().equals(device.name());
            if (carries && (weakest == null || part.continuousAmps() < weakest.continuousAmps())) {
                weakest = part;
            }
        }
        return Objects.requireNonNull(weakest, "a rig has a fuse, a shunt and a contactor");
    }

    /** Highest current with this device: path, cells, protection, the device itself; A. */
    public double ceilingAmps(Device device) {
        double cell = device.charges() ? cells.chargeAmps() : cells.dischargeAmps();
        double part = weakest(device).continuousAmps();
        double own = protection.map(Protection::ratedAmps).orElse(part);
        return Math.min(Math.min(part, own), Math.min(cell, device.maxAmps()));
    }

    private double ceilingAmps(boolean charging) {
        return devices(charging).stream().mapToDouble(this::ceilingAmps).max().orElse(0);
    }

    /** Highest charge current, with the strongest source; A. */
    public double chargeCeilingAmps() {
        return ceilingAmps(true);
    }

    /** Highest discharge current, with the strongest sink; A. */
    public double dischargeCeilingAmps() {
        return ceilingAmps(false);
    }

    /** Device nodes of the buses that its chips hang on. */
    public List<String> nodes() {
        return Stream.concat(busHertz().keySet().stream().sorted().map(bus -> "i2c-" + bus),
                spiPlaces().map(SpiPlace::node).distinct().sorted()).toList();
    }

    /** Where its SPI chips hang: probes and converters. */
    private Stream<SpiPlace> spiPlaces() {
        return Stream.concat(probes.stream().map(Probe::chip).mapMulti((chip, out) -> {
            switch (chip) {
                case ProbeChip.Mcp9601 _ -> { }
                case ProbeChip.Max31856 spi -> out.accept(spi.at());
                case ProbeChip.Max31855 spi -> out.accept(spi.at());
            }
        }), inputs.stream().map(VoltageInput::converter).mapMulti((converter, out) -> {
            switch (converter) {
                case Converter.Ads1115 _ -> { }
                case Converter.Ads1220 spi -> out.accept(spi.at());
            }
        }));
    }

    /** All sources, or all sinks, in order. */
    public List<Device> devices(boolean charging) {
        return devices.stream().filter(d -> d.charges() == charging).toList();
    }
}
