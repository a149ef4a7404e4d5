package rigwarden.findings;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rigwarden.findings.trace.Edge;
import rigwarden.rig.Channel;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;

/** All that can be found from one run: pure functions of what the trace kept. */
public final class Findings {
    private Findings() {}

    /** Of a run whose rows were fed to a {@link Trace} of the same rig, held against a rating. */
    public static List<Finding> of(Traced rig, Gathered run, Rating rating) {
        return of(rig, run, rating, List.of());
    }

    /** The same with what a hand meter read on the joints during the run. */
    public static List<Finding> of(Traced rig, Gathered run, Rating rating, List<Joints.Walked> walked) {
        List<Finding> found = new ArrayList<>();
        List<StepFinding> sums = run.steps().stream().map(StepNotes::sums).toList();
        List<Capacity> capacities = Capacity.of(rig, sums);
        for (Capacity capacity : capacities) {
            capacity(run, capacity, rating, found);
        }
        if (capacities.isEmpty()) {
            found.add(whole(run, Kind.CAPACITY, new Answer.Refused("there was no discharge that ended")));
        }
        double busGainU = rig.channels(Role.BUS_VOLTS).stream().mapToDouble(Channel::gainU).findFirst().orElse(Double.NaN);
        for (StepNotes step : run.steps()) {
            step(rig, run, step, busGainU, found);
        }
        joints(rig, run, walked, found);
        SpotHeat.of(rig, run.visits()).ifPresent(found::add);
        pulses(rig, run, found);
        found.addAll(ProtectionProof.of(rig, run));
        rate(capacities, run, found);
        found.addAll(ChargeAccount.of(run.steps()));
        return List.copyOf(found);
    }

    private static void capacity(Gathered run, Capacity capacity, Rating rating, List<Finding> found) {
        StepNotes step = run.steps().stream().filter(s -> s.sums().index() == capacity.step()).findFirst().orElseThrow();
        String refused = Charge.refusal(step);
        double value = capacity.ampHours().value();
        List<String> notes = new ArrayList<>(CapacityWords.before(capacity));
        if (capacity.missingAmpHours() > 0) {
            notes.add(Words.say("it may be up to %.2f Ah more: the charge before it did not come to its taper", capacity.missingAmpHours()));
        }
        if (capacity.interrupted()) {
            notes.add("it was interrupted and went on: wider for it, and it decides neither for nor against a rating");
        }
        notes.addAll(CrossChecks.of(run, step));
        List<String> conditions = new ArrayList<>(Conditions.of(step));
        conditions.addFirst(Words.say("%.3f C mean", capacity.rateC()));
        conditions.add(switch (capacity.start()) {
            case FULL -> "started full";
            case NOT_FULL -> "started not quite full";
            case UNKNOWN -> "how full it started nobody knows";
        });
        Answer answer = !refused.isEmpty() ? new Answer.Refused(refused)
                : capacity.lowerBound() ? new Answer.AtLeast(value, "Ah", capacity.budget(), CapacityWords.bound(capacity, step.sums().by()))
                : new Answer.Value(value, "Ah", capacity.budget());
        found.add(new Finding(Kind.CAPACITY, Words.step(step.sums()), answer, conditions, notes, step.continuity().firstScan(),
                step.continuity().lastScan()));
        found.add(new Finding(Kind.VERDICT, Words.step(step.sums()), refused.isEmpty()
                ? Verdict.of(capacity, rating)
                : new Answer.Refused("there is no capacity to hold against the rating"), conditions, List.of(),
                step.continuity().firstScan(), step.continuity().lastScan()));
    }

    /** Why the charge of a step cannot be told, by the number of the step; those that can are not among them. */
    public static Map<Integer, String> untold(Gathered run) {
        Map<Integer, String> untold = new LinkedHashMap<>();
        for (StepNotes step : run.steps()) {
            String refused = Charge.refusal(step);
            if (!refused.isEmpty()) {
                untold.put(step.sums().index(), refused);
            }
        }
        return untold;
    }

