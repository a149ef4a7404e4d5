package rigwarden.emulated;

import java.nio.charset.StandardCharsets;

/**
 * One mnemonic in an instrument's header tree. It answers to exactly its short or exactly its long form, in either case
 * (SCPI-1999 volume 1, section 6.2.1).
 */
final class ScpiNode {
    private static final int SHORT = 4;
    private static final byte CASE_BIT = 0x20;

    final ScpiCommand command;
    private final byte[] name;
    private final int shortLength;
    private final ScpiNode[] children;

    private ScpiNode(String name, ScpiCommand command, ScpiNode... children) {
        this.name = name.getBytes(StandardCharsets.US_ASCII);
        this.command = command;
        this.children = children;
        boolean vowel = name.length() > SHORT && "AEIOU".indexOf(name.charAt(SHORT - 1)) >= 0;
        shortLength = vowel ? SHORT - 1 : Math.min(SHORT, name.length());
    }

    static ScpiNode source() {
        return new ScpiNode("", ScpiCommand.BRANCH,
                new ScpiNode("MEASURE", ScpiCommand.BRANCH,
                        new ScpiNode("VOLTAGE", ScpiCommand.MEASURED_VOLTS),
                        new ScpiNode("CURRENT", ScpiCommand.MEASURED_AMPS)),
                new ScpiNode("SOURCE", ScpiCommand.BRANCH,
                        new ScpiNode("VOLTAGE", ScpiCommand.VOLTS,
                                new ScpiNode("PROTECTION", ScpiCommand.PROTECTION)),
                        new ScpiNode("CURRENT", ScpiCommand.AMPS)),
                new ScpiNode("OUTPUT", ScpiCommand.SWITCH, new ScpiNode("STATE", ScpiCommand.SWITCH)),
                system());
    }

    static ScpiNode sink() {
        return new ScpiNode("", ScpiCommand.BRANCH,
                new ScpiNode("MEASURE", ScpiCommand.BRANCH,
                        new ScpiNode("VOLTAGE", ScpiCommand.MEASURED_VOLTS),
                        new ScpiNode("CURRENT", ScpiCommand.MEASURED_AMPS)),
                new ScpiNode("SOURCE", ScpiCommand.BRANCH,
                        new ScpiNode("CURRENT", ScpiCommand.AMPS,
                                new ScpiNode("PROTECTION", ScpiCommand.PROTECTION))),
                new ScpiNode("INPUT", ScpiCommand.SWITCH, new ScpiNode("STATE", ScpiCommand.SWITCH)),
                system());
    }

    private static ScpiNode system() {
        return new ScpiNode("SYSTEM", ScpiCommand.BRANCH,
                new ScpiNode("ERROR", ScpiCommand.ERROR, new ScpiNode("NEXT", ScpiCommand.ERROR)),
                new ScpiNode("VERSION", ScpiCommand.VERSION));
    }

    /** The child of that name; this node itself when there is none, which no node is. */
    ScpiNode child(byte[] text, int from, int to) {
        for (ScpiNode child : children) {
            if (child.answersTo(text, from, to)) {
                return child;
            }
        }
        return this;
    }

    private boolean answersTo(byte[] text, int from, int to) {
        int length = to - from;
        if (length != name.length && length != shortLength) {
            return false;
        }
        for (int i = 0; i < length; i++) {
            if ((text[from + i] & ~CASE_BIT) != name[i]) {
                return false;
            }
        }
        return true;
    }
}
