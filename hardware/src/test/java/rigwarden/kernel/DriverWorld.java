package rigwarden.kernel;

import rigwarden.emulated.Ads1115Emulator;
import rigwarden.emulated.Ina226Emulator;
import rigwarden.emulated.Ina228Emulator;
import rigwarden.emulated.Mcp23017Emulator;
import rigwarden.emulated.Mcp9601Emulator;
import rigwarden.pack.Chance;

/** The emulated I2C chips of the contract and what hangs on them: 100 A, 3.3 V, 40 °C. */
final class DriverWorld {
    static final double OHMS = 0.0005;
    static final double AMPS = 100;
    static final double VOLTS = 3.3;
    static final double CELSIUS = 40;

    private DriverWorld() {}

    /** Pins of an expander, of which one is held high from outside. */
    static final class Pins implements Mcp23017Emulator.Wiring {
        private final int held;
        private int driven;

        Pins(int held) {
            this.held = held;
        }

        /** Bits of the pins that the chip drives high. */
        int driven() {
            return driven;
        }

        @Override
        public Mcp23017Emulator.Outside outside(int pin) {
            return pin == held ? Mcp23017Emulator.Outside.HIGH : Mcp23017Emulator.Outside.OPEN;
        }

        @Override
        public void driven(int pin, boolean output, boolean high) {
            driven = output && high ? driven | 1 << pin : driven & ~(1 << pin);
        }
    }

    static Ina226Emulator ina226() {
        return new Ina226Emulator(new Hanging(), Ina226Emulator.Errors.NONE, Chance.of(5, "contract", "plain shunt"));
    }

    static Ina228Emulator ina228() {
        return new Ina228Emulator(new Hanging(), Ina228Emulator.Errors.NONE, Chance.of(5, "contract", "shunt"));
    }

    static Ads1115Emulator ads1115() {
        return new Ads1115Emulator(new Hanging(), Ads1115Emulator.Errors.none(5), Chance.of(5, "contract", "tap"));
    }

    static Mcp9601Emulator mcp9601() {
        return new Mcp9601Emulator(new Hanging(), Mcp9601Emulator.Errors.NONE, Chance.of(5, "contract", "probe"));
    }

    /** What hangs on any of the other chips, since it was made. */
    private static final class Hanging implements Ina226Emulator.Wiring, Ina228Emulator.Wiring, Ads1115Emulator.Wiring, Mcp9601Emulator.Wiring {
        private final long began = System.nanoTime();

        @Override
        public long nanos() {
            return System.nanoTime();
        }

        @Override
        public double shuntVolts() {
            return AMPS * OHMS;
        }

        @Override
        public double shuntVoltSeconds() {
            return shuntVolts() * (nanos() - began) * 1e-9;
        }

        @Override
        public double commonModeVolts() {
            return VOLTS;
        }

        @Override
        public double busVolts() {
            return VOLTS;
        }

        @Override
        public double dieCelsius() {
            return 30;
        }

        @Override
        public double inputVolts(int pin) {
            return pin == 2 ? VOLTS : 0;
        }

        @Override
        public double hotCelsius() {
            return CELSIUS;
        }

        @Override
        public double coldCelsius() {
            return 25;
        }

        @Override
        public boolean open() {
            return false;
        }

        @Override
        public boolean shorted() {
            return false;
        }
    }
}
