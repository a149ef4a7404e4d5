package rigwarden.paper;

import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rigwarden.findings.StepFinding;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rigfile.OpensFirst;
import rigwarden.warden.Trip;

/** What a person should know before a rig is left alone for a night: from the files, and from a rehearsal of that night. */
public final class GoodNightCard {
    private static final DateTimeFormatter HOUR = DateTimeFormatter.ofPattern("EEE HH:mm", Locale.ROOT);
    private static final List<String> SITE = List.of(
            "The bench cannot burn, a smoke alarm hangs over it and was tried, and nobody sleeps next to it.",
            "Terminals are covered; no tool, cable end or ring lies where it could fall on them.",
            "The emergency stop was pressed today and everything went dead; the fuse is the one in the rig file.",
            "You know the switch that cuts charger and load, and the way out. Gas from a venting cell burns and is poisonous.",
            "Nothing is laid on or under the heater or the load, and their air is free.");
    private static final List<String> UNPROVED = List.of(
            "None is on record: nothing here shows that either way to stop works.",
            "Before this night: rigwarden prove RIG.");

    /**
     * What a rehearsal said.
     *
     * @param steps what each step gave
     * @param trip what tripped it, if anything did
     * @param breakfastAt hour of breakfast
     * @param atBreakfast what will be then, one sentence
     * @param left how the cells will be left, after "the cells are left"
     */
    public record Expected(List<StepFinding> steps, Optional<Trip> trip, LocalDateTime breakfastAt, String atBreakfast,
            String left) {}

    private GoodNightCard() {}

    /**
     * The card.
     *
     * @param begin when the programme would begin
     * @param wakes the ways on which notices go; empty for none
     * @param proofs what the last proof says, one line each; empty for a rig of which none stands
     */
    public static Card of(Rig rig, Program program, Expected expected, LocalDateTime begin, List<String> wakes,
            List<String> proofs) {
        double hours = hours(expected.steps());
        String hottest = hottest(rig, expected.steps());
        List<Card.Part> parts = new ArrayList<>();
        expected.trip().ifPresent(t -> parts.add(new Card.Part("DO NOT START THIS: its rehearsal tripped", Card.Weight.URGENT,
                List.of(TripWords.of(rig, t)))));
        parts.add(new Card.Part("The steps, if it began now", steps(program, expected.steps(), begin)));
        parts.add(new Card.Part("The hottest expected spot", List.of(hottest,
                "An emulated rig with sound joints; a joint that is worse will be hotter.")));
        parts.add(new Card.Part("Who opens first", opens(rig, program)));
        parts.add(new Card.Part("What will wake you", wakes.isEmpty() ? Card.Weight.URGENT : Card.Weight.PLAIN,
                wakes(program, wakes)));
        parts.add(new Card.Part("The cells at breakfast", List.of(
                HOUR.format(expected.breakfastAt()) + ": " + expected.atBreakfast(),
                "At the end they are left " + expected.left() + ".")));
        parts.add(proofs.isEmpty()
                ? new Card.Part("Last proofs", Card.Weight.URGENT, UNPROVED)
                : new Card.Part("Last proofs", proofs));
        parts.add(new Card.Part("Look at the place", SITE));
        String title = "Good night? " + program.name() + " on " + rig.name() + ", " + span(hours) + " in all";
        String summary = span(hours) + "; hottest expected " + hottest + "; "
                + (wakes.isEmpty() ? "no notices" : "notices by " + String.join(", ", wakes));
        return new Card(title, summary, parts);
    }

    private static double hours(List<StepFinding> steps) {
        return steps.stream().mapToDouble(StepFinding::seconds).sum() / 3600;
    }

    private static String span(double hours) {
        return Spots.span(Math.round(hours * 3600e9));
    }

    private static List<String> steps(Program program, List<StepFinding> steps, LocalDateTime begin) {
        List<String> lines = new ArrayList<>();
        LocalDateTime at = begin;
        for (StepFinding step : steps) {
            at = at.plusSeconds(Math.round(step.seconds()));
            lines.add(Spots.say("%d %s, %s, until %s: %s", step.index(), step.kind().replace('_', ' '),
                    span(step.seconds() / 3600), HOUR.format(at), EndWords.of(step.by())));
        }
        for (int step = steps.size(); step < program.steps().size(); step++) {
            lines.add(Spots.say("%d %s: not reached", step + 1, program.steps().get(step).kind().replace('_', ' ')));
        }
        return lines;
    }

    private static String hottest(Rig rig, List<StepFinding> steps) {
        return steps.stream().max(Comparator.comparingDouble(s -> s.hottest().value()))
                .map(s -> Spots.say("%s, %.1f °C, in step %d (%s)", rig.column(s.hottest().where())
                        .map(c -> Spots.of(rig, c)).orElse(s.hottest().where()), s.hottest().value(), s.index(),
                        s.kind().replace('_', ' ')))
                .orElse("not known: no step was reached");
    }

    /** The first three for each quantity, and who is left with the computer dead. */
    private static List<String> opens(Rig rig, Program program) {
        List<String> lines = new ArrayList<>();
        for (OpensFirst one : OpensFirst.of(rig, List.of(program))) {
            String first = String.join(", then ", one.openers().stream().limit(3).map(o -> said(one, o)).toList());
            String alone = one.openers().stream().filter(OpensFirst.Opener::alone).findFirst()
                    .map(o -> said(one, o)).orElse("NOBODY");
            lines.add(one.quantity() + ": " + first + ". With the computer dead: " + alone + ".");
            lines.addAll(one.words());
        }
        return lines;
    }

    private static String said(OpensFirst one, OpensFirst.Opener opener) {
        return opener.who() + " " + Spots.say("%.2f", opener.value()) + " " + one.unit();
    }

    private static List<String> wakes(Program program, List<String> wakes) {
        List<String> lines = new ArrayList<>(wakes);
        if (wakes.isEmpty()) {
            lines.add("No notices: no file says where they go. Nothing beyond the bench will call you.");
        }
        lines.add("The sounder at the rig, if its switch is on: a trip, and the heartbeat stage when the computer is what died.");
        if (!program.unattended()) {
            lines.add("Attended: stay beside it. The arm key is turned off and on every 15 min, or the run is stopped.");
        }
        return lines;
    }
}
