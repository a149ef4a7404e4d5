package rigwarden.serial;

import com.digitalpetri.modbus.Crc16;
import com.digitalpetri.modbus.ModbusPduSerializer;
import com.digitalpetri.modbus.ModbusRtuFrame;
import com.digitalpetri.modbus.exceptions.ModbusException;
import com.digitalpetri.modbus.pdu.ModbusRequestPdu;
import java.nio.ByteBuffer;
import java.util.Arrays;

/** Frames of MODBUS over Serial Line V1.02, 2.5.1: station, function, data, check low byte first. */
final class RtuFrame {
    private static final int LONGEST = 256;

    private RtuFrame() {}

    static byte[] of(int station, ModbusRequestPdu request) {
        ByteBuffer frame = ByteBuffer.allocate(LONGEST);
        frame.put((byte) station);
        try {
            ModbusPduSerializer.DefaultRequestSerializer.INSTANCE.encode(request, frame);
        } catch (ModbusException e) {
            throw new IllegalStateException(e);
        }
        int check = check(Arrays.copyOf(frame.array(), frame.position()));
        frame.put((byte) check).put((byte) (check >> 8));
        return Arrays.copyOf(frame.array(), frame.position());
    }

    private static int check(byte[] bytes) {
        Crc16 crc = new Crc16();
        for (byte one : bytes) {
            crc.update(one & 0xFF);
        }
        return crc.getValue();
    }

    /** Whether the check of a received frame is that of its bytes. */
    static boolean sound(ModbusRtuFrame frame) {
        byte[] pdu = pdu(frame);
        byte[] bytes = new byte[pdu.length + 1];
        bytes[0] = (byte) frame.unitId();
        System.arraycopy(pdu, 0, bytes, 1, pdu.length);
        ByteBuffer crc = frame.crc().duplicate();
        int low = crc.get() & 0xFF;
        return check(bytes) == (low | (crc.get() & 0xFF) << 8);
    }

    /** Function and data of a frame. */
    static byte[] pdu(ModbusRtuFrame frame) {
        ByteBuffer pdu = frame.pdu().duplicate();
        byte[] bytes = new byte[pdu.remaining()];
        pdu.get(bytes);
        return bytes;
    }
}
