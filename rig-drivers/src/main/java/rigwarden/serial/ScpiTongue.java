package rigwarden.serial;

import rigwarden.rig.Commands;

/**
 * Messages and answers as in IEEE 488.2 and SCPI-1999. After each setting the instrument's queue of errors is emptied: an
 * error that stays in it would be taken for one of a later setting.
 */
final class ScpiTongue implements Tongue {
    /** Beyond it a number is one of the standard's marks (9.91E37 is "not a number"), or nonsense. */
    private static final double LARGEST = 1e6;
    private static final double LIMIT_RELATIVE = 0.001;
    private static final double LIMIT_LEAST = 0.01;
    /** More errors than any queue holds. */
    private static final int MOST_ERRORS = 64;

    private enum Awaited {
        NOTHING,
        NAME,
        LIMIT,
        POLL,
        ERROR
    }

    private final Words words;
    private final double limit;
    private final Message message = new Message();
    private final Reply reply = new Reply();
    private final StringBuilder complaint = new StringBuilder();
    private byte[] bytes = {};
    private int length;
    private Act act = Act.NAME;
    private Awaited awaited = Awaited.NOTHING;
    /** Letters of the name that have arrived and fit; negative once one does not. */
    private int named;
    private int errors;
    private double volts;
    private double amps;
    private boolean on;

    ScpiTongue(Commands commands, double limit) {
        words = new Words(commands);
        this.limit = limit;
    }

    @Override
    public Turn begin(Act wanted, double newVolts, double newAmps) {
        act = wanted;
        errors = 0;
        complaint.setLength(0);
        return switch (wanted) {
            case NAME -> words.name().length == 0 ? Turn.DONE : ask(Words.ASK_NAME, Awaited.NAME);
            case LIMIT -> send(message.start().add(words.limit(), 0, 0, limit).add(Words.END));
            case SET -> send(message.start().add(words.set(), newVolts, newAmps, limit).add(Words.END));
            case ON -> send(message.start().add(words.set(), newVolts, newAmps, limit).add(words.thenOn()));
            case OFF -> send(message.start().add(words.off()));
            case POLL -> ask(words.poll(), Awaited.POLL);
        };
    }

    private Turn send(Message said) {
        bytes = said.bytes();
        length = said.length();
        awaited = Awaited.NOTHING;
        return Turn.SEND;
    }

    private Turn ask(byte[] question, Awaited answer) {
        bytes = question;
        length = question.length;
        awaited = answer;
        named = 0;
        reply.start();
        return Turn.ASK;
    }

    @Override
    public Turn sent() {
        return act == Act.LIMIT ? ask(words.askLimit(), Awaited.LIMIT) : ask(words.askError(), Awaited.ERROR);
    }

    @Override
    public Turn take(byte next) {
        if (awaited == Awaited.NAME) {
            return name(next);
        }
        return switch (reply.take(next)) {
            case MORE -> Turn.LISTEN;
            case GARBLED -> Turn.WRONG;
            case COMPLETE -> switch (awaited) {
                case LIMIT -> limit();
                case POLL -> poll();
                case ERROR -> error(reply.fields() == 1);
                case NAME, NOTHING -> Turn.WRONG;
            };
        };
    }

    /** An instrument with another name than the rig file's is never switched on. */
    private Turn name(byte next) {
        if (next == '\n') {
            return named >= words.name().length ? Turn.DONE : Turn.WRONG;
        }
        boolean fits = named >= words.name().length || named >= 0 && next == words.name()[named];
        named = fits ? named + 1 : Integer.MIN_VALUE;
        return Turn.LISTEN;
    }

    private Turn limit() {
        boolean same = reply.fields() == 1
                && Math.abs(reply.value(0) - limit) <= limit * LIMIT_RELATIVE + LIMIT_LEAST;
        return same ? ask(words.askError(), Awaited.ERROR) : Turn.WRONG;
    }

    private Turn poll() {
        double state = reply.value(2);
        if (reply.fields() != 4 || Math.abs(reply.value(0)) > LARGEST || Math.abs(reply.value(1)) > LARGEST
                || state != 0 && state != 1) {
            return Turn.WRONG;
        }
        volts = reply.value(0);
        amps = reply.value(1);
        on = state == 1;
        return error(true);
    }

    /** The last number of an answer is that of an error; more are asked for until there are none. */
    private Turn error(boolean understood) {
        if (!understood || errors > MOST_ERRORS) {
            return Turn.WRONG;
        }
        double number = reply.value(reply.fields() - 1);
        if (number == 0) {
            return errors == 0 ? Turn.DONE : act == Act.POLL ? Turn.COMPLAINED : Turn.REFUSED;
        }
        errors++;
        complaint.append(complaint.isEmpty() ? "" : "; ").append((long) number).append(' ').append(reply.text());
        return ask(words.askError(), Awaited.ERROR);
    }

    @Override
    public byte[] bytes() {
        return bytes;
    }

    @Override
    public int length() {
        return length;
    }

    @Override
    public byte[] fresh() {
        return Words.END;
    }

    @Override
    public byte[] off() {
        return words.off();
    }

    @Override
    public boolean overtakes() {
        return true;
    }

    @Override
    public double volts() {
        return volts;
    }

    @Override
    public double amps() {
        return amps;
    }

    @Override
    public boolean on() {
        return on;
    }

    @Override
    public String complaint() {
        return complaint.toString();
    }
}