    /** What a person asks first of each discharge; {@code found} is what {@link #of} gave of the same run. */
    public static List<Headline> headlines(Traced rig, Gathered run, Rating rating, List<Finding> found) {
        List<Capacity> capacities = Capacity.of(rig, run.steps().stream().map(StepNotes::sums).toList());
        return Headline.of(run, capacities, found, rating, rig.cells().series());
    }

    private static void step(Traced rig, Gathered run, StepNotes step, double busGainU, List<Finding> found) {
        found.add(Charge.charge(step));
        boolean flows = !step.sums().kind().equals("rest");
        if (flows) {
            found.add(Charge.energy(step));
            found.add(Charge.delivered(step, busGainU));
        }
        switch (step.sums().kind()) {
            case "discharge", "heat_run" -> {
                found.addAll(Lag.atEmpty(rig, step));
                Heat.atTheEnd(step).ifPresent(found::add);
                resistances(rig, run, step, found);
                found.addAll(SlowCurve.of(rig, step));
            }
            case "charge", "balance" -> {
                found.addAll(Lag.atFull(rig, step));
                SlowCurve.of(rig, step).stream().filter(f -> !(f.answer() instanceof Answer.Refused)).forEach(found::add);
            }
            case "rest" -> {
                found.add(restFinding(rig, step));
                found.addAll(HeatPath.of(rig, run.steps(), step));
            }
            case String _ -> { }
        }
    }

    private static void resistances(Traced rig, Gathered run, StepNotes step, List<Finding> found) {
        Optional<Edge> opening = run.edges().stream()
                .filter(e -> e.step() == step.sums().index() && e.opened()).reduce((_, last) -> last);
        List<Resistance> all = opening.map(e -> Resistance.atOpening(rig, e)).orElse(List.of());
        if (all.isEmpty()) {
            found.add(new Finding(Kind.RESISTANCE, Words.step(step.sums()), new Answer.Refused(
                    "the current did not stop at once from a steady value"), List.of(), List.of(), step.continuity().firstScan(),
                    step.continuity().lastScan()));
            return;
        }
        String warm = Double.isNaN(step.sums().meanBodyCelsius()) ? "nobody knows how warm the cells were"
                : Words.say("cells %.1f °C mean over it", step.sums().meanBodyCelsius());
        for (Resistance r : all) {
            double volts = opening.orElseThrow().before().volts()[r.cell() - 1];
            found.add(r.finding().at(List.of(Words.say("end of %s, %.3f V before it stopped", Words.step(step.sums()), volts), warm)));
        }
        opening.ifPresent(edge -> found.addAll(Onset.of(rig, edge)));
    }

    /** Whether the joints warm as they did in an earlier run of the same rig, by the square of the current. */
    public static Finding beside(Gathered earlier, String called, Gathered run) {
        return Square.between(earlier, called, run);
    }

    /** Of the whole run: joints are compared where every cell is on its flat. */
    private static void joints(Traced rig, Gathered run, List<Joints.Walked> walked, List<Finding> found) {
        if (rig.cells().series() < 2) {
            return;
        }
        List<Resistance> likes = Joints.onTheFlat(rig, run.edges());
        if (likes.isEmpty()) {
            found.add(whole(run, Kind.JOINT, new Answer.Refused("the current never stopped at once while all cells were on their flat:"
                    + " towards an end an emptier cell looks like a bad joint" + (run.droppedEdges() == 0 ? "" : "; " + notKept(run)))));
            return;
        }
        Optional<StepNotes> warmest = run.steps().stream().filter(s -> s.sums().kind().equals("heat_run")).reduce((_, last) -> last);
        List<Joints.Warm> warm = warmest.map(s -> Heat.joints(rig, s)).orElse(List.of());
        Answer answer = Joints.outOfFamily(likes, warm, walked)
                .orElseGet(() -> new Answer.Named("none", "no place between two taps is out of family"));
        List<String> notes = new ArrayList<>();
        TapPlace.of(likes).ifPresent(notes::add);
        notes.add("by voltage: " + String.join(", ", Joints.ranked(likes).stream()
                .map(r -> Words.say("cell %d %.3f ± %.3f mΩ", r.cell(), 1000 * r.ohms(), 2000 * r.budget().combined())).toList()));
        if (!warm.isEmpty()) {
            notes.add("by heat: " + String.join(", ", Joints.rankedByHeat(warm).stream()
                    .map(w -> Words.say("bar %d–%d %+.1f K", w.lowerCell(), w.lowerCell() + 1, w.kelvin()).replace('-', '−')).toList()));
        }
        if (!walked.isEmpty()) {
            notes.add("by hand meter: " + String.join(", ", walked.stream().sorted(Comparator.comparingDouble(Joints.Walked::ohms).reversed())
                    .map(w -> Words.say("bar %d–%d %.3f ± %.3f mΩ", w.lowerCell(), w.lowerCell() + 1, 1000 * w.ohms(),
                            1000 * w.expandedVolts() / Math.abs(w.amps()))).toList()));
        }
        if (run.droppedEdges() > 0) {
            notes.add(notKept(run));
        }
        found.add(new Finding(Kind.JOINT, "the run", answer, List.of("stops of the current on the flat, last: " + likes.getFirst().how()),
                notes, likes.getFirst().scan(), likes.getFirst().scan()));
    }

