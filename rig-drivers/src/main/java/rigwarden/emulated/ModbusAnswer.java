package rigwarden.emulated;

import java.util.Arrays;

/** Bytes that wait to be taken from an instrument that speaks Modbus. */
final class ModbusAnswer {
    private byte[] waiting = {};

    ModbusAnswer copy() {
        ModbusAnswer copy = new ModbusAnswer();
        copy.waiting = waiting.clone();
        return copy;
    }

    void add(byte[] frame) {
        int before = waiting.length;
        waiting = Arrays.copyOf(waiting, before + frame.length);
        System.arraycopy(frame, 0, waiting, before, frame.length);
    }

    int pending() {
        return waiting.length;
    }

    int take(byte[] into) {
        int count = Math.min(into.length, waiting.length);
        System.arraycopy(waiting, 0, into, 0, count);
        waiting = Arrays.copyOfRange(waiting, count, waiting.length);
        return count;
    }

    void cut(int keep) {
        waiting = Arrays.copyOf(waiting, Math.min(keep, waiting.length));
    }
}
