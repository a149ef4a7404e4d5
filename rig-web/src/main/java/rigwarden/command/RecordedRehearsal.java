package rigwarden.command;

import java.io.PrintStream;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.concurrent.locks.LockSupport;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.EmulatedRig;
import rigwarden.emulated.Mishap;
import rigwarden.emulated.Rehearsal;
import rigwarden.findings.trace.StepMark;
import rigwarden.live.Desk;
import rigwarden.live.Live;
import rigwarden.live.Plan;
import rigwarden.live.Watched;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.Outcome;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunSettings;
import rigwarden.logbook.RunWriter;
import rigwarden.loop.Pacer;
import rigwarden.loop.RealClock;
import rigwarden.loop.Recorder;
import rigwarden.paper.EndedSteps;
import rigwarden.run.Answer;
import rigwarden.run.Event;
import rigwarden.run.PickUp;
import rigwarden.warden.Inbox;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;
import rigwarden.warden.Trip;

/** A rehearsal with its logbook: every scan stored, findings taken from the same stream, a signal answered by a stop. */
final class RecordedRehearsal {
    /** What came of it. */
    record Result(int number, long scans, double wallSeconds, long transactions, EndedSteps.Told told,
            Optional<Trip> trip, List<Trip> also, Map<String, Object> truth, int exit) {}

    private static final double HALF = 0.5;
    private static final long BYTES_A_SCAN = 200;
    private static final long SCANS_A_NIGHT = 1_200_000;
    private static final long TELL_NANOS = 500_000_000L;
    /** A rehearsal's label is fixed: the same seed gives the same rows. */
    static final String LABEL = "rehearsal";

    /** A paced rehearsal that tripped goes on so long at the clock's own pace, for a person to look at it and clear it. */
    private static final long LINGER_NANOS = 1800_000_000_000L;
    /** Virtual time that a paced rehearsal may lag behind its pace before slots are given up, of the wall's clock. */
    private static final long PATIENCE_NANOS = 250_000_000L;

    private final Inputs inputs;
    private final long seed;
    private final List<Mishap> mishaps;
    private final OptionalDouble speed;
    private final OptionalLong cutNanos;
    private final Optional<Picked> picked;
    private final PrintStream out;
    private final Bar bar;
    private final boolean terminal = Terminal.there();
    private final SignalStop signal;
    private final Desk desk = new Desk();
    private final EmulatedHand hand;
    private Scan newest = new Scan(0, 0, List.of());
    private boolean asked;
    private boolean cleared;
    private boolean shown;
    private Optional<Trip> trip = Optional.empty();
    private List<Trip> also = List.of();
    private String doing = "";
    private boolean cut;
    private boolean continued;
    private Optional<Answer.Unmet> unmet = Optional.empty();

    /**
     * Where another rehearsal was broken off.
     *
     * @param from where it goes on
     * @param rig as that left it, its supply back
     */
    record Picked(PickUp from, EmulatedRig rig) {}

    /**
     * A rehearsal that has not begun.
     *
     * @param speed seconds of the rehearsal to one of the wall's clock; as fast as the machine allows where none is given
     * @param cutNanos time from its start at which the supply is cut, if it is
     * @param picked where it goes on, if another was broken off there
     */
    RecordedRehearsal(Inputs inputs, long seed, List<Mishap> mishaps, OptionalDouble speed, OptionalLong cutNanos,
            Optional<Picked> picked, SignalStop signal, PrintStream out) {
        this.inputs = inputs;
        this.seed = seed;
        this.mishaps = mishaps;
        this.speed = speed;
        this.cutNanos = cutNanos;
        this.picked = picked;
        this.signal = signal;
        this.out = out;
        hand = new EmulatedHand(inputs.rig());
        bar = new Bar(out, Math.max(0.1, Plan.hours(inputs.rig(), inputs.program())), System.nanoTime());
    }

