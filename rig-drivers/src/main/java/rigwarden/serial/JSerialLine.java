package rigwarden.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;

/**
 * A real serial port. It is opened by name, so that a link under /dev/serial/by-id finds the same instrument again.
 * A port that was unplugged still says that it is open: −1 from a read is the only sign.
 */
public final class JSerialLine implements SerialLine {
    private static final int SLICE_MILLIS = 100;
    private static final int DATA_BITS = 8;

    private final String name;
    private final int baud;
    private SerialPort port;

    /**
     * Names a port; nothing is opened.
     *
     * @param name path of the port
     * @param baud bits a second; 8 data bits, 1 stop bit, no parity
     */
    public JSerialLine(String name, int baud) {
        this.name = name;
        this.baud = baud;
    }

    @Override
    public boolean open() {
        close();
        try {
            SerialPort found = SerialPort.getCommPort(name);
            found.setComPortParameters(baud, DATA_BITS, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
            found.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, SLICE_MILLIS, 0);
            if (!found.openPort()) {
                return false;
            }
            port = found;
            return true;
        } catch (SerialPortInvalidPortException e) {
            return false;
        }
    }

    @Override
    public int write(byte[] bytes, int length) {
        return port == null ? 0 : port.writeBytes(bytes, length);
    }

    @Override
    public int read(byte[] into) {
        return port == null ? -1 : port.readBytes(into, into.length);
    }

    @Override
    public void close() {
        if (port != null) {
            port.closePort();
            port = null;
        }
    }
}
