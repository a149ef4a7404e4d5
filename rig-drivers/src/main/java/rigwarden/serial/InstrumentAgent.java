package rigwarden.serial;

import java.util.Optional;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
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
    /** Silence behind an answer that came too late, after which nothing more of it is to come: one slice of a port. */
    private static final long LATE_NANOS = 100_000_000;
    private static final long BACK_OFF_NANOS = 1_000_000_000L;
    /** An order to switch on that may have been lost is said once more; what went off by itself stays off. */
    private static final int SWITCHINGS = 2;
    private static final int COMPLAINTS = 64;

    private final Tongue tongue;
    private final Instrument instrument;
    private final SerialLine line;
    private final BlockingQueue<Said> complaints = new ArrayBlockingQueue<>(COMPLAINTS);
    private final byte[] arrived = new byte[Reply.LONGEST];
    private final AtomicBoolean offWaiting;
    private volatile Order order;
    private volatile Heard heard;
    private AgentState.Phase phase;
    private Tongue.Act act = Tongue.Act.NAME;
    private Tongue.Turn turn = Tongue.Turn.DONE;
    private long begun;
    private long due;
    private long asked;
    private long quiet;
    private volatile long until = Long.MAX_VALUE;
    private boolean greeted;
    private boolean limited;
    private Order carried;
    private boolean unsure;
    private boolean refused;
    private boolean complained;
    private boolean overtaken;
    private int switchings;

    /** Takes up an instrument with what its agent knew. Nothing is sent; an open question is not waited for. */
    public InstrumentAgent(
            Instrument instrument, double limit, SerialLine line, AgentState state) {
        tongue = Tongue.of(instrument, limit);
        this.instrument = instrument;
        this.line = line;
        boolean open = state.phase() == AgentState.Phase.TALKING;
        phase = open ? AgentState.Phase.DRAINING : state.phase();
        due = state.dueNanos();
        asked = state.askedNanos();
        quiet = open ? state.askedNanos() : state.quietNanos();
        greeted = state.greeted();
        limited = state.limited();
        order = state.order();
        offWaiting = new AtomicBoolean(state.offWaiting());
        carried = state.carried();
        unsure = state.unsure();
        refused = state.refused();
        complained = state.complained();
        switchings = state.switchings();
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

    /** Takes the oldest complaint of the instrument that nobody has taken; of too many the newest are lost. */
    public Optional<Said> said() {
        return Optional.ofNullable(complaints.poll());
    }

    /** The latest answer, or why there is none. */
    public Heard heard() {
        return heard;
    }

    /** Whether the next step may wait for bytes; if not, its caller waits a little instead. */
    boolean listening() {
        return switch (phase) {
            case CLOSED, READY -> false;
            case DRAINING, TALKING -> true;
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
        switch (phase) {
            case CLOSED -> {
                if (nanos >= due) {
                    open(nanos);
                }
            }
            case DRAINING -> {
                if (overtake(nanos)) {
                    drain(nanos);
                }
            }
            case TALKING -> {
                if (!tongue.overtakes() || overtake(nanos)) {
                    talk(nanos);
                    work(nanos);
                }
            }
            case READY -> work(nanos);
        }
    }

    /** Closes the port after an Off, as far as that still goes out. */
    public void close() {
        if (phase != AgentState.Phase.CLOSED) {
            line.write(tongue.off(), tongue.off().length);
            line.close();
            phase = AgentState.Phase.CLOSED;
        }
    }

    private void open(long nanos) {
        if (line.open()) {
            if (offNow(nanos)) {
                quiet = nanos;
                phase = AgentState.Phase.DRAINING;
            }
        } else {
            lose(nanos);
        }
    }

    /** Sends an Off that waits past whatever is open; it is said again in turn. False when the port was lost over it. */
    private boolean overtake(long nanos) {
        boolean wanted = offWaiting.get() && carried instanceof Order.On;
        return !wanted || offNow(nanos);
    }

    private boolean offNow(long nanos) {
        carried = Order.OFF;
        unsure = true;
        limited = false;
        overtaken = true;
        switchings = 0;
        return send(tongue.off(), tongue.off().length, nanos);
    }

    private void drain(long nanos) {
        int count = line.read(arrived);
        if (count < 0) {
            lose(nanos);
        } else if (count > 0) {
            quiet = Math.max(quiet, nanos - patience() + LATE_NANOS);
        } else if (nanos - quiet >= patience()) {
            if (greeted) {
                phase = AgentState.Phase.READY;
                work(nanos);
            } else {
                begin(Tongue.Act.NAME, 0, 0, nanos);
            }
        }
    }

    /** Begins what is due, one act after the other, until one has to wait for its answer. */
    private void work(long nanos) {
        while (phase == AgentState.Phase.READY) {
            boolean off = offWaiting.getAndSet(false) || order instanceof Order.Off;
            if (off && (carried instanceof Order.On || again())) {
                carried = Order.OFF;
                unsure = true;
                limited = false;
                switchings = 0;
                begin(Tongue.Act.OFF, 0, 0, nanos);
            } else if (order instanceof Order.On on && (!on.equals(carried) || again())) {
                set(on, nanos);
            } else if (nanos >= due) {
                due = nanos + instrument.pollNanos();
                refused = false;
                begin(Tongue.Act.POLL, 0, 0, nanos);
            } else {
                return;
            }
        }
    }

    /** Whether the last order is to be said again; one that was refused only after another poll. */
    private boolean again() {
        return unsure && !refused;
    }

    /** Before it is switched on its own limits are set and read back once more: it may have been without power since. */
    private void set(Order.On wanted, long nanos) {
        boolean switching = switchings == 0 || unsure && switchings < SWITCHINGS;
        if (switching && !limited) {
            begin(Tongue.Act.LIMIT, 0, 0, nanos);
            return;
        }
        carried = wanted;
        unsure = true;
        if (switching) {
            switchings++;
        }
        begin(switching ? Tongue.Act.ON : Tongue.Act.SET, wanted.set().volts(), wanted.set().amps(), nanos);
    }

    private void begin(Tongue.Act wanted, double volts, double amps, long nanos) {
        act = wanted;
        begun = nanos;
        overtaken = false;
        phase = AgentState.Phase.TALKING;
        turn = tongue.begin(wanted, volts, amps);
        talk(nanos);
    }

    /** Makes turns until one must wait for bytes or the act is over. */
    private void talk(long nanos) {
        boolean waits = false;
        while (phase == AgentState.Phase.TALKING && !waits) {
            switch (turn) {
                case SEND -> {
                    if (send(tongue.bytes(), tongue.length(), nanos)) {
                        turn = tongue.sent();
                    }
                }
                case ASK -> ask(nanos);
                case LISTEN -> waits = !hear(nanos);
                case DONE -> done(nanos);
                case COMPLAINED -> complainInPoll(nanos);
                case REFUSED -> refuse(nanos);
                case WRONG -> fail(Failure.NONSENSE, nanos);
            }
        }
    }

    /** Asks, unless an Off waits that could not be sent before the last answer was there: then this act is given up. */
    private void ask(long nanos) {
        if (offWaiting.get() && carried instanceof Order.On) {
            phase = AgentState.Phase.READY;
        } else if (send(tongue.bytes(), tongue.length(), nanos)) {
            asked = nanos;
            turn = Tongue.Turn.LISTEN;
        }
    }

    /** Takes what has arrived; false when that is no whole answer yet. */
    private boolean hear(long nanos) {
        int count = line.read(arrived);
        if (count < 0) {
            lose(nanos);
            return false;
        }
        for (int i = 0; i < count; i++) {
            turn = tongue.take(arrived[i]);
            if (turn != Tongue.Turn.LISTEN) {
                turn = i == count - 1 ? turn : Tongue.Turn.WRONG;
                return true;
            }
        }
        if (nanos - asked >= patience()) {
            fail(Failure.NO_ANSWER, nanos);
        }
        return false;
    }

    private void done(long nanos) {
        switch (act) {
            case NAME -> begin(Tongue.Act.LIMIT, 0, 0, nanos);
            case LIMIT -> {
                greeted = true;
                limited = true;
                due = nanos;
                phase = AgentState.Phase.READY;
            }
            case SET, ON, OFF -> {
                unsure = overtaken;
                phase = AgentState.Phase.READY;
            }
            case POLL -> {
                boolean odd = tongue.on() && carried instanceof Order.Off;
                due = odd && !complained ? nanos : due;
                complained = odd;
                answered();
            }
        }
    }

    /** An instrument that says on although it is off is told again, and asked again at once: one letter may be upset. */
    private void answered() {
        heard = new Heard.Answer(tongue.volts(), tongue.amps(), tongue.on(), begun);
        unsure |= tongue.on() && carried instanceof Order.Off;
        if (tongue.on() && carried instanceof Order.On) {
            switchings = SWITCHINGS;
        }
        phase = AgentState.Phase.READY;
    }

    /** Something was not obeyed, perhaps a frame that arrived upset: the order is said again. Twice in a row is a failure. */
    private void complainInPoll(long nanos) {
        complain(nanos);
        answered();
        if (complained) {
            silent(Failure.NONSENSE, nanos);
        }
        complained = true;
        unsure = true;
    }

    private void refuse(long nanos) {
        unsure = true;
        refused = true;
        switch (act) {
            case NAME, LIMIT -> fail(Failure.NONSENSE, nanos);
            case SET, ON, OFF, POLL -> {
                complain(nanos);
                silent(Failure.NONSENSE, nanos);
                phase = AgentState.Phase.READY;
            }
        }
    }

    private void complain(long nanos) {
        if (!tongue.complaint().isEmpty()) {
            complaints.offer(new Said(nanos, tongue.complaint()));
        }
    }

    private void fail(Failure why, long nanos) {
        complain(nanos);
        silent(why, nanos);
        limited = false;
        quiet = nanos;
        phase = AgentState.Phase.DRAINING;
        if (tongue.fresh().length > 0) {
            send(tongue.fresh(), tongue.fresh().length, nanos);
        }
    }

    private void lose(long nanos) {
        line.close();
        silent(Failure.NO_ANSWER, nanos);
        greeted = false;
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

    /** Time that an answer may take: after one lost answer the next is there before 2.5 polls are over. */
    private long patience() {
        return instrument.pollNanos() * 2 / 5;
    }

    /** What the agent knows, for a copy that goes on with another line in the same condition. */
    public AgentState state() {
        return new AgentState(phase, due, asked, quiet, greeted, limited, order, offWaiting.get(), carried, unsure, refused, complained,
                switchings, heard);
    }
}
