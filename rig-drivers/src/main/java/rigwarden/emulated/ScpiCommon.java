package rigwarden.emulated;

/** The common commands (IEEE 488.2 section 10), apart from the two that take a number. */
final class ScpiCommon {
    private ScpiCommon() {}

    /** Answers a common query; false when there is no such one. */
    static boolean ask(ScpiInstrument instrument, byte[] line, int from, int to) {
        ScpiStatus status = instrument.status;
        ScpiAnswer answer = instrument.answer;
        if (is("IDN", line, from, to)) {
            instrument.identify();
        } else if (is("ESR", line, from, to)) {
            answer.part().whole(status.takeEvents());
        } else if (is("OPC", line, from, to)) {
            answer.part().whole(1);
        } else if (is("STB", line, from, to)) {
            answer.part().whole(status.statusByte());
        } else if (is("ESE", line, from, to)) {
            answer.part().whole(status.eventsEnabled);
        } else if (is("SRE", line, from, to)) {
            answer.part().whole(status.requestsEnabled);
        } else if (is("TST", line, from, to)) {
            answer.part().whole(0);
        } else {
            return false;
        }
        return true;
    }

    /** Carries out a common command; false when there is no such one. */
    static boolean obey(ScpiInstrument instrument, byte[] line, int from, int to) {
        if (is("RST", line, from, to)) {
            instrument.resetSettings();
        } else if (is("CLS", line, from, to)) {
            instrument.status.clear();
        } else if (is("OPC", line, from, to)) {
            instrument.status.complete();
        } else {
            return is("WAI", line, from, to);
        }
        return true;
    }

    /** Whether a piece of a line is that upper-case word, in either case. */
    static boolean is(String word, byte[] line, int from, int to) {
        if (to - from != word.length()) {
            return false;
        }
        for (int i = from; i < to; i++) {
            if (ScpiNumber.upper(line[i]) != word.charAt(i - from)) {
                return false;
            }
        }
        return true;
    }
}
