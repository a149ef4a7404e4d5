package rigwarden.emulated;

import java.util.HashMap;
import java.util.Map;
import rigwarden.pack.Node;
import rigwarden.pack.World;
import rigwarden.rig.Calibratable;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.VoltageInput;

/** What each chip and each instrument of an emulated rig is tied to: the world as its wires, with their defects, show it. */
final class Wirings {
    private static final long COARSE_NANOS = 20_000_000L;
    private static final double REFERENCE_C = 25;
    private static final long SPIKE_NANOS = 2_000_000L;

    private final Rig rig;
    private final Specimen specimen;
    private final World world;
    private final VirtualClock clock;
    private final Defects defects;
    private final Map<String, Double> held = new HashMap<>();
    private double spikeVolts;
    private long switchedNanos = Long.MIN_VALUE / 2;

    Wirings(Rig rig, Specimen specimen, World world, VirtualClock clock, Defects defects) {
        this.rig = rig;
        this.specimen = specimen;
        this.world = world;
        this.clock = clock;
        this.defects = defects;
    }

    /** From now on every switching of the contactor lifts every ADC input by this for two milliseconds, V at the pin. */
    void spikes(double volts) {
        spikeVolts = volts;
    }

    /** A calibrator holds a channel's input at a value in the channel's unit, whatever the world does. */
    void hold(String channel, double value) {
        held.put(channel, value);
    }

    /** Voltage over the shunt's sense screws at a current, V. */
    double senseVolts(double amps) {
        return amps * specimen.shuntOhms() * defects.shuntFactor * (1 + specimen.shuntPerKelvin() * (now().celsius(Node.SHUNT) - REFERENCE_C));
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

    Ina228Emulator.Wiring shuntWiring() {
        double ohms = specimen.shuntOhms();
        double perKelvin = specimen.shuntPerKelvin();
        Calibrated busPin = specimen.busPin();
        return new Ina228Emulator.Wiring() {
            @Override
            public long nanos() {
                return clock.nanos();
            }

            @Override
            public double shuntVolts() {
                World at = now();
                if (held.containsKey(Calibratable.CURRENT)) {
                    return senseVolts(held.get(Calibratable.CURRENT));
                }
                double amps = at.amps() + Ripple.mean(at.rippleAmps(), clock.nanos());
                return amps * ohms * defects.shuntFactor * (1 + perKelvin * (at.celsius(Node.SHUNT) - REFERENCE_C));
            }

            @Override
            public double shuntVoltSeconds() {
                World at = now();
                return ohms * (defects.shuntFactor * tilted(at) + defects.shuntCoulombs);
            }

            @Override
            public double busVolts() {
                return busPin.reading(held.getOrDefault(Calibratable.PACK, now().packVolts()));
            }

            @Override
            public double dieCelsius() {
                return now().celsius(Node.ROOM);
            }
        };
    }

    Ads1115Emulator.Wiring inputWiring(int bus, int address) {
        VoltageInput[] pins = new VoltageInput[4];
        int[] places = new int[4];
        double[] ratios = new double[4];
        double[] offsets = new double[4];
        int lowest = Integer.MAX_VALUE;
        for (VoltageInput input : rig.inputs()) {
            if (input.bus() == bus && input.address() == address) {
                pins[input.input()] = input;
                places[input.input()] = rig.inputs().indexOf(input);
                ratios[input.input()] = specimen.inputRatio(input) / input.divider();
                offsets[input.input()] = specimen.inputOffset(input);
                lowest = input.role() == Role.BUS_VOLTS ? lowest : Math.min(lowest, input.cell());
            }
        }
        int ground = lowest == Integer.MAX_VALUE ? 0 : lowest - 1;
        return new Ads1115Emulator.Wiring() {
            @Override
            public long nanos() {
                return clock.nanos();
            }

            @Override
            public double inputVolts(int pin) {
                VoltageInput input = pins[pin];
                if (input == null) {
                    return 0;
                }
                Double calibrator = held.get(input.name());
                double volts = calibrator != null ? calibrator : input.role() == Role.BUS_VOLTS ? now().busVolts() : overGround(input.cell());
                return (volts + offsets[pin]) * ratios[pin] * defects.inputFactor[places[pin]] + spike();
            }

            // A cut wire is pulled down to the island's ground by the bleed at its input.
            private double overGround(int tap) {
                World at = now();
                return at.tapCut(tap) ? 0 : at.tapVolts(tap) - at.tapVolts(ground);
            }
        };
    }

    private double spike() {
        return clock.nanos() - switchedNanos < SPIKE_NANOS ? spikeVolts : 0;
    }

    Mcp9601Emulator.Wiring probeWiring(int bead) {
        return new Mcp9601Emulator.Wiring() {
            @Override
            public long nanos() {
                return clock.nanos();
            }

            @Override
            public double hotCelsius() {
                return now().beadCelsius(bead) + defects.probeKelvin[bead];
            }

            @Override
            public double coldCelsius() {
                return now().celsius(Node.ROOM);
            }

            @Override
            public boolean open() {
                return defects.probeOpen[bead];
            }

            @Override
            public boolean shorted() {
                return defects.probeShorted[bead];
            }
        };
    }

    Terminals terminals(Device device) {
        int place = place(device);
        return device.charges() ? sourceTerminals(place) : sinkTerminals(place);
    }

    /** Its sense leads sit on the cells' outer studs, whatever its output does. */
    private Terminals sourceTerminals(int place) {
        return new Terminals() {
            @Override
            public void order(boolean on, double volts, double amps) {
                world.advanceTo(clock.nanos());
                world.source(place, on, volts, amps);
            }

            @Override
            public double volts() {
                return now().packVolts();
            }

            @Override
            public double amps() {
                return now().sourceAmps(place);
            }
        };
    }

    private Terminals sinkTerminals(int place) {
        return new Terminals() {
            @Override
            public void order(boolean on, double volts, double amps) {
                world.advanceTo(clock.nanos());
                world.sink(place, on, amps);
            }

            @Override
            public double volts() {
                return now().sinkVolts(place);
            }

            @Override
            public double amps() {
                return now().sinkAmps(place);
            }
        };
    }
}
