package rigwarden.serial;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.util.concurrent.locks.LockSupport;
import rigwarden.rig.Instrument;

/**
 * A real serial port. It is opened by name, so that a link under /dev/serial/by-id finds the same instrument again.
 * A port that was unplugged still says that it is open: −1 from a read is the only sign.
 */
public final class JSerialLine implements SerialLine {
    private static final int SLICE_MILLIS = 100;
    private static final int DATA_BITS = 8;

    private final String name;
    private final Characters characters;
    private SerialPort port;
    private long touchedNanos;

    /**
     * Names a port; nothing is opened.
     *
     * @param name path of the port
     * @param characters how bytes become bits on it
     */
    public JSerialLine(String name, Characters characters) {
        this.name = name;
        this.characters = characters;
        touchedNanos = System.nanoTime();
    }

    /** The port of an instrument, not yet opened. */
    public static JSerialLine of(Instrument instrument) {
        return new JSerialLine(instrument.port(), Characters.of(instrument));
    }

    @Override
    public boolean open() {
        close();
        try {
            SerialPort found = SerialPort.getCommPort(name);
            found.setComPortParameters(characters.baud(), DATA_BITS,
                    characters.stopBits() == 2 ? SerialPort.TWO_STOP_BITS : SerialPort.ONE_STOP_BIT, parity());
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

    private int parity() {
        return switch (characters.parity()) {
            case NONE -> SerialPort.NO_PARITY;
            case EVEN -> SerialPort.EVEN_PARITY;
            case ODD -> SerialPort.ODD_PARITY;
        };
    }

    /** Waits first until the line has been still for as long as its language asks, a few milliseconds at most. */
    @Override
    public int write(byte[] bytes, int length) {
        if (port == null) {
            return 0;
        }
        long free = touchedNanos + characters.stillNanos();
        for (long left = free - System.nanoTime(); left > 0; left = free - System.nanoTime()) {
            LockSupport.parkNanos(left);
        }
        int sent = port.writeBytes(bytes, length);
        touchedNanos = System.nanoTime();
        return sent;
    }

    @Override
    public int read(byte[] into) {
        if (port == null) {
            return -1;
        }
        int count = port.readBytes(into, into.length);
        if (count > 0) {
            touchedNanos = System.nanoTime();
        }
        return count;
    }

    @Override
    public void close() {
        if (port != null) {
            port.closePort();
            port = null;
        }
    }
}
