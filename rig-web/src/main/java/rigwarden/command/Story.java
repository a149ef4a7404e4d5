package rigwarden.command;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import rigwarden.findings.Budget;
import rigwarden.findings.Capacity;
import rigwarden.findings.StepFinding;
import rigwarden.paper.EndedSteps;
import rigwarden.rig.Rig;
import rigwarden.warden.Trip;

/** The summary of a run in plain lines for a person. */
final class Story {
    private final Rig rig;
    private final List<String> lines = new ArrayList<>();

    Story(Rig rig) {
        this.rig = rig;
    }

    /** The lines: each step, what tripped, each capacity with its uncertainty and what is in it. */
    List<String> of(EndedSteps.Told told, Optional<Trip> trip, List<Trip> also) {
        add("");
        add("%-3s %-10s %9s %11s %11s %8s %8s  %-22s %s", "", "step", "h:mm:ss", "Ah", "Wh", "low V", "high V",
                "hottest", "ended by");
        for (StepFinding step : told.steps()) {
            add("%-3d %-10s %9s %+11.3f %+11.2f %8.4f %8.4f  %-22s %s", step.index(), step.kind(),
                    time(step.seconds()), step.chargeAmpHours().value(), step.energyWattHours().value(),
                    step.lowest().value(), step.highest().value(),
                    String.format(Locale.ROOT, "%.1f °C %s", step.hottest().value(), step.hottest().where()),
                    ended(step));
        }
        trip.ifPresent(this::tripped);
        for (Trip consequence : also) {
            add("  and then rule %d, %s, at %s: %s", consequence.rule().number(), consequence.rule().name(),
                    consequence.where().name(), consequence.rule().sentence());
        }
        for (Capacity capacity : Capacity.of(rig, told.steps())) {
            String untold = told.untold().getOrDefault(capacity.step(), "");
            if (untold.isEmpty()) {
                capacity(capacity);
            } else {
                add("");
                add("No capacity of step %d: %s", capacity.step(), untold);
            }
        }
        return List.copyOf(lines);
    }

    private static String ended(StepFinding step) {
        String by = step.by().word().replace('_', '-');
        return step.kind().equals("rest") && !step.settled() ? by + ", not settled" : by;
    }

    private void tripped(Trip trip) {
        add("");
        add("TRIPPED by rule %d, %s: %s", trip.rule().number(), trip.rule().name(), trip.rule().sentence());
        add("  At %s: found %.4g where %.4g is the limit (%s), first at %.1f s, tripped in scan %d.", trip.where().name(),
                trip.value(), trip.limit(), trip.rule().limit(), trip.sinceNanos() * 1e-9, trip.scan());
        add("  Clears: %s. Find the cause first; a cleared trip starts nothing by itself.",
                trip.rule().clears().words());
    }

    private void capacity(Capacity capacity) {
        add("");
        String bound = capacity.lowerBound() ? "at least " : "";
        add("Capacity at %.2f C, %.1f °C, %s%s: %s%.2f Ah ± %.2f Ah, %.1f Wh ± %.1f Wh (95.45 %%, k = %.2f)",
                capacity.rateC(), capacity.bodyCelsius(),
                started(capacity), capacity.interrupted() ? ", INTERRUPTED" : "", bound, capacity.ampHours().value(),
                capacity.ampHours().expanded(), capacity.wattHours().value(), capacity.wattHours().expanded(),
                capacity.budget().factor());
        for (Budget.Term term : capacity.budget().terms()) {
            add("    %-28s %8.4f Ah (standard uncertainty)", term.name(), term.standard());
        }
        if (capacity.missingAmpHours() > 0) {
            add("    and up to %.2f Ah more: the charge before ended with a cell at its ceiling, before the taper",
                    capacity.missingAmpHours());
        }
        if (capacity.interrupted()) {
            add("    it was broken off and went on: wider for that, and it decides neither for nor against a rating");
        }
        add("    largest: %s", capacity.budget().largest().name());
    }

    private static String started(Capacity capacity) {
        return switch (capacity.start()) {
            case FULL -> "started full";
            case NOT_FULL -> "started not full";
            case UNKNOWN -> "start not known to be full";
        };
    }

    private static String time(double seconds) {
        long whole = Math.round(seconds);
        return String.format(Locale.ROOT, "%d:%02d:%02d", whole / 3600, whole / 60 % 60, whole % 60);
    }

    private void add(String format, Object... values) {
        lines.add(String.format(Locale.ROOT, format, values));
    }
}
