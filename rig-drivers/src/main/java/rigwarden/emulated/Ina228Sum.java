package rigwarden.emulated;

/**
 * The charge and energy accumulators. They count in CURRENT_LSB times seconds of the chip's clock, so its oscillator's
 * error is in them; the cost of a read does not grow with the time since the last one. Charge and energy wrap at 40
 * bits.
 */
final class Ina228Sum {
    private static final double ENERGY_STEP_VOLTS = 16 * 3.2;
    private static final double CHARGE_HALF = 0x1p39;
    private static final double ENERGY_FULL = 0x1p40;

    private final Ina228Emulator.Errors errors;
    private double charge;
    private double energy;
    private double markVoltSeconds;
    private double markBusVolts;
    private long markNanos;
    private boolean chargeOverflowed;
    private boolean energyOverflowed;

    Ina228Sum(Ina228Emulator.Errors errors) {
        this.errors = errors;
    }

    Ina228Sum copy() {
        Ina228Sum copy = new Ina228Sum(errors);
        copy.charge = charge;
        copy.energy = energy;
        copy.markVoltSeconds = markVoltSeconds;
        copy.markBusVolts = markBusVolts;
        copy.markNanos = markNanos;
        return copy;
    }

    void clear() {
        charge = 0;
        energy = 0;
    }

    void mark(Ina228Emulator.Wiring wiring) {
        markVoltSeconds = wiring.shuntVoltSeconds();
        markBusVolts = wiring.busVolts();
        markNanos = wiring.nanos();
    }

    void add(Ina228Emulator.Wiring wiring, double codesPerVolt) {
        double voltSeconds = wiring.shuntVoltSeconds();
        double busVolts = wiring.busVolts();
        long nanos = wiring.nanos();
        double seen = (voltSeconds - markVoltSeconds) * (1 + errors.gain())
                + errors.offsetVolts() * (nanos - markNanos) * 1e-9;
        double counts = seen * (1 + errors.oscillator()) * codesPerVolt;
        charge += counts;
        energy += Math.abs(counts) * (markBusVolts + busVolts) / 2 * (1 + errors.busGain()) / ENERGY_STEP_VOLTS;
        chargeOverflowed = charge >= CHARGE_HALF || charge < -CHARGE_HALF;
        if (chargeOverflowed) {
            charge -= Math.copySign(ENERGY_FULL, charge);
        }
        energyOverflowed = energy >= ENERGY_FULL;
        if (energyOverflowed) {
            energy -= ENERGY_FULL;
        }
        markVoltSeconds = voltSeconds;
        markBusVolts = busVolts;
        markNanos = nanos;
    }

    long charge() {
        return Math.round(charge);
    }

    long energy() {
        return Math.round(energy);
    }

    boolean chargeOverflowed() {
        return chargeOverflowed;
    }

    boolean energyOverflowed() {
        return energyOverflowed;
    }
}
