package rigwarden.rigfile;

import java.util.List;
import rigwarden.program.Step;
import rigwarden.rig.Device;
import rigwarden.rig.Envelope;
import rigwarden.rig.Protection;
import rigwarden.rig.Rig;

/** Whether the steps of a programme make sense one after the other. Steps are named as they stand once repeats are written out. */
final class ProgramChecks {
    private static final int MOST_STEPS = 500;
    private static final double MOST_HOURS = 72;
    private static final double FULL_V = 3.45;

    private final Page page;
    private final Rig rig;
    private final List<Step> steps;

    ProgramChecks(Page page, Rig rig, List<Step> steps) {
        this.page = page;
        this.rig = rig;
        this.steps = steps;
    }

    void check(boolean leaveEmpty) {
        if (steps.size() > MOST_STEPS) {
            page.refuse(RefusalKind.TOO_MANY_STEPS, "step", steps.size() + " steps", "at most " + MOST_STEPS,
                    "nobody can read such a night", "Split it into programmes.");
            return;
        }
        if (leaveEmpty && steps.getLast() instanceof Step.Park) {
            page.refuse(RefusalKind.EMPTY_AND_PARKED, "leave_empty", "false, or no park step at the end",
                    "it cannot be both", "Remove one.");
        }
        order();
        recovered();
        double hours = 0;
        for (int i = 0; i < steps.size(); i++) {
            one(i);
            faint(i);
            hours += hours(steps.get(i));
        }
        if (hours > MOST_HOURS) {
            page.refuse(RefusalKind.TOO_LONG, "step", "about " + Figures.of(Math.rint(hours)) + " h by its own currents",
                    "at most " + Figures.of(MOST_HOURS) + " h", "nobody sleeps through three nights beside a rig",
                    "Split it into programmes.");
        }
    }

    /** While cells are recovered every rest is judged at a lower voltage: nothing that empties cells may follow in that programme. */
    private void recovered() {
        boolean recovers = false;
        for (int i = 0; i < steps.size(); i++) {
            boolean empties = steps.get(i) instanceof Step.Flowing flowing && !device(flowing).charges();
            if (recovers && empties) {
                refuse(RefusalKind.EMPTIED_AFTER_RECOVERY, i, steps.get(i).kind(), "charge, rest and park after a recovery",
                        "cells that were found so low are judged more laxly until this programme is over");
            }
            recovers |= steps.get(i) instanceof Step.Recover;
        }
    }

    /** What is too small to be told from nothing cannot be seen to stop. */
    private void faint(int step) {
        if (steps.get(step) instanceof Step.Flowing flowing && flowing.amps() < Envelope.LEAST_ORDERED_A) {
            refuse(RefusalKind.CURRENT_FAINT, step, Figures.of(flowing.amps(), "A"), "at least " + Figures.of(Envelope.LEAST_ORDERED_A, "A"),
                    "a smaller current could stop without being missed");
        }
    }

    private static String key(int step) {
        return "step." + (step + 1);
    }

    /** Empty cells are not discharged, full ones not charged, and hot ones not turned round. */
    private void order() {
        boolean full = false;
        boolean empty = false;
        boolean discharged = false;
        for (int i = 0; i < steps.size(); i++) {
            switch (steps.get(i)) {
                case Step.Charge _ -> {
                    if (full) {
                        refuse(RefusalKind.CHARGE_OF_FULL, i, "charge", "a discharge before it",
                                "the cells are full already");
                    }
                    turned(i);
                    full = true;
                    empty = false;
                }
                case Step.Discharge _, Step.HeatRun _ -> {
                    if (empty) {
                        refuse(RefusalKind.DISCHARGE_OF_EMPTY, i, steps.get(i).kind(), "a charge before it",
                                "the cells are empty already");
                    }
                    turned(i);
                    full = false;
                    empty = true;
                    discharged = true;
                }
                case Step.Park _ -> {
                    if (!discharged) {
                        refuse(RefusalKind.PARK_FROM_UNKNOWN, i, "park", "a discharge somewhere before it",
                                "its share is counted from empty");
                    }
                    full = false;
                    empty = false;
                }
                case Step.Balance _ -> {
                    full = true;
                    empty = false;
                }
                case Step.Rest _, Step.Pulse _, Step.ProveProtection _, Step.Recover _, Step.ProveStop _ -> { }
            }
        }
    }