    Result run(Logbook book, Showing showing, Telling telling) {
        RunAbout about = new RunAbout(inputs.rigText(), inputs.programText(), Version.all(), "emulated", seed, true, LABEL,
                began(), mishaps.stream().map(Mishap::words).toList(), picked.map(Picked::from), inputs.calibrations());
        Logbook.Begun begun = book.begin(about, inputs.rig().name(), inputs.program().name(),
                inputs.rig().channels(), BYTES_A_SCAN * SCANS_A_NIGHT, RunSettings.USUAL, _ -> { });
        EndedSteps ended = new EndedSteps(inputs.rig());
        RunWriter writer = begun.writer();
        Recorder stored = (scan, inbox, orders, events) -> {
            writer.offer(scan, inbox, orders, events);
            ended.take(scan, marks(events));
            newest = scan;
        };
        if (!showing.wanted() && !telling.wanted()) {
            return recorded(book, showing, begun, ended, stored);
        }
        try (Live live = new Live(inputs.rig(), inputs.program(), stored).start()) {
            shown = showing.wanted();
            Watched watched = new Watched(begun.number(), inputs.rig(), inputs.program(), live, desk, true,
                    speed.orElse(1), book.file(begun.number()), telling::undelivered, Optional.empty(),
                    picked.map(Picked::from), Optional.of(hand.laying()));
            showing.show(watched);
            telling.watch(watched);
            return recorded(book, showing, begun, ended, live);
        }
    }

    private Result recorded(Logbook book, Showing showing, Logbook.Begun begun, EndedSteps ended, Recorder recorder) {
        RunWriter writer = begun.writer();
        Truth truth = new Truth();
        long began = System.nanoTime();
        Rehearsal rehearsal = begin(recorder);
        long scans = speed.isPresent()
                ? ControlThread.call(() -> scans(rehearsal, writer, truth))
                : scans(rehearsal, writer, truth);
        writer.close();
        double wall = (System.nanoTime() - began) * 1e-9;
        if (terminal) {
            bar.wipe();
        }
        writer.trouble().ifPresent(out::println);
        if (writer.storedScan() != scans) {
            throw new IllegalStateException(scans + " scans taken, " + writer.storedScan() + " stored");
        }
        int exit = cut ? Exits.CUT : trip.isPresent() ? Exits.TRIPPED : asked || unmet.isPresent() ? Exits.STOPPED : Exits.DONE;
        showing.inTurn(() -> entered(book, begun.number(), exit));
        return new Result(begun.number(), scans, wall, rehearsal.rig().emulatedBoard().traffic().all(), ended.end(),
                trip, also, truth.written(rehearsal.rig().world(), inputs.rig().cells().series()), exit);
    }

    private void entered(Logbook book, int number, int exit) {
        if (cut) {
            out.println("The supply was cut. " + book.cut(number).words());
        } else {
            book.finish(number, outcome(exit), trip.map(t -> "rule " + t.rule())
                    .or(() -> unmet.map(u -> "not continued. " + u.words())).orElse(""));
        }
        if (!continued) {
            book.continuesNone(number);
        }
    }

    private long began() {
        return picked.map(place -> place.rig().clock().nanos()).orElse(0L);
    }

    private long scans(Rehearsal rehearsal, RunWriter writer, Truth truth) {
        Optional<Pacer> pacer = pacer();
        long scans = 0;
        long told = System.nanoTime();
        long lingers = 0;
        long clean = cleanScans();
        long cutAt = cutNanos.orElse(Long.MAX_VALUE - began()) + began();
        for (long after = 0; after < clean; ) {
            pacer.ifPresent(Pacer::await);
            if (rehearsal.rig().clock().nanos() >= cutAt) {
                cut = true;
                return scans;
            }
            Inbox in = desk.get();
            if ((in.stop() || signal.requested()) && !asked) {
                asked = true;
                rehearsal.stop();
            }
            if (in.has(Request.CLEAR)) {
                rehearsal.clear();
            }
            hand.lay(rehearsal);
            List<Event> events = rehearsal.scan();
            hand.keep(rehearsal, writer, newest);
            scans++;
            if (!events.isEmpty()) {
                truth.saw(events, rehearsal.rig().world());
                events.forEach(this::take);
            }
            if (trip.isPresent() && lingers == 0 && shown && pacer.isPresent()) {
                lingers = scans + LINGER_NANOS / inputs.rig().scanNanos();
                pacer = Optional.of(Pacer.ofScan(new RealClock(), inputs.rig().scanNanos()));
            }
            boolean over = rehearsal.over() && scans >= lingers || asked || cleared;
            after = over ? after + 1 : 0;
            while (writer.fill() > HALF) {
                LockSupport.parkNanos(200_000);
            }
            if (terminal && (scans & 1023) == 0 && System.nanoTime() - told > TELL_NANOS) {
                told = System.nanoTime();
                bar.draw(rehearsal.rig().clock().nanos() / 3.6e12, doing, told);
            }
        }
        pacer.filter(p -> p.skipped() > 0).ifPresent(p -> out.printf("  %d slots came too late and were given up: this"
                + " machine is slower than --speed %.0f asks%n", p.skipped(), speed.orElse(1)));
        return scans;
    }

