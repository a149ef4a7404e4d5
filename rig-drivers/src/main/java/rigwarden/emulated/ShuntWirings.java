package rigwarden.emulated;

import java.util.OptionalDouble;
import rigwarden.pack.Node;
import rigwarden.pack.World;
import rigwarden.rig.Calibratable;

/** The shunt beside B− as the chip across it sees it, whichever chip that is. */
final class ShuntWirings {
    private static final double REFERENCE_C = 25;

    private final Wirings wirings;
    private final double ohms;
    private final double perKelvin;
    private final Calibrated busPin;

    ShuntWirings(Wirings wirings) {
        this.wirings = wirings;
        ohms = wirings.specimen().shuntOhms();
        perKelvin = wirings.specimen().shuntPerKelvin();
        busPin = wirings.specimen().busPin();
    }

    private double shuntVolts() {
        World at = wirings.now();
        OptionalDouble calibrator = wirings.held(Calibratable.CURRENT);
        double amps = calibrator.isPresent() ? calibrator.getAsDouble() : at.amps() + Ripple.mean(at.rippleAmps(), wirings.nanos());
        return senseVolts(at, amps) + wirings.defects().shuntOffsetVolts;
    }

    private double packVolts() {
        OptionalDouble calibrator = wirings.held(Calibratable.PACK);
        return busPin.reading(calibrator.isPresent() ? calibrator.getAsDouble() : wirings.now().packVolts());
    }

    /** Voltage over the shunt's sense screws at a current, V. */
    double senseVolts(double amps) {
        return senseVolts(wirings.now(), amps);
    }

    private double senseVolts(World at, double amps) {
        return amps * ohms * wirings.defects().shuntFactor * (1 + perKelvin * (at.celsius(Node.SHUNT) - REFERENCE_C));
    }

    /** An INA228. */
    Ina228Emulator.Wiring summing() {
        return new Ina228Emulator.Wiring() {
            @Override
            public long nanos() {
                return wirings.nanos();
            }

            @Override
            public double shuntVolts() {
                return ShuntWirings.this.shuntVolts();
            }

            @Override
            public double shuntVoltSeconds() {
                Defects defects = wirings.defects();
                double offset = defects.shuntOffsetVolts * wirings.nanos() * 1e-9 + defects.shuntOffsetVoltSeconds;
                return ohms * (defects.shuntFactor * wirings.tilted(wirings.now()) + defects.shuntCoulombs) + offset;
            }

            @Override
            public double busVolts() {
                return packVolts();
            }

            @Override
            public double dieCelsius() {
                return wirings.now().celsius(Node.ROOM);
            }
        };
    }

    /** An INA226, whose ground is B−. */
    Ina226Emulator.Wiring plain() {
        double offset = wirings.specimen().chips().ina226BusOffset();
        return new Ina226Emulator.Wiring() {
            @Override
            public long nanos() {
                return wirings.nanos();
            }

            @Override
            public double shuntVolts() {
                return ShuntWirings.this.shuntVolts();
            }

            @Override
            public double commonModeVolts() {
                return 0;
            }

            @Override
            public double busVolts() {
                return packVolts() + offset;
            }
        };
    }
}
