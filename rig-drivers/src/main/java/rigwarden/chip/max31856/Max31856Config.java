package rigwarden.chip.max31856;

/**
 * How the chip converts: one conversion per order, which is what gives it a flag that says done; without averaging.
 *
 * @param type of thermocouple
 * @param mains that the filter rejects
 * @param coldOffsetKelvin added to the chip's own cold-junction temperature, K, −8…7.9375 in steps of 0.0625: what the
 *     terminals are warmer than the chip
 */
public record Max31856Config(Thermocouple type, MainsFilter mains, double coldOffsetKelvin) {
    public Max31856Config {
        Max31856Codec.coldOffsetByte(coldOffsetKelvin);
    }

    /** Type T: the smallest uncertainty of chip and wire near room temperature. */
    public static Max31856Config cellProbe(MainsFilter mains, double coldOffsetKelvin) {
        return new Max31856Config(Thermocouple.T, mains, coldOffsetKelvin);
    }

    /** Byte for CR0 without the bit that begins a conversion. */
    int controlByte() {
        return Max31856Registers.OPEN_DETECTION | mains.code();
    }

    /** Byte for CR1: no averaging. */
    int typeByte() {
        return type.code();
    }

    /** Byte for CJTO. */
    int offsetByte() {
        return Max31856Codec.coldOffsetByte(coldOffsetKelvin);
    }
}