    private Optional<Pacer> pacer() {
        return speed.isPresent()
                ? Optional.of(new Pacer(new RealClock(),
                        Math.max(1, Math.round(inputs.rig().scanNanos() / speed.getAsDouble())), PATIENCE_NANOS))
                : Optional.empty();
    }

    /** After its end a run goes on until a weld would have shown on the bus: its decay time and a second. */
    private long cleanScans() {
        return Math.round((inputs.rig().busSide().decaySeconds() + 1) * 1e9) / inputs.rig().scanNanos();
    }

    private Rehearsal begin(Recorder recorder) {
        try {
            return picked.isPresent()
                    ? new Rehearsal(inputs.rig(), inputs.program(), picked.get().rig(), picked.get().from(), mishaps, recorder)
                    : new Rehearsal(inputs.rig(), inputs.program(), seed, mishaps, recorder);
        } catch (BusFailure e) {
            throw new Refused("The rig cannot be started: " + e.getMessage());
        }
    }

    static Outcome outcome(int exit) {
        return switch (exit) {
            case Exits.TRIPPED -> Outcome.TRIPPED;
            case Exits.STOPPED -> Outcome.STOPPED;
            case Exits.CUT -> Outcome.INTERRUPTED;
            default -> Outcome.FINISHED;
        };
    }

    private void take(Event event) {
        switch (event) {
            case Event.StepBegun e -> {
                doing = "step " + e.step() + " of " + inputs.program().steps().size() + ": " + e.kind();
                tell(doing);
            }
            case Event.Tripped e -> {
                trip = trip.or(() -> Optional.of(e.first()));
                also = e.also();
            }
            case Event.HeartbeatProved e -> tell(String.format("heartbeat withheld: contactor open after %.1f s", e.seconds()));
            case Event.StopProved e -> tell(String.format("%s: the %s alone stopped the current in %.1f s", e.device(),
                    e.element().name().toLowerCase(Locale.ROOT), e.seconds()));
            case Event.NoLoadShown e -> tell(String.format("%s shows %.2f V without load", e.source(), e.volts()));
            case Event.Waited e -> tell(String.format("step %d waits: cell at %.1f °C", e.step(), e.celsius()));
            case Event.Warned e -> tell("notice: " + e.warning().rule().sentence());
            case Event.Cleared _ -> cleared = true;
            case Event.Continued e -> {
                continued = true;
                tell(String.format("goes on with run %04d at step %d, %.1f min after it was broken off", e.run(), e.step(),
                        e.outageSeconds() / 60));
            }
            case Event.NotContinued e -> {
                unmet = Optional.of(e.unmet());
                out.println("NOT CONTINUED. " + e.unmet().words());
            }
            case Event.StepEnded _, Event.Started _, Event.StopRequested _, Event.Finished _ -> { }
        }
    }

    private static List<StepMark> marks(List<Event> events) {
        return events.isEmpty() ? List.of() : events.stream().<StepMark>mapMulti((event, on) -> {
            if (event instanceof Event.StepBegun e) {
                on.accept(new StepMark.Begun(e.step(), e.kind()));
            } else if (event instanceof Event.StepEnded e) {
                on.accept(new StepMark.Over(e.by(), e.settled(), e.account()));
            }
        }).toList();
    }

    /** A line of progress where nobody sees a moving one. */
    private void tell(String words) {
        if (!terminal) {
            out.println("  " + words);
        }
    }
}
