package rigwarden.serial;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import rigwarden.rig.Commands;

/** The commands of one instrument, ready to be sent. */
final class Words {
    static final byte[] END = bytes("\n");
    static final byte[] ASK_NAME = bytes("*IDN?\n");

    /** A piece of a message: words, or the place of a number. */
    sealed interface Piece {
        record Text(byte[] bytes) implements Piece {}

        record Volts() implements Piece {}

        record Amps() implements Piece {}

        record Limit() implements Piece {}
    }

    private final byte[] name;
    private final List<Piece> set;
    private final List<Piece> limit;
    private final byte[] askLimit;
    private final byte[] thenOn;
    private final byte[] off;
    private final byte[] poll;
    private final byte[] askError;

    Words(Commands commands) {
        name = bytes(commands.identity());
        set = pieces(commands.set());
        limit = pieces(commands.limit());
        askLimit = line(commands.askLimit());
        thenOn = line((commands.on().startsWith(":") || commands.on().startsWith("*") ? ";" : ";:") + commands.on());
        off = line(commands.off());
        poll = line(commands.poll());
        askError = line(commands.askError());
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private static byte[] line(String text) {
        return bytes(text + "\n");
    }

    private static List<Piece> pieces(String template) {
        List<Piece> pieces = new ArrayList<>();
        int from = 0;
        for (int open = template.indexOf('{'); open >= 0; open = template.indexOf('{', from)) {
            int close = template.indexOf('}', open);
            pieces.add(new Piece.Text(bytes(template.substring(from, open))));
            pieces.add(switch (template.substring(open + 1, close)) {
                case "volts" -> new Piece.Volts();
                case "amps" -> new Piece.Amps();
                case "limit" -> new Piece.Limit();
                case String other -> throw new IllegalArgumentException("no number is called " + other);
            });
            from = close + 1;
        }
        pieces.add(new Piece.Text(bytes(template.substring(from))));
        return List.copyOf(pieces);
    }

    /** How the answer to {@link #ASK_NAME} begins; empty when it is not asked. */
    byte[] name() {
        return name;
    }

    /** Sets the instrument. */
    List<Piece> set() {
        return set;
    }

    /** Sets the instrument's own limit: volts of a source, amperes of a sink. */
    List<Piece> limit() {
        return limit;
    }

    byte[] askLimit() {
        return askLimit;
    }

    /** Ends a set-point message by switching on. */
    byte[] thenOn() {
        return thenOn;
    }

    byte[] off() {
        return off;
    }

    /** Asks for four answers in one line: volts, amperes, state, oldest error. */
    byte[] poll() {
        return poll;
    }

    /** Takes the oldest error out of the queue. */
    byte[] askError() {
        return askError;
    }
}
