package rigwarden.serial;

import java.util.List;

/** A command under construction; numbers with three decimals, rounded down, so that no set point exceeds its order. */
final class Message {
    private static final int LONGEST = 256;
    private static final double ROUNDING = 1e-6;

    private final byte[] bytes = new byte[LONGEST];
    private int length;

    Message start() {
        length = 0;
        return this;
    }

    Message add(byte[] words) {
        System.arraycopy(words, 0, bytes, length, words.length);
        length += words.length;
        return this;
    }

    /** Appends a number that is not negative and below a million. */
    Message add(double value) {
        long thousandths = (long) (value * 1000 + ROUNDING);
        long divisor = 1000;
        while (thousandths / divisor >= 10) {
            divisor *= 10;
        }
        for (; divisor > 0; divisor /= 10) {
            bytes[length++] = (byte) ('0' + thousandths / divisor % 10);
            if (divisor == 1000) {
                bytes[length++] = '.';
            }
        }
        return this;
    }

    /** Appends a whole message with its numbers. */
    Message add(List<Words.Piece> pieces, double volts, double amps, double limit) {
        for (Words.Piece piece : pieces) {
            switch (piece) {
                case Words.Piece.Text text -> add(text.bytes());
                case Words.Piece.Volts _ -> add(volts);
                case Words.Piece.Amps _ -> add(amps);
                case Words.Piece.Limit _ -> add(limit);
            }
        }
        return this;
    }

    byte[] bytes() {
        return bytes;
    }

    int length() {
        return length;
    }
}
