package rigwarden.command;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import rigwarden.live.Complaints;
import rigwarden.live.Desk;
import rigwarden.live.Live;
import rigwarden.live.Watched;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunSettings;
import rigwarden.logbook.RunWriter;
import rigwarden.loop.Bench;
import rigwarden.loop.Clock;
import rigwarden.loop.Pacer;
import rigwarden.prove.Answer;
import rigwarden.prove.Energised;
import rigwarden.prove.Outcome;
import rigwarden.prove.Proof;
import rigwarden.prove.Prompt;
import rigwarden.prove.Turn;
import rigwarden.rig.Rig;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/** The guided check on a bench: at rest by scans alone, then energised like every run. It is made for one call. */
final class RigProof {
    static final String STAND_CLEAR =
            "Nothing is wrong at rest. Stand clear; with Enter the rig is energised. \"stop\" with Enter, or Ctrl-C, stops it.";
    private static final String UNCLEAR = "No answer: Enter, \"done\" or \"yes\" where it is so; \"skip\" or \"no\" where not; \"stop\" ends it.";
    private static final String UNREAD = "That was typed before the line above could be read, and does not count.";
    /** Nobody reads what is asked and answers it in less. */
    private static final long READ_NANOS = 500_000_000L;
    private static final int MOST_UNSAID = 16;
    private static final long BYTES = 20_000_000L;

    private final ProofRecord record;
    private final Rig rig;
    private final Logbook book;
    private final Showing showing;
    private final Clock clock;
    private final PrintStream out;
    private final ProofTalk talk;
    private final Pacer pacer;
    private final AtomicReference<Optional<RunWriter>> writer = new AtomicReference<>(Optional.empty());
    private final Complaints complaints = new Complaints();
    private final BlockingQueue<String> unsaid = new ArrayBlockingQueue<>(MOST_UNSAID);
    private final List<Outcome> outcomes = new ArrayList<>();
    private boolean stopped;

    /** A check that has not begun, on this clock. */
    RigProof(ProofRecord record, Logbook book, Showing showing, Clock clock, PrintStream out) {
        this.record = record;
        this.book = book;
        this.showing = showing;
        this.clock = clock;
        this.out = out;
        rig = record.inputs().rig();
        talk = new ProofTalk(out);
        pacer = Pacer.ofScan(clock, rig.scanNanos());
    }

    /** What paces its scans. */
    Pacer pacer() {
        return pacer;
    }

    /** How long the oldest row of the energised part waits to be stored, s; 0 before that part. Any thread. */
    double lagSeconds() {
        return writer.get().map(w -> w.lagNanos() * 1e-9).orElse(0.0);
    }

    /** Takes what an instrument complains of, and when, on the clock of the scans. Any thread; never waits. */
    void complained(String words, long nanos) {
        List<Complaints.Complaint> before = complaints.newest();
        String plain = complaints.take(words, nanos).words();
        if (before.stream().noneMatch(one -> one.words().equals(plain))) {
            unsaid.offer(plain);
        }
        writer.get().ifPresent(w -> w.note("instrument", words));
    }

    /**
     * Runs it.
     *
     * @param bench the hardware
     * @param answers of the person beside it
     * @param stop whether the process shall end
     * @return the exit code
     */
    int call(Bench bench, Answers answers, BooleanSupplier stop) throws IOException {
        OptionalInt run = OptionalInt.empty();
        if (ControlThread.call(() -> atRest(bench, answers, stop))) {
            run = OptionalInt.of(energised(bench, answers, stop));
        }
        OptionalInt number = run;
        if (!outcomes.isEmpty()) {
            showing.inTurn(() -> book.enter(record.rows(outcomes, number)));
        }
        boolean holds = ProofRecord.holds(outcomes, run);
        out.println(holds ? "PROVED, signed off by " + record.who() + "." : "NOT PROVED: " + rig.name() + " is not started by `rigwarden run`.");
        return holds ? Exits.DONE : over(stop) ? Exits.STOPPED : Exits.TRIPPED;
    }

    /** Whether the rig may be energised, and a person asked for it. */
    private boolean atRest(Bench bench, Answers answers, BooleanSupplier stop) {
        Proof proof = new Proof(rig);
        while (!over(stop)) {
            Scan scan = still(bench);
            Turn turn = proof.take(scan, answer(answers.takeAtRest()));
            talk.turn(turn);
            outcomes.addAll(turn.outcomes());
            show(turn.prompt(), answers);
            if (turn.over()) {
                boolean clear = proof.fit() && clear(bench, answers, stop);
                showing.say("");
                return clear;
            }
        }
        return false;
    }