    /** A way turned round without a rest leaves a number that is worth less; it is allowed, and said. */
    private void turned(int step) {
        if (step > 0 && steps.get(step - 1) instanceof Step.Flowing before
                && device(before).charges() != device((Step.Flowing) steps.get(step)).charges()) {
            refuse(RefusalKind.NO_REST, step, steps.get(step).kind(), "a rest before it",
                    "the cells have not settled, and the capacity carries that");
        }
    }

    private void one(int i) {
        switch (steps.get(i)) {
            case Step.Charge s -> charge(i, s);
            case Step.Discharge s -> protectedLow(i, s.cutOffVolts());
            case Step.HeatRun s -> protectedLow(i, s.cutOffVolts());
            case Step.Rest _, Step.Park _, Step.Balance _, Step.Pulse _, Step.ProveProtection _, Step.Recover _, Step.ProveStop _ -> { }
        }
    }

    private void charge(int i, Step.Charge step) {
        if (step.ceilingVolts() < FULL_V) {
            page.refuse(RefusalKind.CEILING_LOW, key(i) + ".ceiling_v", "at least " + Figures.of(FULL_V, "V"),
                    "below it the cells are never full, and a capacity is a lower bound", "");
        }
        if (step.taperAmps() > rig.cells().fullAmps()) {
            page.refuse(RefusalKind.TAPER_HIGH, key(i), Figures.of(step.taperAmps(), "A"),
                    "at most " + Figures.of(rig.cells().fullAmps(), "A"),
                    "a cell that still takes so much is not full", "Choose a smaller taper.");
        }
        if (device(step) instanceof Device.PlainCharger charger && step.taperAmps() <= charger.finishAmps()) {
            page.refuse(RefusalKind.TAPER_UNDER_FINISH, key(i), Figures.of(step.taperAmps(), "A"),
                    "more than " + Figures.of(charger.finishAmps(), "A"),
                    "the charger ends by itself before, and then nobody knows how full the cells are",
                    "Choose a larger taper.");
        }
        double u = TapLimit.uncertainty(rig, step.ceilingVolts());
        rig.protection().filter(p -> p.highVolts() - p.toleranceVolts() < step.ceilingVolts() + u)
                .ifPresent(p -> inside(i, "ceiling_v", p.highVolts(), p));
    }

    private void protectedLow(int i, double cutOffVolts) {
        double u = TapLimit.uncertainty(rig, cutOffVolts);
        rig.protection().filter(p -> p.lowVolts() + p.toleranceVolts() > cutOffVolts - u)
                .ifPresent(p -> inside(i, "cut_off_v", p.lowVolts(), p));
    }

    private void inside(int i, String key, double edge, Protection protection) {
        page.refuse(RefusalKind.PROTECTION_INSIDE, key(i) + "." + key,
                "inside " + Figures.of(edge, "V") + " ± " + Figures.of(protection.toleranceVolts(), "V"),
                "the battery's protection may open first, and the step then ends by it", "");
    }

    private void refuse(RefusalKind kind, int step, String found, String allowed, String why) {
        page.refuse(kind, key(step) + ".kind", found, allowed, why, "");
    }

    private Device device(Step.Flowing step) {
        return rig.devices().get(step.through());
    }

    /** By the currents and the rating alone; a rest by its least time. */
    private double hours(Step step) {
        double rated = rig.cells().ratedAmpHours();
        return switch (step) {
            case Step.Rest s -> s.atLeastNanos() / 3600e9;
            case Step.HeatRun s -> Math.min(rated / s.amps(), s.atMostNanos() / 3600e9);
            case Step.Park s -> s.share() * rated / s.amps();
            case Step.Pulse s -> (s.baseNanos() + s.pulseNanos()) / 3600e9;
            case Step.Balance s -> rated / s.amps() + s.holdNanos() / 3600e9;
            case Step.ProveProtection s -> 0.1 * rated / s.amps();
            case Step.Recover s -> 0.1 * rated / s.amps();
            case Step.ProveStop _ -> 0.01;
            case Step.Charge s -> rated / s.amps();
            case Step.Discharge s -> rated / s.amps();
        };
    }
}
