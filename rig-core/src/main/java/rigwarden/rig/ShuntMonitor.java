package rigwarden.rig;

/**
 * The shunt and the chip that reads it (INA228: current, charge accumulator, and the pack's end studs on its bus pin).
 *
 * @param bus number of the I2C bus
 * @param address I2C address
 * @param ohms nominal resistance of the shunt
 * @param toleranceRelative limits of its resistance, rectangular
 * @param perKelvin temperature coefficient, 1/K, limits ±
 * @param thermoVolts limits of its thermo-electric voltage, V, rectangular
 * @param fullScaleAmps current at the end of the chip's scale, A
 */
public record ShuntMonitor(
        int bus,
        int address,
        double ohms,
        double toleranceRelative,
        double perKelvin,
        double thermoVolts,
        double fullScaleAmps) {}
