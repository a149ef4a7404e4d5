package rigwarden.rig;

/**
 * One input of an ADS1115 and what it is tied to.
 *
 * @param name column name of its channel
 * @param role CELL_VOLTS for a cell by itself, TAP_VOLTS for the positive stud of a cell against its island's ground,
 *     BUS_VOLTS
 * @param cell cell number, 0 for the bus
 * @param bus I2C bus
 * @param address I2C address
 * @param input pin AIN0…AIN3
 * @param supplyVolts the chip's own supply, which clips its inputs
 * @param divider measured voltage ÷ pin voltage, 1 without a divider
 * @param dividerRelative limits of the divider's ratio, rectangular
 * @param calibration how the reading is corrected
 * @param periodNanos time between readings
 */
public record VoltageInput(
        String name,
        Role role,
        int cell,
        int bus,
        int address,
        int input,
        double supplyVolts,
        double divider,
        double dividerRelative,
        Calibration calibration,
        long periodNanos) {}
