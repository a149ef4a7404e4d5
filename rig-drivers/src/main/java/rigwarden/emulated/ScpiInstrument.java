package rigwarden.emulated;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Locale;

/**
 * A source or a sink that understands the part of SCPI-1999 and IEEE 488.2 that every such instrument has: identity,
 * error queue, event status, set points, protection, output, measurements. It keeps its last output when nobody speaks.
 */
public final class ScpiInstrument {
    /** Which headers it has. */
    public enum Kind {
        SOURCE,
        SINK
    }

    /** Where its terminals end. */
    public interface Terminals {
        /** Output on or off at these set points, V and A. */
        void order(boolean on, double volts, double amps);

        double volts();

        double amps();
    }

    /** How this specimen errs: gain relative, offsets in V and A, of what it measures. */
    public record Errors(double voltsGain, double ampsGain, double voltsOffset, double ampsOffset) {}

    private final Kind kind;
    private final Terminals terminals;
    private final Errors errors;
    private final Deque<String> queue = new ArrayDeque<>();
    private boolean on;
    private double volts;
    private double amps;
    private double protectionVolts = 1000;
    private double protectionAmps = 1000;
    private int eventStatus = 128;

    public ScpiInstrument(Kind kind, Terminals terminals, Errors errors) {
        this.kind = kind;
        this.terminals = terminals;
        this.errors = errors;
    }

    /** This instrument in this state at other terminals. */
    public ScpiInstrument copy(Terminals other) {
        ScpiInstrument copy = new ScpiInstrument(kind, other, errors);
        copy.queue.addAll(queue);
        copy.on = on;
        copy.volts = volts;
        copy.amps = amps;
        copy.protectionVolts = protectionVolts;
        copy.protectionAmps = protectionAmps;
        copy.eventStatus = eventStatus;
        return copy;
    }

    /** Takes one message without its terminator; appends what it answers, or nothing. */
    void message(String message, StringBuilder answer) {
        String path = "";
        int start = 0;
        while (start <= message.length()) {
            int end = message.indexOf(';', start);
            String unit = message.substring(start, end < 0 ? message.length() : end).trim();
            if (!unit.isEmpty()) {
                path = unit(unit, path, answer);
            }
            start = end < 0 ? message.length() + 1 : end + 1;
        }
    }

    /** One program message unit; returns the node that the next one starts from. */
    private String unit(String unit, String path, StringBuilder answer) {
        int space = unit.indexOf(' ');
        String header = space < 0 ? unit : unit.substring(0, space);
        String parameter = space < 0 ? "" : unit.substring(space + 1).trim();
        if (header.charAt(0) == '*') {
            common(header, answer);
            return path;
        }
        boolean rooted = header.charAt(0) == ':';
        String full = rooted ? header.substring(1) : path + header;
        int last = full.lastIndexOf(':');
        act(Headers.shortened(full), parameter, answer);
        return last < 0 ? "" : full.substring(0, last + 1);
    }

    private void common(String header, StringBuilder answer) {
        switch (header.toUpperCase(Locale.ROOT)) {
            case "*IDN?" -> answer(answer).append("EMULATED,").append(kind).append(",0,0");
            case "*RST" -> order(false);
            case "*CLS" -> {
                queue.clear();
                eventStatus = 0;
            }
            case "*ESR?" -> {
                answer(answer).append(eventStatus);
                eventStatus = 0;
            }
            case "*OPC?" -> answer(answer).append('1');
            default -> error(-113, "Undefined header", 32);
        }
    }

    private static StringBuilder answer(StringBuilder answer) {
        return answer.isEmpty() ? answer : answer.append(';');
    }

    private void act(String header, String parameter, StringBuilder answer) {
        switch (header) {
            case "SYST:ERR?", "SYST:ERR:NEXT?" ->
                answer(answer).append(queue.isEmpty() ? "0,\"No error\"" : queue.poll());
            case "SYST:VERS?" -> answer(answer).append("1999.0");
            case "SOUR:VOLT" -> setVolts(parameter);
            case "SOUR:CURR" -> setAmps(parameter);
            case "SOUR:VOLT?" -> number(answer, volts);
            case "SOUR:CURR?" -> number(answer, amps);
            case "SOUR:VOLT:PROT" -> protectionVolts = parsed(parameter, protectionVolts);
            case "SOUR:CURR:PROT" -> protectionAmps = parsed(parameter, protectionAmps);
            case "SOUR:VOLT:PROT?" -> number(answer, protectionVolts);
            case "SOUR:CURR:PROT?" -> number(answer, protectionAmps);
            case "OUTP" -> output(Kind.SOURCE, parameter);
            case "INP" -> output(Kind.SINK, parameter);
            case "OUTP?" -> state(Kind.SOURCE, answer);
            case "INP?" -> state(Kind.SINK, answer);
            case "MEAS:VOLT?" ->
                number(answer, terminals.volts() * (1 + errors.voltsGain()) + errors.voltsOffset());
            case "MEAS:CURR?" -> number(answer, terminals.amps() * (1 + errors.ampsGain()) + errors.ampsOffset());
            default -> error(-113, "Undefined header", 32);
        }
    }

    private void setVolts(String parameter) {
        double wanted = parsed(parameter, volts);
        if (wanted > protectionVolts) {
            error(-222, "Data out of range", 16);
            return;
        }
        volts = wanted;
        order(on);
    }

    private void setAmps(String parameter) {
        double wanted = parsed(parameter, amps);
        if (wanted > protectionAmps) {
            error(-222, "Data out of range", 16);
            return;
        }
        amps = wanted;
        order(on);
    }

    private void output(Kind whose, String parameter) {
        boolean yes = parameter.equalsIgnoreCase("ON") || parameter.equals("1");
        boolean no = parameter.equalsIgnoreCase("OFF") || parameter.equals("0");
        if (whose != kind) {
            error(-113, "Undefined header", 32);
        } else if (!yes && !no) {
            error(-224, "Illegal parameter value", 16);
        } else {
            order(yes);
        }
    }

    private void state(Kind whose, StringBuilder answer) {
        if (whose == kind) {
            answer(answer).append(on ? '1' : '0');
        } else {
            error(-113, "Undefined header", 32);
        }
    }

    private void order(boolean output) {
        on = output;
        terminals.order(on, volts, amps);
    }

    private double parsed(String parameter, double otherwise) {
        if (parameter.isEmpty()) {
            error(-109, "Missing parameter", 32);
            return otherwise;
        }
        try {
            return Double.parseDouble(parameter);
        } catch (NumberFormatException e) {
            error(-120, "Numeric data error", 32);
            return otherwise;
        }
    }

    /** NR2 with four decimals, written digit by digit: a double's own text costs more than the rest of the poll. */
    private static void number(StringBuilder answer, double value) {
        StringBuilder text = answer(answer);
        long scaled = Math.round(value * 1e4);
        if (scaled < 0) {
            text.append('-');
            scaled = -scaled;
        }
        long part = scaled % 10_000;
        text.append(scaled / 10_000).append('.');
        text.append((char) ('0' + part / 1000)).append((char) ('0' + part / 100 % 10));
        text.append((char) ('0' + part / 10 % 10)).append((char) ('0' + part % 10));
    }

    private void error(int number, String text, int status) {
        eventStatus |= status;
        if (queue.size() == 16) {
            queue.pollLast();
            queue.add("-350,\"Queue overflow\"");
        } else {
            queue.add(number + ",\"" + text + "\"");
        }
    }
}