    private static String notKept(Gathered run) {
        return Words.say("%d further steps of the current were seen and not kept: of each step of the programme the first, the last ones and"
                + " some between are", run.droppedEdges());
    }

    private static Finding restFinding(Traced rig, StepNotes step) {
        return new Finding(Kind.SELF_DISCHARGE, Words.step(step.sums()), SelfDischarge.ranking(rig, step, CurveWatch.coarsest(rig)),
                Conditions.of(step), List.of(), step.continuity().firstScan(), step.continuity().lastScan());
    }

    private static void pulses(Traced rig, Gathered run, List<Finding> found) {
        for (StepNotes step : run.steps()) {
            if (!step.sums().kind().equals("pulse")) {
                continue;
            }
            List<Edge> edges = run.edges().stream().filter(e -> e.step() == step.sums().index()).toList();
            Optional<Edge> rise = edges.stream().filter(Edge::rose).findFirst();
            Optional<Edge> drop = edges.stream().filter(Edge::opened).reduce((_, last) -> last);
            if (rise.isPresent() && drop.isPresent() && drop.get().scan() > rise.get().scan()) {
                Resistance.byTwoCurrents(rig, rise.get(), drop.get()).forEach(r -> found.add(r.finding().at(List.of(Words.step(step.sums())))));
            } else {
                found.add(new Finding(Kind.RESISTANCE, Words.step(step.sums()), new Answer.Refused(
                        "the two currents of the pulse were not both seen steady"), List.of(), List.of(),
                        step.continuity().firstScan(), step.continuity().lastScan()));
            }
        }
    }

    private static void rate(List<Capacity> capacities, Gathered run, List<Finding> found) {
        if (capacities.size() >= 2) {
            Capacity slow = capacities.getFirst().rateC() < capacities.getLast().rateC() ? capacities.getFirst() : capacities.getLast();
            Capacity fast = slow.equals(capacities.getFirst()) ? capacities.getLast() : capacities.getFirst();
            Finding bare = whole(run, Kind.RATE, RateEffect.exponent(slow, fast));
            found.add(bare.at(List.of(Words.say("step %d at %.3f C and %.1f °C, step %d at %.3f C and %.1f °C", slow.step(), slow.rateC(),
                    slow.bodyCelsius(), fast.step(), fast.rateC(), fast.bodyCelsius()))));
        } else {
            found.add(whole(run, Kind.RATE, new Answer.Refused("it needs two discharges at two rates")));
        }
    }

    private static Finding whole(Gathered run, Kind kind, Answer answer) {
        long first = run.steps().isEmpty() ? 0 : run.steps().getFirst().continuity().firstScan();
        long last = run.steps().isEmpty() ? 0 : run.steps().getLast().continuity().lastScan();
        return new Finding(kind, "the run", answer, List.of(), List.of(), first, last);
    }
}
