package rigwarden.emulated;

import java.nio.charset.StandardCharsets;
import rigwarden.serial.SerialLine;

/** A serial port with an instrument at its other end, behind the same type as a real one. */
public final class EmulatedLine implements SerialLine {
    /** What may be wrong with it. */
    public enum Mode {
        HEALTHY,
        /** Nothing is heard and nothing is said; the output stays. */
        SILENT,
        /** Every third byte of an answer is wrong. */
        GARBLED,
        /** Answers stop half way. */
        HALF_ANSWER,
        /** The port is gone. */
        UNPLUGGED
    }

    private final ScpiInstrument instrument;
    private final StringBuilder answer = new StringBuilder();
    private final byte[] message = new byte[256];
    private int messageLength;
    private byte[] waiting = new byte[512];
    private int waitingLength;
    private int waitingRead;
    private Mode mode = Mode.HEALTHY;

    public EmulatedLine(ScpiInstrument instrument) {
        this.instrument = instrument;
    }

    /** This line in this state, with a copied instrument. */
    public EmulatedLine copy(ScpiInstrument other) {
        EmulatedLine copy = new EmulatedLine(other);
        copy.mode = mode;
        copy.messageLength = messageLength;
        System.arraycopy(message, 0, copy.message, 0, messageLength);
        copy.waiting = waiting.clone();
        copy.waitingLength = waitingLength;
        copy.waitingRead = waitingRead;
        return copy;
    }

    public ScpiInstrument instrument() {
        return instrument;
    }

    public void mode(Mode mode) {
        this.mode = mode;
    }

    @Override
    public boolean open() {
        return mode != Mode.UNPLUGGED;
    }

    @Override
    public int write(byte[] bytes, int length) {
        if (mode == Mode.UNPLUGGED) {
            return 0;
        }
        if (mode == Mode.SILENT) {
            return length;
        }
        for (int i = 0; i < length; i++) {
            if (bytes[i] == '\n') {
                arrived();
            } else if (messageLength < message.length) {
                message[messageLength++] = bytes[i];
            }
        }
        return length;
    }

    private void arrived() {
        answer.setLength(0);
        instrument.message(new String(message, 0, messageLength, StandardCharsets.US_ASCII), answer);
        messageLength = 0;
        if (answer.isEmpty()) {
            return;
        }
        answer.append('\n');
        int end = mode == Mode.HALF_ANSWER ? answer.length() / 2 : answer.length();
        if (waitingRead == waitingLength) {
            waitingRead = 0;
            waitingLength = 0;
        }
        for (int i = 0; i < end && waitingLength < waiting.length; i++) {
            boolean wrong = mode == Mode.GARBLED && i % 3 == 2;
            waiting[waitingLength++] = (byte) (wrong ? answer.charAt(i) ^ 0x55 : answer.charAt(i));
        }
    }

    @Override
    public int read(byte[] into) {
        if (mode == Mode.UNPLUGGED) {
            return -1;
        }
        if (mode == Mode.SILENT) {
            return 0;
        }
        int count = Math.min(into.length, waitingLength - waitingRead);
        System.arraycopy(waiting, waitingRead, into, 0, count);
        waitingRead += count;
        return count;
    }

    @Override
    public void close() {
        messageLength = 0;
        waitingLength = 0;
        waitingRead = 0;
    }
}
