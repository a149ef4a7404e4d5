package rigwarden.kernel;

import rigwarden.emulated.Ads1220Emulator;
import rigwarden.emulated.Couple;
import rigwarden.emulated.Max31855Emulator;
import rigwarden.emulated.Max31856Emulator;

/** What hangs on the SPI chips of the contract: a couple of type T at 40 °C, its chip at 25 °C, and 1.65 V at input 2. */
final class SpiWorld implements Max31856Emulator.Wiring, Max31855Emulator.Wiring, Ads1220Emulator.Wiring {
    @Override
    public long nanos() {
        return System.nanoTime();
    }

    @Override
    public double emfMillivolts() {
        return Couple.T.millivolts(40, 25);
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
    public boolean outsideSupply() {
        return false;
    }

    @Override
    public boolean shortedToGround() {
        return false;
    }

    @Override
    public boolean shortedToSupply() {
        return false;
    }

    @Override
    public double inputVolts(int pin) {
        return pin == 2 ? 1.65 : 0;
    }

    @Override
    public double referenceVolts(int pair) {
        return 0;
    }

    @Override
    public double dieCelsius() {
        return 25;
    }
}
