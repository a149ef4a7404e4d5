package rigwarden.rig;

/**
 * The shunt and the chip that reads it: current, charge where the chip sums it, and the pack's end studs on its bus pin.
 *
 * @param chip what reads it
 * @param bus number of the I2C bus
 * @param address I2C address
 * @param ohms nominal resistance of the shunt
 * @param toleranceRelative limits of its resistance, rectangular
 * @param perKelvin temperature coefficient, 1/K, limits ±
 * @param thermoVolts limits of its thermo-electric voltage, V, rectangular
 * @param fullScaleAmps current at the end of the chip's scale, A
 */
public record ShuntMonitor(
        ShuntChip chip,
        int bus,
        int address,
        double ohms,
        double toleranceRelative,
        double perKelvin,
        double thermoVolts,
        double fullScaleAmps) {
    /** With an INA228. */
    public ShuntMonitor(int bus, int address, double ohms, double toleranceRelative, double perKelvin, double thermoVolts,
            double fullScaleAmps) {
        this(ShuntChip.INA228, bus, address, ohms, toleranceRelative, perKelvin, thermoVolts, fullScaleAmps);
    }

    /** Amperes for one code of the current. */
    public double ampsPerCode() {
        return chip.ampsPerCode(fullScaleAmps, ohms);
    }
}
