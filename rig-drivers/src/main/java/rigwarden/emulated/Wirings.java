package rigwarden.emulated;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import rigwarden.pack.World;
import rigwarden.rig.Converter;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;

/** What each chip and each instrument of an emulated rig is tied to: the world as its wires, with their defects, show it. */
final class Wirings {
    private static final long COARSE_NANOS = 20_000_000L;
    private static final long SPIKE_NANOS = 2_000_000L;

    private final Rig rig;
    private final Specimen specimen;
    private final World world;
    private final VirtualClock clock;
    private final Defects defects;
    private final PanelLines panel;
    private final Map<String, Double> held = new HashMap<>();
    private double spikeVolts;
    private long switchedNanos = Long.MIN_VALUE / 2;

    Wirings(Rig rig, Specimen specimen, World world, VirtualClock clock, Defects defects) {
        this.rig = rig;
        this.specimen = specimen;
        this.world = world;
        this.clock = clock;
        this.defects = defects;
        panel = new PanelLines(rig, this);
    }

    /** From now on every switching of the contactor lifts every ADC input by this for two milliseconds, V at the pin. */
    void spikes(double volts) {
        spikeVolts = volts;
    }

    /** A calibrator holds a channel's input at a value in the channel's unit, whatever the world does. */
    void hold(String channel, double value) {
        held.put(channel, value);
    }

    /** The calibrator is taken off again. */
    void release(String channel) {
        held.remove(channel);
    }

    /** What a calibrator holds a channel's input at, if it does, in the channel's unit. */
    OptionalDouble held(String channel) {
        Double value = held.get(channel);
        return value == null ? OptionalDouble.empty() : OptionalDouble.of(value);
    }

    /** The contactor's coil is switched just now. */
    void contactorSwitched() {
        switchedNanos = clock.nanos();
    }

    /** Spikes as strong as another rig's, none of them under way. */
    void spikesAsStrongAs(Wirings other) {
        spikeVolts = other.spikeVolts;
    }

    /** Spikes as another rig's, with the one that may be under way. */
    void spikesLike(Wirings other) {
        spikesAsStrongAs(other);
        switchedNanos = other.switchedNanos;
    }

    /** Place of a device among the world's sources, or among its sinks. */
    int place(Device device) {
        return rig.devices(device.charges()).indexOf(device);
    }

    /** The world, moved on if it is more than a little behind. */
    World now() {
        if (clock.nanos() - world.nanos() > COARSE_NANOS) {
            world.advanceTo(clock.nanos());
        }
        return world;
    }

    /** Charge through the shunt as its resistance weighs it, C. */
    double tilted(World at) {
        return at.coulombs() + specimen.shuntPerKelvin() * at.coulombKelvins();
    }

    /** The shunt with its chip. */
    ShuntWirings shunt() {
        return new ShuntWirings(this);
    }

    /** The inputs of one converter. */
    TapWirings taps(Converter converter) {
        return new TapWirings(this, converter);
    }

    /** One probe, by its place in the rig file. */
    ProbeWirings probe(int bead) {
        return new ProbeWirings(this, bead);
    }

    /** The panel's lines. */
    PanelLines panel() {
        return panel;
    }

    Rig rig() {
        return rig;
    }

    Specimen specimen() {
        return specimen;
    }

    Defects defects() {
        return defects;
    }

    long nanos() {
        return clock.nanos();
    }

    /** What a contactor that was switched just now adds at every converter's pin, V. */
    double spike() {
        return clock.nanos() - switchedNanos < SPIKE_NANOS ? spikeVolts : 0;
    }

    /** Moves the world on to this instant. */
    void catchUp() {
        world.advanceTo(clock.nanos());
    }

    Terminals terminals(Device device) {
        int place = place(device);
        int number = rig.devices().indexOf(device);
        return device.charges() ? sourceTerminals(place, number) : sinkTerminals(place, number);
    }

    /** What the device's own meter makes of so many volts. */
    private double shown(int device, double volts) {
        return volts * defects.meterFactor.getOrDefault(device, 1.0);
    }

    /** Its sense leads sit on the cells' outer studs, whatever its output does. */
    private Terminals sourceTerminals(int place, int device) {
        return new Terminals() {
            @Override
            public void order(boolean on, double volts, double amps) {
                world.advanceTo(clock.nanos());
                world.source(place, on, volts, amps);
            }

            @Override
            public double volts() {
                return shown(device, now().packVolts());
            }

            @Override
            public double amps() {
                return now().sourceAmps(place);
            }
        };
    }

    private Terminals sinkTerminals(int place, int device) {
        return new Terminals() {
            @Override
            public void order(boolean on, double volts, double amps) {
                world.advanceTo(clock.nanos());
                world.sink(place, on, amps);
            }

            @Override
            public double volts() {
                return shown(device, now().sinkVolts(place));
            }

            @Override
            public double amps() {
                return now().sinkAmps(place);
            }
        };
    }
}
