package rigwarden.emulated;

import java.util.List;
import java.util.OptionalDouble;
import rigwarden.pack.Node;
import rigwarden.pack.World;
import rigwarden.rig.Converter;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.VoltageInput;

/** What stands at the four inputs of one converter, whichever chip that is. */
final class TapWirings {
    private static final int PINS = 4;

    private final Wirings wirings;
    private final VoltageInput[] pins = new VoltageInput[PINS];
    private final int[] places = new int[PINS];
    private final double[] ratios = new double[PINS];
    private final double[] offsets = new double[PINS];
    private final int ground;

    TapWirings(Wirings wirings, Converter converter) {
        this.wirings = wirings;
        Rig rig = wirings.rig();
        Specimen specimen = wirings.specimen();
        List<VoltageInput> own = rig.inputs().stream().filter(i -> i.converter().equals(converter)).toList();
        for (VoltageInput input : own) {
            pins[input.input()] = input;
            places[input.input()] = rig.inputs().indexOf(input);
            ratios[input.input()] = specimen.inputRatio(input) / input.divider();
            offsets[input.input()] = specimen.inputOffset(input);
        }
        ground = own.stream().filter(i -> i.role() != Role.BUS_VOLTS).mapToInt(VoltageInput::cell).min().orElse(1) - 1;
    }

    private double volts(int pin) {
        VoltageInput input = pins[pin];
        if (input == null) {
            return 0;
        }
        OptionalDouble calibrator = wirings.held(input.name());
        double volts = calibrator.isPresent() ? calibrator.getAsDouble() : input.role() == Role.BUS_VOLTS ? bus() : overGround(input.cell());
        return (volts + offsets[pin]) * ratios[pin] * wirings.defects().inputFactor[places[pin]] + wirings.spike();
    }

    private double bus() {
        World at = wirings.now();
        return at.busVolts() + Ripple.now(at.rippleVolts(), wirings.nanos());
    }

    // A cut wire is pulled down to the island's ground by the bleed at its input.
    private double overGround(int tap) {
        World at = wirings.now();
        Defects defects = wirings.defects();
        int stud = defects.stud(tap);
        double bar = defects.onBar.getOrDefault(tap, 0.0) * at.barVolts(stud);
        return at.tapCut(stud) ? 0 : at.tapVolts(stud) + bar - at.tapVolts(ground);
    }

    /** An ADS1115. */
    Ads1115Emulator.Wiring ads1115() {
        return new Ads1115Emulator.Wiring() {
            @Override
            public long nanos() {
                return wirings.nanos();
            }

            @Override
            public double inputVolts(int pin) {
                return volts(pin);
            }
        };
    }

    /** An ADS1220, with what its specimen's reference gives between REFP0 and REFN0. */
    Ads1220Emulator.Wiring ads1220(Converter.Ads1220 own) {
        double reference = own.external() ? own.referenceVolts() * (1 + wirings.specimen().chips().reference(own)) : 0;
        return new Ads1220Emulator.Wiring() {
            @Override
            public long nanos() {
                return wirings.nanos();
            }

            @Override
            public double inputVolts(int pin) {
                return volts(pin);
            }

            @Override
            public double referenceVolts(int pair) {
                return pair == 0 ? reference : 0;
            }

            @Override
            public double dieCelsius() {
                return wirings.now().celsius(Node.ROOM);
            }
        };
    }
}
