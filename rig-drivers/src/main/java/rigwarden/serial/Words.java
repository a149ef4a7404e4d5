package rigwarden.serial;

import java.nio.charset.StandardCharsets;

/** The commands of one kind of instrument, ready to be sent. */
final class Words {
    static final byte[] SET_VOLTS = bytes("SOUR:VOLT ");
    static final byte[] THEN_AMPS = bytes(";:SOUR:CURR ");
    static final byte[] SET_AMPS = bytes("SOUR:CURR ");
    static final byte[] END = bytes("\n");

    private final byte[] setLimit;
    private final byte[] askLimit;
    private final byte[] on;
    private final byte[] off;
    private final byte[] poll;

    Words(InstrumentKind kind) {
        String limited = kind.limitsVolts() ? "SOUR:VOLT:PROT" : "SOUR:CURR:PROT";
        setLimit = bytes(limited + " ");
        askLimit = bytes(limited + "?\n");
        on = bytes(";:" + kind.word() + " 1\n");
        off = bytes(kind.word() + " 0\n");
        poll = bytes("MEAS:VOLT?;CURR?;:" + kind.word() + "?;:SYST:ERR?\n");
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    /** Sets the instrument's own limit: volts of a source, amperes of a sink. */
    byte[] setLimit() {
        return setLimit;
    }

    byte[] askLimit() {
        return askLimit;
    }

    /** Ends a set-point message by switching on. */
    byte[] on() {
        return on;
    }

    byte[] off() {
        return off;
    }

    /** Asks for four answers in one line: volts, amperes, state, oldest error. */
    byte[] poll() {
        return poll;
    }
}