    /** A person who is asked for something may answer on the page too; that the rig is energised is asked for at the terminal alone. */
    private void show(Prompt prompt, Answers answers) {
        switch (prompt) {
            case Prompt.Watch watch -> showing.say(watch.words());
            case Prompt.Confirm _, Prompt.Warm _, Prompt.Press _, Prompt.Release _, Prompt.Reset _, Prompt.Plug _ ->
                showing.ask(prompt.words(), answers::heardOnPage);
        }
    }

    private boolean over(BooleanSupplier stop) {
        return stopped || stop.getAsBoolean();
    }

    private void sayComplaints() {
        for (String words = unsaid.poll(); words != null; words = unsaid.poll()) {
            talk.say("Complaint of " + words);
        }
    }

    private Scan still(Bench bench) {
        pacer.await();
        sayComplaints();
        Scan scan = bench.take();
        bench.apply(Orders.OFF);
        return scan;
    }

    private Answer answer(Answers.Said said) {
        return switch (said) {
            case NOTHING -> Answer.NONE;
            case YES -> Answer.DONE;
            case NO -> Answer.SKIP;
            case UNCLEAR -> {
                talk.say(UNCLEAR);
                yield Answer.NONE;
            }
            case STOP -> {
                stopped = true;
                yield Answer.NONE;
            }
        };
    }

    /** Whether a person who has read that the rig is energised next asks for it. */
    private boolean clear(Bench bench, Answers answers, BooleanSupplier stop) {
        talk.say(STAND_CLEAR);
        showing.say(STAND_CLEAR);
        long saidNanos = clock.nanos();
        while (!over(stop)) {
            still(bench);
            switch (answers.take()) {
                case NOTHING -> talk.say(STAND_CLEAR);
                case YES -> {
                    if (clock.nanos() - saidNanos >= READ_NANOS) {
                        return true;
                    }
                    talk.say(UNREAD);
                }
                case UNCLEAR -> talk.say(UNCLEAR);
                case NO, STOP -> stopped = true;
            }
        }
        return false;
    }

    private int energised(Bench bench, Answers answers, BooleanSupplier stop) throws IOException {
        Inputs inputs = record.inputs();
        RunAbout about = new RunAbout(inputs.rigText(), inputs.programText(), Version.all(), Files.readString(RigRun.BOOT).strip(), 0, false,
                record.made(), clock.nanos(), List.of(), Optional.empty(), inputs.calibrations());
        Logbook.Begun begun = book.begin(about, rig.name(), inputs.program().name(), rig.channels(), BYTES, RunSettings.USUAL, _ -> { });
        writer.set(Optional.of(begun.writer()));
        Ending ending = new Ending(out);
        Energised energised = new Energised(rig, inputs.program());
        Desk desk = new Desk();
        Starting starting = new Starting(rig, inputs.program(), desk);
        try (Live live = new Live(rig, inputs.program(), begun.writer()).start()) {
            showing.show(new Watched(begun.number(), rig, inputs.program(), live, desk, false, 1, book.file(begun.number()), List::of,
                    Optional.empty(), Optional.empty(), Optional.empty(), complaints));
            LiveRun run = new LiveRun(rig, inputs.program(), bench, (scan, inbox, orders, events) -> {
                sayComplaints();
                talk.outcomes(energised.take(scan, events));
                talk.outcomes(starting.take(scan, events));
                live.offer(scan, inbox, orders, events);
                stopped |= answers.take().compareTo(Answers.Said.NO) >= 0;
            }, desk, pacer, clock.nanos(), () -> over(stop) || ending.tripped() || starting.refused().isPresent(),
                    ending::take, Optional.empty());
            ControlThread.call(run::run);
        } finally {
            begun.writer().close();
            begun.writer().trouble().ifPresent(out::println);
            showing.inTurn(() -> book.finish(begun.number(), ending.outcome(), starting.refused().map(Outcome::words).orElseGet(ending::words)));
        }
        talk.outcomes(energised.over());
        outcomes.addAll(energised.outcomes());
        starting.refused().ifPresent(outcomes::add);
        return begun.number();
    }
}
