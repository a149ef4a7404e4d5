package rigwarden.emulated;

import rigwarden.pack.Chance;

/** How bytes become others on their way. */
final class Garbling {
    private static final int MOST_BITS = 4;

    private Garbling() {}

    /** Turns one to four bits, anywhere. */
    static void bits(byte[] bytes, int offset, int length, Chance chance) {
        int turns = length <= 0 ? 0 : 1 + chance.nextInt(MOST_BITS);
        for (int i = 0; i < turns; i++) {
            int bit = chance.nextInt(8 * length);
            bytes[offset + bit / 8] ^= (byte) (1 << bit % 8);
        }
    }

    /** Makes each byte, with this probability, any byte. */
    static void bytes(byte[] bytes, int offset, int length, double share, Chance chance) {
        for (int i = 0; i < length; i++) {
            if (chance.nextDouble() < share) {
                bytes[offset + i] = (byte) chance.nextInt();
            }
        }
    }
}
