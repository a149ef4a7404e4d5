package rigwarden.serial;

import com.fazecast.jSerialComm.SerialPort;

/** A real port through jSerialComm: opened by name, no listener, semi-blocking slices. */
public final class JSerialLine implements SerialLine {
    private static final int SLICE_MILLIS = 100;

    private final SerialPort port;

    public JSerialLine(String name, int baud) {
        port = SerialPort.getCommPort(name);
        port.setBaudRate(baud);
    }

    @Override
    public boolean open() {
        if (!port.openPort()) {
            return false;
        }
        return port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, SLICE_MILLIS, 0);
    }

    @Override
    public int write(byte[] bytes, int length) {
        return port.writeBytes(bytes, length);
    }

    @Override
    public int read(byte[] into) {
        return port.readBytes(into, into.length);
    }

    @Override
    public void close() {
        port.closePort();
    }
}
