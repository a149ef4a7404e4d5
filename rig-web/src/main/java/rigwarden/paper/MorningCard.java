package rigwarden.paper;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rigwarden.findings.Answer;
import rigwarden.findings.Capacity;
import rigwarden.findings.Rating;
import rigwarden.findings.StepFinding;
import rigwarden.findings.Verdict;
import rigwarden.logbook.Outcome;
import rigwarden.program.Ended;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.warden.Trip;

/** What a person should know of a run that is over: what ended it, the number, what to do now, what not to conclude. */
public final class MorningCard {
    /**
     * What is known of the run.
     *
     * @param outcome how it stands in the ledger
     * @param words what the ledger adds
     * @param rehearsal whether no cell was touched
     * @param told what its steps gave that ended
     * @param trip the first cause
     * @param left how the cells are left, after "the cells are left"
     * @param recharge whether they must be recharged within a day
     */
    public record Known(Outcome outcome, String words, boolean rehearsal, EndedSteps.Told told, Optional<Trip> trip,
            String left, boolean recharge) {}

    private MorningCard() {}

    /** The card of a run. */
    public static Card of(int number, Rig rig, Program program, Known run) {
        List<Capacity> capacities = Capacity.of(rig, run.told().steps());
        Map<Integer, String> untold = run.told().untold();
        List<Card.Part> parts = new ArrayList<>();
        boolean well = run.outcome() == Outcome.FINISHED;
        parts.add(new Card.Part("What ended it", well ? Card.Weight.PLAIN : Card.Weight.URGENT, ended(rig, program, run)));
        parts.add(new Card.Part("The number", numbers(capacities, untold)));
        parts.add(new Card.Part("What to do now", run.recharge() || !well ? Card.Weight.URGENT : Card.Weight.PLAIN,
                todo(run)));
        parts.add(new Card.Part("What not to conclude", limits(rig, program, run, capacities)));
        String summary = run.outcome().word() + "; " + numbers(capacities, untold).getFirst();
        return new Card(Spots.say("Good morning. Run %04d, %s on %s: %s", number, program.name(), rig.name(),
                run.outcome().word()), summary, parts);
    }

    private static List<String> ended(Rig rig, Program program, Known run) {
        String last = run.told().steps().isEmpty() ? "No step was ended." : last(program, run.told().steps().getLast(), run.outcome());
        return switch (run.outcome()) {
            case FINISHED -> List.of("The programme came to its end. " + last);
            case STOPPED -> List.of("It was stopped before its end. " + last);
            case TRIPPED -> List.of("The warden tripped. " + run.trip().map(t -> TripWords.of(rig, t)).orElse(run.words()), last);
            case INTERRUPTED -> List.of("The process that ran it died. " + run.words(), last);
            case RUNNING -> List.of("It still runs. " + last);
        };
    }

    private static String last(Program program, StepFinding step, Outcome outcome) {
        String which = Spots.say("%d of %d, %s", step.index(), program.steps().size(), step.kind().replace('_', ' '));
        return outcome == Outcome.RUNNING && step.by() == Ended.CUT ? "It is in step " + which + "."
                : Spots.say("The last step was %s, ended by: %s.", which, EndWords.of(step.by()));
    }

    private static List<String> numbers(List<Capacity> capacities, Map<Integer, String> untold) {
        if (capacities.isEmpty()) {
            return List.of("None: no discharge was ended.");
        }
        return capacities.stream().map(c -> untold.containsKey(c.step())
                ? Spots.say("None of step %d: %s.", c.step(), untold.get(c.step()))
                : Spots.say("%s%.2f Ah ± %.2f Ah, %.1f Wh ± %.1f Wh, at %.2f C and %.1f °C, %s%s (95.45 %%)", c.lowerBound() ? "at least " : "",
                        c.ampHours().value(), c.ampHours().expanded(), c.wattHours().value(), c.wattHours().expanded(), c.rateC(),
                        c.bodyCelsius(), Sentence.started(c), c.interrupted() ? ", INTERRUPTED and wider for it" : "")).toList();
    }

    private static List<String> todo(Known run) {
        List<String> lines = new ArrayList<>();
        if (run.rehearsal()) {
            lines.add("Nothing at the bench: no cell was touched. What follows is what a real run would ask for.");
        }
        switch (run.outcome()) {
            case TRIPPED -> {
                lines.add("Do not clear it yet. Look at the spot that tripped, with the power cut and insulated tools, and find the cause.");
                lines.add("Only then clear it, with the arm key; a cleared trip starts nothing by itself.");
            }
            case INTERRUPTED -> lines.add("Look whether the contactor is open and both devices are off before you touch anything; find"
                    + " out why the computer died. Nothing goes on by itself: within 30 min `rigwarden continue` goes on with it"
                    + " where its conditions are met; else start anew, and `rigwarden abandon` closes it.");
            case STOPPED -> lines.add("Start anew when you know why it was stopped; it does not go on.");
            case FINISHED, RUNNING -> { }
        }
        lines.add(run.recharge()
                ? "RECHARGE: the cells are left " + run.left() + "."
                : "The cells are left " + run.left() + ".");
        return lines;
    }

    private static List<String> limits(Rig rig, Program program, Known run, List<Capacity> capacities) {
        List<String> lines = new ArrayList<>();
        if (run.rehearsal()) {
            lines.add("Nothing about your cells: every part was emulated.");
        }
        switch (run.outcome()) {
            case INTERRUPTED -> lines.add("A step that was broken off decides neither for nor against a rating, whatever it gives when it goes on.");
            case TRIPPED, STOPPED -> lines.add("A step that was cut short says what came out until then, and nothing of what was left.");
            case FINISHED, RUNNING -> { }
        }
        run.told().lost().ifPresent(lines::add);
        capacities.stream().filter(c -> !run.told().untold().containsKey(c.step())).forEach(c -> capacity(rig, c, lines));
        if (run.told().steps().stream().anyMatch(s -> s.kind().equals("rest") && !s.settled() && s.by() != Ended.CUT)) {
            lines.add("A rest ended before the cells had settled: what was measured after it began from cells that still moved.");
        }
        if (run.told().steps().stream().anyMatch(s -> s.by() == Ended.PROTECTION)) {
            lines.add("The battery's own protection ended a step: that tells where it opened, and of the capacity only \"at least\".");
        }
        if (!program.unattended()) {
            lines.add("It ran attended: that it went well says nothing about leaving this rig alone.");
        }
        lines.add("One run is one run: it says nothing of cells that were not in it, and it is no certificate.");
        return lines;
    }

    private static void capacity(Rig rig, Capacity c, List<String> lines) {
        String which = Spots.say("The number at %.2f C", c.rateC());
        if (c.lowerBound()) {
            lines.add(which + " is a lower bound: never that the cells have less, and not how much more they have.");
        } else if (c.missingAmpHours() > 0) {
            lines.add(Spots.say("%s may be up to %.2f Ah too low: the charge before ended before its taper.", which,
                    c.missingAmpHours()));
        }
        if (c.interrupted()) {
            lines.add(which + " was interrupted and went on: its ± is widened by what the outage can have changed, and it"
                    + " decides neither for nor against a rating.");
        }
        Rating rating = Rating.of(rig.cells());
        if (Verdict.of(c, rating) instanceof Answer.NotDecided not && !c.lowerBound() && !c.interrupted()) {
            lines.add(Spots.say("%s decides neither for nor against what was %s: %s.", which, rating.promise(), not.because()));
        }
    }
}
