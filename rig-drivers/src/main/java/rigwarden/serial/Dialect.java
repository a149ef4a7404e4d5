package rigwarden.serial;

import java.nio.charset.StandardCharsets;

/** The words of a source and of a sink: SCPI-1999 and IEEE 488.2 only. */
final class Dialect {
    static final Dialect SOURCE = new Dialect("SOUR:VOLT:PROT ", "SOUR:VOLT:PROT?\n", "OUTP ON\n", "OUTP OFF\n",
            "MEAS:VOLT?;CURR?;:OUTP?;:SYST:ERR?\n");
    static final Dialect SINK = new Dialect("SOUR:CURR:PROT ", "SOUR:CURR:PROT?\n", "INP ON\n", "INP OFF\n",
            "MEAS:VOLT?;CURR?;:INP?;:SYST:ERR?\n");

    static final byte[] VOLTS = bytes("SOUR:VOLT ");
    static final byte[] AMPS = bytes(";CURR ");
    static final byte[] AMPS_ALONE = bytes("SOUR:CURR ");
    static final byte[] IDENTITY = bytes("*IDN?\n");

    final byte[] limit;
    final byte[] limitQuery;
    final byte[] on;
    final byte[] off;
    final byte[] poll;

    private Dialect(String limit, String limitQuery, String on, String off, String poll) {
        this.limit = bytes(limit);
        this.limitQuery = bytes(limitQuery);
        this.on = bytes(on);
        this.off = bytes(off);
        this.poll = bytes(poll);
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
