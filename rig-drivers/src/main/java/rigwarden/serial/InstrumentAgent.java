package rigwarden.serial;

import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import rigwarden.rig.Instrument;
import rigwarden.warden.Setpoint;

/**
 * Speaks to one instrument. Its duty cycle is {@link #step}: in a rehearsal the bench calls it, live a thread of its own
 * does. Orders come through a mailbox of one, in which Off overtakes whatever waits; answers are published whole.
 */
public final class InstrumentAgent {
    private static final long BACK_OFF_NANOS = 1_000_000_000L;
    private static final int SLICES = 3;

    /** An order: off, or on at a set point. */
    private record Order(boolean on, Setpoint set) {
        static final Order OFF = new Order(false, Setpoint.NONE);
    }

    /** What the agent remembers beside the line. */
    public record State(boolean open, boolean begun, boolean on, Setpoint sent, long nextPollNanos, long retryNanos,
            Optional<Answer> answer, boolean wantOn, Setpoint want) {
        public static final State FRESH = new State(false, false, false, Setpoint.NONE, 0, 0, Optional.empty(), false,
                Setpoint.NONE);
    }

    private final SerialLine line;
    private final Instrument instrument;
    private final Dialect words;
    private final byte[] out = new byte[64];
    private final byte[] in = new byte[256];
    private final AtomicReference<Order> mailbox = new AtomicReference<>();
    private volatile Optional<Answer> answer;
    private boolean open;
    private boolean begun;
    private boolean on;
    private Setpoint sent;
    private long nextPollNanos;
    private long retryNanos;

    private InstrumentAgent(SerialLine line, Instrument instrument, Dialect words, State state) {
        this.line = line;
        this.instrument = instrument;
        this.words = words;
        open = state.open();
        begun = state.begun();
        on = state.on();
        sent = state.sent();
        nextPollNanos = state.nextPollNanos();
        retryNanos = state.retryNanos();
        answer = state.answer();
        mailbox.set(new Order(state.wantOn(), state.want()));
    }

    /** An agent for a source. */
    public static InstrumentAgent source(SerialLine line, Instrument instrument, State state) {
        return new InstrumentAgent(line, instrument, Dialect.SOURCE, state);
    }

    /** An agent for a sink. */
    public static InstrumentAgent sink(SerialLine line, Instrument instrument, State state) {
        return new InstrumentAgent(line, instrument, Dialect.SINK, state);
    }

    public State state() {
        Order order = mailbox.get();
        return new State(open, begun, on, sent, nextPollNanos, retryNanos, answer, order.on(), order.set());
    }

    /** Orders it off; overtakes everything. */
    public void off() {
        mailbox.set(Order.OFF);
    }

    /** Orders it on at a set point. */
    public void on(Setpoint set) {
        Order order = mailbox.get();
        if (!order.on() || !order.set().equals(set)) {
            mailbox.set(new Order(true, set));
        }
    }

    /** The last answer; empty before the first. */
    public Optional<Answer> answer() {
        return answer;
    }

    /** One duty cycle: at most one exchange of each kind, then back. Never throws. */
    public void step(long nanos) {
        if (!open && (nanos < retryNanos || !opened())) {
            retryNanos = Math.max(retryNanos, nanos + BACK_OFF_NANOS);
            return;
        }
        if (!begun && nanos >= retryNanos) {
            begun = begin();
            retryNanos = begun ? retryNanos : nanos + BACK_OFF_NANOS;
        }
        obey();
        if (open && nanos >= nextPollNanos) {
            nextPollNanos = nanos + instrument.pollNanos();
            poll(nanos);
        }
    }

    private boolean opened() {
        open = line.open();
        begun = false;
        return open;
    }

    /** Output off, own limit set and read back: only then may it ever be switched on. */
    private boolean begin() {
        if (!send(words.off, words.off.length) || !send(Dialect.IDENTITY, Dialect.IDENTITY.length) || receive() <= 0) {
            return false;
        }
        on = false;
        sent = Setpoint.NONE;
        double limit = words == Dialect.SOURCE ? instrument.maxVolts() : instrument.maxAmps();
        int length = put(words.limit, 0);
        length = Numbers.put(out, length, limit);
        out[length++] = '\n';
        if (!send(out, length) || !send(words.limitQuery, words.limitQuery.length)) {
            return false;
        }
        int end = receive();
        return end > 0 && Math.abs(Numbers.get(in, 0, end) - limit) <= 1e-3;
    }

    private void obey() {
        Order order = mailbox.get();
        if (!order.on()) {
            if (on && send(words.off, words.off.length)) {
                on = false;
                sent = Setpoint.NONE;
            }
            return;
        }
        if (!begun) {
            return;
        }
        if (!order.set().equals(sent) && set(order.set())) {
            sent = order.set();
        }
        if (!on && order.set().equals(sent) && send(words.on, words.on.length)) {
            on = true;
        }
    }

    private boolean set(Setpoint set) {
        int length;
        if (words == Dialect.SOURCE) {
            length = put(Dialect.VOLTS, 0);
            length = Numbers.put(out, length, set.volts());
            length = put(Dialect.AMPS, length);
        } else {
            length = put(Dialect.AMPS_ALONE, 0);
        }
        length = Numbers.put(out, length, set.amps());
        out[length++] = '\n';
        return send(out, length);
    }

    private void poll(long nanos) {
        if (!send(words.poll, words.poll.length)) {
            return;
        }
        int end = receive();
        if (end <= 0) {
            return;
        }
        int first = find(';', 0, end);
        int second = find(';', first + 1, end);
        int third = find(';', second + 1, end);
        if (first < 0 || second < 0 || third < 0) {
            return;
        }
        double volts = Numbers.get(in, 0, first);
        double amps = Numbers.get(in, first + 1, second);
        double output = Numbers.get(in, second + 1, third);
        if (Double.isFinite(volts) && Double.isFinite(amps) && (output == 0 || output == 1)) {
            answer = Optional.of(new Answer(volts, amps, output == 1, nanos));
        }
    }

    private int find(char wanted, int from, int end) {
        for (int i = from; i >= 0 && i < end; i++) {
            if (in[i] == wanted) {
                return i;
            }
        }
        return -1;
    }

    private int put(byte[] word, int at) {
        System.arraycopy(word, 0, out, at, word.length);
        return at + word.length;
    }

    private boolean send(byte[] bytes, int length) {
        if (open && line.write(bytes, length) != length) {
            lost();
        }
        return open;
    }

    private void lost() {
        line.close();
        open = false;
        begun = false;
    }

    /**
     * Takes one line of answer, without its end.
     *
     * @return its length; 0 when none came in time, and then whatever comes late is thrown away before the next request
     */
    private int receive() {
        byte[] slice = new byte[64];
        int length = 0;
        for (int i = 0; i < SLICES && open; ) {
            int got = line.read(slice);
            if (got < 0) {
                lost();
                return 0;
            }
            if (got == 0) {
                i++;
                continue;
            }
            for (int k = 0; k < got; k++) {
                if (slice[k] == '\n') {
                    return k == got - 1 ? length : 0;
                }
                if (length == in.length) {
                    return drained();
                }
                in[length++] = slice[k];
            }
        }
        return drained();
    }

    private int drained() {
        byte[] late = new byte[64];
        for (int i = 0; i < SLICES && open && line.read(late) > 0; i++) {
            Arrays.fill(late, (byte) 0);
        }
        return 0;
    }
}
