package rigwarden.serial;

import java.nio.charset.StandardCharsets;

/** The commands of one kind of instrument, ready to be sent. */
final class Words {
    static final byte[] SET_LIMIT = bytes("SOUR:VOLT:PROT ");
    static final byte[] ASK_LIMIT = bytes("SOUR:VOLT:PROT?\n");
    static final byte[] SET_VOLTS = bytes("SOUR:VOLT ");
    static final byte[] SET_AMPS = bytes(";:SOUR:CURR ");
    static final byte[] END = bytes("\n");

    private final byte[] on;
    private final byte[] off;
    private final byte[] poll;

    Words(InstrumentKind kind) {
        on = bytes(";:" + kind.word() + " 1\n");
        off = bytes(kind.word() + " 0\n");
        poll = bytes("MEAS:VOLT?;CURR?;:" + kind.word() + "?;:SYST:ERR?\n");
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
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
