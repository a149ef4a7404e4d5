package rigwarden.command;

import java.io.PrintStream;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.Rehearsal;
import rigwarden.findings.Tally;
import rigwarden.live.Foresight;
import rigwarden.live.Plan;
import rigwarden.paper.Card;
import rigwarden.paper.GoodNightCard;
import rigwarden.run.Event;
import rigwarden.warden.Trip;

/** A quick rehearsal that is not stored, for the good-night card. */
final class Foreseen {
    private static final long SEED = 1;
    private static final long TELL_NANOS = 500_000_000L;

    private final Inputs inputs;
    private final Foresight foresight;
    private final Tally tally;
    private Optional<Trip> trip = Optional.empty();

    private Foreseen(Inputs inputs) {
        this.inputs = inputs;
        foresight = new Foresight(inputs.rig(), inputs.program());
        tally = new Tally(inputs.rig());
    }

    /**
     * Rehearses the night and makes its card.
     *
     * @param wakes the ways on which notices go
     * @param proofs what the last proof says; empty for none
     * @param out a moving line goes there where {@code terminal} says that somebody sees it
     */
    static Card card(Inputs inputs, List<String> wakes, List<String> proofs, LocalDateTime begin, LocalTime breakfast, PrintStream out,
            boolean terminal) {
        Foreseen foreseen = new Foreseen(inputs);
        foreseen.rehearse(out, terminal);
        LocalDateTime at = begin.toLocalTime().isBefore(breakfast)
                ? begin.toLocalDate().atTime(breakfast)
                : begin.toLocalDate().plusDays(1).atTime(breakfast);
        String then = foreseen.foresight.at(Duration.between(begin, at).toNanos());
        return GoodNightCard.of(inputs.rig(), inputs.program(), new GoodNightCard.Expected(foreseen.tally.steps(),
                foreseen.trip, at, then, foreseen.foresight.left().words()), begin, wakes, proofs);
    }

    private void rehearse(PrintStream out, boolean terminal) {
        Rehearsal rehearsal;
        try {
            rehearsal = new Rehearsal(inputs.rig(), inputs.program(), SEED, List.of(), (scan, inbox, orders, events) -> {
                foresight.offer(scan, inbox, orders, events);
                tally.scan(scan);
            });
        } catch (BusFailure e) {
            throw new Refused("The rig cannot be rehearsed: " + e.getMessage());
        }
        Bar bar = new Bar(out, Math.max(0.1, Plan.hours(inputs.rig(), inputs.program())), System.nanoTime());
        long told = System.nanoTime();
        for (long scans = 0; !rehearsal.over(); scans++) {
            rehearsal.scan().forEach(this::take);
            if (terminal && (scans & 1023) == 0 && System.nanoTime() - told > TELL_NANOS) {
                told = System.nanoTime();
                bar.draw(rehearsal.rig().clock().nanos() / 3.6e12, "rehearsed for the card", told);
            }
        }
        if (terminal) {
            bar.wipe();
        }
    }

    private void take(Event event) {
        switch (event) {
            case Event.StepBegun e -> tally.begun(e.step(), e.kind());
            case Event.StepEnded e -> tally.ended(e.by(), e.settled(), e.account());
            case Event.Tripped e -> trip = trip.or(() -> Optional.of(e.first()));
            case Event.Started _, Event.HeartbeatProved _, Event.StopProved _, Event.NoLoadShown _, Event.Waited _, Event.Warned _,
                    Event.StopRequested _, Event.Continued _, Event.NotContinued _, Event.Cleared _, Event.Finished _ -> { }
        }
    }
}
