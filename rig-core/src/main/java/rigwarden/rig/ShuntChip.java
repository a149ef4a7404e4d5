package rigwarden.rig;

/** Chips that read a shunt, and what each can bear and show. */
public enum ShuntChip {
    /** 85 V, 20 bits, a charge accumulator (SLYS021A; gain and offset of both inputs from memory (SLYS021A), of the bus ± 2.5 mV). */
    INA228(0.16384, 85, Channels.INA228_GAIN, Channels.INA228_OFFSET_VOLTS, Channels.INA228_BUS_GAIN, 0.0025,
            Channels.INA228_BUS_VOLTS, true),
    /** 36 V, 16 bits, no accumulator (SBOS547B: offset and gain of the shunt input; of the bus input from memory (SBOS547B), ± 7.5 mV). */
    INA226(0.0819, 36, 0.001, 10e-6, 0.001, 0.0075, 1.25e-3, false);

    /** One code of the INA226's shunt register, V (SBOS547B, table 7-1). */
    private static final double INA226_SHUNT_VOLTS = 2.5e-6;

    private final double shuntVolts;
    private final double busBears;
    private final double gain;
    private final double offsetVolts;
    private final double busGain;
    private final double busOffsetVolts;
    private final double busVolts;
    private final boolean accumulates;

    ShuntChip(double shuntVolts, double busBears, double gain, double offsetVolts, double busGain, double busOffsetVolts,
            double busVolts, boolean accumulates) {
        this.shuntVolts = shuntVolts;
        this.busBears = busBears;
        this.gain = gain;
        this.offsetVolts = offsetVolts;
        this.busGain = busGain;
        this.busOffsetVolts = busOffsetVolts;
        this.busVolts = busVolts;
        this.accumulates = accumulates;
    }

    /** Highest voltage of the shunt input, V; a code beyond it is at the end of its register. */
    public double shuntVolts() {
        return shuntVolts;
    }

    /** Highest voltage that its bus pin is made for, V. */
    public double busBearsVolts() {
        return busBears;
    }

    /** Gain error of the shunt input, limits, relative. */
    public double gain() {
        return gain;
    }

    /** Offset of the shunt input, limits, V. */
    public double offsetVolts() {
        return offsetVolts;
    }

    /** Gain error of the bus input, limits, relative. */
    public double busGain() {
        return busGain;
    }

    /** Offset of the bus input, limits, V. */
    public double busOffsetVolts() {
        return busOffsetVolts;
    }

    /** One code of the bus register, V. */
    public double busVoltsPerCode() {
        return busVolts;
    }

    /** Whether it sums the charge by itself, by a clock of its own. */
    public boolean accumulates() {
        return accumulates;
    }

    /** Amperes for one code of the register that the driver reads. */
    double ampsPerCode(double fullScaleAmps, double ohms) {
        return switch (this) {
            case INA228 -> fullScaleAmps / Channels.INA228_FULL_SCALE_CODES;
            case INA226 -> INA226_SHUNT_VOLTS / ohms;
        };
    }
}
