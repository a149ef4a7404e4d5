package rigwarden.serial;

import java.util.concurrent.atomic.AtomicBoolean;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.Instrument;
import rigwarden.rig.Rig;
import rigwarden.warden.Failure;

/**
 * Looks after one source or sink: sets its own limit, polls it, carries out orders. {@link #order} and {@link #heard}
 * may be called from another thread than {@link #step}. An instrument keeps its last output when the link dies: its own
 * limit is set and read back before it is ever switched on, and again after each loss of the port.
 */
public final class InstrumentAgent {
    private static final long BACK_OFF_NANOS = 1_000_000_000L;
    private static final double LIMIT_RELATIVE = 0.001;
    private static final double LIMIT_LEAST = 0.01;
    /** Beyond it a number is one of the standard's marks (9.91E37 is "not a number"), or nonsense. */
    private static final double LARGEST = 1e6;

    private final Words words;
    private final Instrument instrument;
    private final double limit;
    private final SerialLine line;
    private final Message message = new Message();
    private final Reply reply = new Reply();
    private final byte[] arrived = new byte[Reply.LONGEST];
    private final AtomicBoolean offWaiting;
    private volatile Order order;
    private volatile Heard heard;
    /** Letters of the name that have arrived and fit; negative once one does not. */
    private int named;
    private AgentState.Phase phase;
    private long due;
    private long asked;
    private long quiet;
    private volatile long until = Long.MAX_VALUE;
    private boolean limited;
    private Order carried;
    private boolean unsure;

    /** Takes up an instrument with what its agent knew. Nothing is sent; an open question is not waited for. */
    public InstrumentAgent(
            Instrument instrument, double limit, SerialLine line, AgentState state) {
        words = new Words(instrument.commands());
        this.instrument = instrument;
        this.limit = limit;
        this.line = line;
        boolean open = switch (state.phase()) {
            case ASKED, LIMITING, NAMING -> true;
            case CLOSED, DRAINING, READY -> false;
        };
        phase = open ? AgentState.Phase.DRAINING : state.phase();
        due = state.dueNanos();
        asked = state.askedNanos();
        quiet = open ? state.askedNanos() : state.quietNanos();
        limited = state.limited();
        order = state.order();
        offWaiting = new AtomicBoolean(state.offWaiting());
        carried = state.carried();
        unsure = state.unsure();
        heard = state.heard();
    }

    /**
     * The agent of one of a rig's programmable devices, before its port is opened. A source's own limit is the highest
     * true voltage of all cells, V; a sink's is the highest current that the rig allows it, A.
     */
    public static InstrumentAgent of(Rig rig, Device.Programmed device, SerialLine line, AgentState state) {
        double volts = Math.min(rig.cells().series() * Envelope.CEILING_V, device.instrument().maxVolts());
        double limit = device.charges() ? volts : rig.ceilingAmps(device);
        return new InstrumentAgent(device.instrument(), limit, line, state);
    }

    /**
     * Puts an order into the mailbox of one. Off overtakes: it is carried out even if another order follows at once.
     *
     * @return false when the instrument is not rated for the set point; Off is ordered instead
     */
    public boolean order(Order wanted) {
        return order(wanted, Long.MAX_VALUE);
    }

    /**
     * The same with an end: an order that is not renewed by then becomes Off, so that an agent outlives a hanging control
     * thread by no more than that.
     *
     * @param untilNanos on the clock that {@link #step} is given
     */
    public boolean order(Order wanted, long untilNanos) {
        until = untilNanos;
        boolean rated = switch (wanted) {
            case Order.Off() -> true;
            case Order.On(var set) -> set.amps() <= instrument.maxAmps() && set.volts() <= instrument.maxVolts();
        };
        Order kept = rated ? wanted : Order.OFF;
        order = kept;
        if (kept instanceof Order.Off) {
            offWaiting.set(true);
        }
        return rated;
    }

    /** The latest answer, or why there is none. */
    public Heard heard() {
        return heard;
    }

    /** Whether the next step may wait for bytes; if not, its caller waits a little instead. */
    boolean listening() {
        return switch (phase) {
            case CLOSED, READY -> false;
            case DRAINING, NAMING, LIMITING, ASKED -> true;
        };
    }

    /** One duty cycle; returns at once when nothing is due. Never throws: what goes wrong is a lost port. */
    public void step(long nanos) {
        try {
            cycle(nanos);
        } catch (RuntimeException e) {
            lose(nanos);
        }
    }

    private void cycle(long nanos) {
        if (order instanceof Order.On && nanos > until) {
            order(Order.OFF);
        }
        if (phase == AgentState.Phase.CLOSED) {
            if (nanos >= due) {
                open(nanos);
            }
            return;
        }
        if (offWaiting.getAndSet(false) && !off(nanos)) {
            return;
        }
        switch (phase) {
            case DRAINING -> drain(nanos);
            case READY -> work(nanos);
            case NAMING -> hearName(nanos);
            case LIMITING, ASKED -> listen(nanos);
            case CLOSED -> { }
        }
    }

    /** Closes the port after an Off, as far as that still goes out. */
    public void close() {
        if (phase != AgentState.Phase.CLOSED) {
            line.write(words.off(), words.off().length);
            line.close();
            phase = AgentState.Phase.CLOSED;
        }
    }

    private void open(long nanos) {
        if (line.open()) {
            unsure = true;
            if (off(nanos)) {
                quiet = nanos;
                phase = AgentState.Phase.DRAINING;
            }
        } else {
            lose(nanos);
        }
    }

