package rigwarden.chip.ads1220;

/**
 * How the chip converts: one conversion per order at 330 samples a second, gain 1 with the amplifier bypassed, each
 * input against AVSS.
 *
 * @param reference what it measures against
 */
public record Ads1220Config(VoltageReference reference) {
    private static final int PER_SECOND = 330;
    /** The chip's oscillator may be 2 % slow (SBAS501C, electrical characteristics; from memory), and settling takes a little more. */
    private static final double LONGEST = 1.1;

    /**
     * The four registers with one input chosen.
     *
     * @param input 0…3, AIN0…AIN3
     */
    int[] registers(int input) {
        if (input < 0 || input > 3) {
            throw new IllegalArgumentException("an ADS1220 has inputs 0 to 3, not " + input);
        }
        int first = Ads1220Registers.MUX_AIN0 + input << Ads1220Registers.MUX_SHIFT | Ads1220Registers.PGA_BYPASS;
        return new int[] {first, Ads1220Registers.RATE_OF_330 << Ads1220Registers.RATE_SHIFT, reference.bits(), 0};
    }

    /** Longest time from start to result, ns. */
    long longestNanos() {
        return Math.round(LONGEST * 1e9 / PER_SECOND);
    }
}
