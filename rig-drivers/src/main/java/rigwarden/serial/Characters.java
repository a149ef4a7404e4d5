package rigwarden.serial;

import rigwarden.rig.Commands;
import rigwarden.rig.Instrument;
import rigwarden.rig.RegisterMap;

/**
 * How bytes become bits on a line; there are always eight data bits.
 *
 * @param baud bits a second
 * @param parity of each character
 * @param stopBits 1 or 2
 * @param stillNanos silence that must lie before each message
 */
public record Characters(int baud, RegisterMap.Parity parity, int stopBits, long stillNanos) {
    /** Bits of one character, and characters of silence between frames (MODBUS over Serial Line V1.02, 2.5.1.1). */
    private static final double CHARACTER_BITS = 11;
    private static final double STILL_CHARACTERS = 3.5;
    /** Above 19,200 bit/s the silence stays as it is there (the same section). */
    private static final long LEAST_STILL_NANOS = 1_750_000;

    /** As the instrument's language wants it; words need no silence between them. */
    public static Characters of(Instrument instrument) {
        return switch (instrument.speech()) {
            case Commands _ -> new Characters(instrument.baud(), RegisterMap.Parity.NONE, 1, 0);
            case RegisterMap map -> new Characters(instrument.baud(), map.parity(),
                    map.parity() == RegisterMap.Parity.NONE ? 2 : 1, still(instrument.baud()));
        };
    }

    private static long still(int baud) {
        return Math.max(LEAST_STILL_NANOS, Math.round(STILL_CHARACTERS * CHARACTER_BITS / baud * 1e9));
    }
}