    /** Sends Off unless that is already in force; false when the port was lost over it. */
    private boolean off(long nanos) {
        if (carried instanceof Order.Off && !unsure) {
            return true;
        }
        boolean sent = send(words.off(), words.off().length, nanos);
        if (sent) {
            carried = Order.OFF;
            unsure = false;
        }
        return sent;
    }

    private void drain(long nanos) {
        int count = line.read(arrived);
        if (count < 0) {
            lose(nanos);
        } else if (count > 0) {
            quiet = nanos;
        } else if (nanos - quiet >= patience()) {
            if (limited) {
                phase = AgentState.Phase.READY;
            } else if (words.name().length > 0) {
                named = 0;
                if (send(Words.ASK_NAME, Words.ASK_NAME.length, nanos)) {
                    asked = nanos;
                    phase = AgentState.Phase.NAMING;
                }
            } else {
                limit(nanos);
            }
        }
    }

    /** An instrument with another name than the rig file's is never switched on. */
    private void hearName(long nanos) {
        int count = line.read(arrived);
        if (count < 0) {
            lose(nanos);
            return;
        }
        for (int i = 0; i < count; i++) {
            if (arrived[i] == '\n') {
                if (named >= words.name().length) {
                    limit(nanos);
                } else {
                    fail(Failure.NONSENSE, nanos);
                }
                return;
            }
            boolean fits = named >= words.name().length || named >= 0 && arrived[i] == words.name()[named];
            named = fits ? named + 1 : Integer.MIN_VALUE;
        }
        if (nanos - asked >= patience()) {
            fail(Failure.NO_ANSWER, nanos);
        }
    }

    private void limit(long nanos) {
        message.start().add(words.limit(), 0, 0, limit).add(Words.END);
        if (send(message.bytes(), message.length(), nanos)) {
            ask(words.askLimit(), AgentState.Phase.LIMITING, nanos);
        }
    }

    private void work(long nanos) {
        boolean whole = switch (order) {
            case Order.Off() -> off(nanos);
            case Order.On on -> on(on, nanos);
        };
        if (whole && nanos >= due) {
            due = nanos + instrument.pollNanos();
            ask(words.poll(), AgentState.Phase.ASKED, nanos);
        }
    }

    /** It is switched on once after each Off: an instrument that went off by itself stays off. */
    private boolean on(Order.On wanted, long nanos) {
        if (wanted.equals(carried) && !unsure) {
            return true;
        }
        boolean switchedOn = carried instanceof Order.On;
        message.start().add(words.set(), wanted.set().volts(), wanted.set().amps(), limit);
        message.add(switchedOn ? Words.END : words.thenOn());
        carried = wanted;
        unsure = false;
        return send(message.bytes(), message.length(), nanos);
    }

    private void ask(byte[] question, AgentState.Phase then, long nanos) {
        if (send(question, question.length, nanos)) {
            reply.start();
            asked = nanos;
            phase = then;
            listen(nanos);
        }
    }

    private void listen(long nanos) {
        int count = line.read(arrived);
        if (count < 0) {
            lose(nanos);
            return;
        }
        for (int i = 0; i < count; i++) {
            Reply.Outcome outcome = reply.take(arrived[i]);
            if (outcome != Reply.Outcome.MORE) {
                boolean alone = outcome == Reply.Outcome.COMPLETE && i == count - 1;
                if (!alone || !understood(nanos)) {
                    fail(Failure.NONSENSE, nanos);
                }
                return;
            }
        }
        if (nanos - asked >= patience()) {
            fail(Failure.NO_ANSWER, nanos);
        }
    }

    private boolean understood(long nanos) {
        if (phase == AgentState.Phase.LIMITING) {
            limited = reply.fields() == 1
                    && Math.abs(reply.value(0) - limit) <= limit * LIMIT_RELATIVE + LIMIT_LEAST;
            phase = AgentState.Phase.READY;
            due = nanos;
            return limited;
        }
        double on = reply.value(2);
        if (reply.fields() != 4 || Math.abs(reply.value(0)) > LARGEST || Math.abs(reply.value(1)) > LARGEST
                || on != 0 && on != 1) {
            return false;
        }
        phase = AgentState.Phase.READY;
        if (reply.value(3) == 0) {
            heard = new Heard.Answer(reply.value(0), reply.value(1), on == 1, asked);
            unsure = unsure || on == 1 && carried instanceof Order.Off;
        } else {
            unsure = true;
            silent(Failure.NONSENSE, nanos);
        }
        return true;
    }

    private void fail(Failure why, long nanos) {
        silent(why, nanos);
        quiet = nanos;
        phase = AgentState.Phase.DRAINING;
    }

    private void lose(long nanos) {
        line.close();
        silent(Failure.NO_ANSWER, nanos);
        limited = false;
        unsure = true;
        due = nanos + BACK_OFF_NANOS;
        phase = AgentState.Phase.CLOSED;
    }

    private void silent(Failure why, long nanos) {
        long since = heard instanceof Heard.Silent before ? before.sinceNanos() : nanos;
        heard = new Heard.Silent(why, since);
    }

    private boolean send(byte[] bytes, int length, long nanos) {
        boolean sent = line.write(bytes, length) == length;
        if (!sent) {
            lose(nanos);
        }
        return sent;
    }

    /** Time that an answer may take; two silent polls are the warden's business. */
    private long patience() {
        return instrument.pollNanos() / 2;
    }

    /** What the agent knows, for a copy that goes on with another line in the same condition. */
    public AgentState state() {
        return new AgentState(phase, due, asked, quiet, limited, order, offWaiting.get(), carried, unsure, heard);
    }
}
