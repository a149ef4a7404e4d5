package rigwarden.rig;

/**
 * One input of a converter and what it is tied to.
 *
 * @param name column name of its channel
 * @param role CELL_VOLTS for a cell by itself, TAP_VOLTS for the positive stud of a cell against its island's ground,
 *     BUS_VOLTS
 * @param cell cell number, 0 for the bus
 * @param converter the chip
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
        Converter converter,
        int input,
        double supplyVolts,
        double divider,
        double dividerRelative,
        Calibration calibration,
        long periodNanos) {
    /** Of an ADS1115. */
    public VoltageInput(String name, Role role, int cell, int bus, int address, int input, double supplyVolts, double divider,
            double dividerRelative, Calibration calibration, long periodNanos) {
        this(name, role, cell, new Converter.Ads1115(bus, address), input, supplyVolts, divider, dividerRelative,
                calibration, periodNanos);
    }

    /** I2C bus of its ADS1115. */
    public int bus() {
        return ads1115().bus();
    }

    /** I2C address of its ADS1115. */
    public int address() {
        return ads1115().address();
    }

    private Converter.Ads1115 ads1115() {
        return switch (converter) {
            case Converter.Ads1115 chip -> chip;
            case Converter.Ads1220 chip -> throw new IllegalStateException(chip.chip() + " is no I2C chip");
        };
    }

    /** Highest voltage that it can show, V: the converter's reach or its supply, behind the divider. */
    public double reachVolts() {
        return Math.min(converter.reachVolts(), supplyVolts) * divider;
    }
}
