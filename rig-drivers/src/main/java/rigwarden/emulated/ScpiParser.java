package rigwarden.emulated;

/** Splits messages into units and headers into mnemonics (IEEE 488.2-1992 and SCPI-1999 volume 1, from memory). */
final class ScpiParser {
    private static final int CAPACITY = 512;

    private final ScpiInstrument instrument;
    private final ScpiNumber number = new ScpiNumber();
    private final byte[] line = new byte[CAPACITY];
    private int length;
    private boolean overrun;
    private int at;
    private ScpiNode path;

    ScpiParser(ScpiInstrument instrument) {
        this.instrument = instrument;
        path = instrument.root();
    }

    void continueFrom(ScpiParser other) {
        System.arraycopy(other.line, 0, line, 0, other.length);
        length = other.length;
        overrun = other.overrun;
    }

    void receive(byte[] bytes, int count) {
        for (int i = 0; i < count; i++) {
            if (bytes[i] == '\n') {
                end();
            } else if (length < CAPACITY) {
                line[length++] = bytes[i];
            } else {
                overrun = true;
            }
        }
    }

    private void end() {
        if (overrun) {
            instrument.status.fail(-363);
        } else {
            message();
        }
        length = 0;
        overrun = false;
    }

    private void message() {
        instrument.answer.begin();
        path = instrument.root();
        at = 0;
        int error = 0;
        while (at < length && error == 0) {
            skipBlanks();
            if (at < length && line[at] != ';') {
                error = line[at] == '*' ? common() : header();
            }
            at++;
        }
        if (error != 0) {
            instrument.status.fail(error);
        }
        if (!instrument.answer.end()) {
            instrument.status.fail(-430);
        }
    }

    private int header() {
        if (line[at] == ':') {
            path = instrument.root();
            at++;
        }
        ScpiNode node = path;
        while (true) {
            int from = at;
            while (at < length && ScpiNumber.isLetter(line[at])) {
                at++;
            }
            ScpiNode child = node.child(line, from, at);
            if (child == node) {
                return at < length && line[at] < 0 ? -101 : -113;
            }
            if (!suffixIsOne()) {
                return -114;
            }
            if (at == length || line[at] != ':') {
                path = node;
                return unit(child.command);
            }
            at++;
            node = child;
        }
    }

    private boolean suffixIsOne() {
        int from = at;
        while (at < length && ScpiNumber.isDigit(line[at])) {
            at++;
        }
        return from == at || at - from == 1 && line[from] == '1';
    }

    private int unit(ScpiCommand command) {
        boolean query = at < length && line[at] == '?';
        if (query) {
            at++;
        }
        if (at < length && line[at] != ';' && !isBlank(line[at])) {
            return -102;
        }
        if (query ? !command.asks : !command.orders) {
            return -113;
        }
        int from = parameter();
        int to = trimmed(from);
        if (query) {
            if (to > from) {
                return -108;
            }
            instrument.ask(command);
            return 0;
        }
        return to == from ? -109 : order(command, from, to);
    }

    private int order(ScpiCommand command, int from, int to) {
        if (command == ScpiCommand.SWITCH && is("ON", from, to)) {
            number.value = 1;
        } else if (command == ScpiCommand.SWITCH && is("OFF", from, to)) {
            number.value = 0;
        } else if (command != ScpiCommand.SWITCH && (is("MAX", from, to) || is("MAXIMUM", from, to))) {
            number.value = instrument.highest(command);
        } else if (command != ScpiCommand.SWITCH && (is("MIN", from, to) || is("MINIMUM", from, to))) {
            number.value = 0;
        } else {
            int error = number.read(line, from, to, unitOf(command));
            if (error != 0) {
                return error;
            }
        }
        instrument.obey(command, number.value);
        return 0;
    }

    private static char unitOf(ScpiCommand command) {
        return switch (command) {
            case VOLTS, PROTECTION, MEASURED_VOLTS -> 'V';
            case AMPS, MEASURED_AMPS -> 'A';
            case BRANCH, ERROR, VERSION, SWITCH -> '\0';
        };
    }

    /** Common commands leave the path where it is. */
    private int common() {
        int from = ++at;
        while (at < length && ScpiNumber.isLetter(line[at])) {
            at++;
        }
        int end = at;
        boolean query = at < length && line[at] == '?';
        if (query) {
            at++;
        }
        int start = parameter();
        int stop = trimmed(start);
        boolean bare = stop == start;
        if (query && !bare) {
            return -108;
        }
        if (query) {
            return ScpiCommon.ask(instrument, line, from, end) ? 0 : -113;
        }
        boolean events = is("ESE", from, end);
        if (events || is("SRE", from, end)) {
            return mask(events, start, stop);
        }
        if (!bare) {
            return -108;
        }
        return ScpiCommon.obey(instrument, line, from, end) ? 0 : -113;
    }

    private int mask(boolean events, int from, int to) {
        if (from == to) {
            return -109;
        }
        int error = number.read(line, from, to, '\0');
        if (error != 0) {
            return error;
        }
        if (number.value < 0 || number.value > 255) {
            instrument.status.fail(-222);
        } else if (events) {
            instrument.status.eventsEnabled = (int) Math.rint(number.value);
        } else {
            instrument.status.requestsEnabled = (int) Math.rint(number.value) & ~64;
        }
        return 0;
    }

    private int parameter() {
        skipBlanks();
        int from = at;
        while (at < length && line[at] != ';') {
            at++;
        }
        return from;
    }

    private int trimmed(int from) {
        int to = at;
        while (to > from && isBlank(line[to - 1])) {
            to--;
        }
        return to;
    }

    private void skipBlanks() {
        while (at < length && isBlank(line[at])) {
            at++;
        }
    }

    private boolean is(String word, int from, int to) {
        return ScpiCommon.is(word, line, from, to);
    }

    private static boolean isBlank(byte letter) {
        return letter >= 0 && letter <= ' ';
    }
}
