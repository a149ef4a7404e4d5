package rigwarden.chip.ads1115;

/**
 * How the chip converts: one conversion per order, comparator off.
 *
 * @param range of all inputs
 * @param rate decides the conversion time
 */
public record Ads1115Config(FullScale range, DataRate rate) {
    /** ± 4.096 V, 4 ms a conversion. */
    public static final Ads1115Config CELL_TAPS = new Ads1115Config(FullScale.V_4_096, DataRate.SPS_250);

    /**
     * Word that starts a conversion, and that reads back when it is done.
     *
     * @param input 0…3, AIN0…AIN3 against GND
     */
    int startWord(int input) {
        if (input < 0 || input > 3) {
            throw new IllegalArgumentException("an ADS1115 has inputs 0 to 3, not " + input);
        }
        return Ads1115Registers.OS | Ads1115Registers.MUX_AIN0 + input << Ads1115Registers.MUX_SHIFT
                | range.code() << Ads1115Registers.PGA_SHIFT | Ads1115Registers.SINGLE_SHOT
                | rate.code() << Ads1115Registers.RATE_SHIFT | Ads1115Registers.COMPARATOR_OFF;
    }
}
