package rigwarden.emulated;

import java.util.Arrays;

/** A frame of MODBUS over Serial Line V1.02: address, function and data, and two bytes of check, low byte first. */
final class ModbusFrame {
    /** The polynomial with its bits reversed, and what the register is filled with (6.2.2). */
    private static final int POLYNOMIAL = 0xA001;
    private static final int FILL = 0xFFFF;
    private static final int SHORTEST = 4;
    private static final int LONGEST = 256;
    private static final int BYTE = 0xFF;

    private ModbusFrame() {}

    private static int remainder(byte[] bytes, int length) {
        int register = FILL;
        for (int i = 0; i < length; i++) {
            register ^= bytes[i] & BYTE;
            for (int shift = 0; shift < 8; shift++) {
                boolean carry = (register & 1) == 1;
                register >>>= 1;
                if (carry) {
                    register ^= POLYNOMIAL;
                }
            }
        }
        return register;
    }

    /** Whether these bytes are a frame that arrived as it was sent: with its check behind it nothing remains. */
    static boolean whole(byte[] bytes) {
        return bytes.length >= SHORTEST && bytes.length <= LONGEST && remainder(bytes, bytes.length) == 0;
    }

    /** A frame with its check. */
    static byte[] closed(byte... content) {
        int check = remainder(content, content.length);
        byte[] frame = Arrays.copyOf(content, content.length + 2);
        frame[content.length] = (byte) (check & BYTE);
        frame[content.length + 1] = (byte) (check >>> 8);
        return frame;
    }
}
