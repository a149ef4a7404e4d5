package rigwarden.campaign;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import rigwarden.campaign.Outcome.Noticed;

/** What a campaign found, as lines for a person. */
public final class Report {
    private static final double PERCENT = 100;

    private final List<Outcome> all;
    private final Map<Integer, Outcome> stopped;
    private final List<String> lines = new ArrayList<>();

    private Report(List<Outcome> all, List<Outcome> stopped) {
        this.all = all;
        this.stopped = stopped.stream().collect(Collectors.toMap(o -> o.what().number(), o -> o));
    }

    /**
     * Of all outcomes of a campaign.
     *
     * @param stopped what {@link Campaign#stopped} makes of them
     */
    public static Report of(List<Outcome> outcomes, List<Outcome> stopped) {
        Report report = new Report(outcomes, stopped);
        report.cases();
        report.unsafe();
        report.safeTimes();
        report.guards();
        report.rules();
        DetectionTable.of(outcomes).forEach(report.lines::add);
        report.thrown();
        return report;
    }

    /** The lines. */
    public List<String> lines() {
        return List.copyOf(lines);
    }

    private void say(String format, Object... values) {
        lines.add(String.format(Locale.ROOT, format, values));
    }

    private long count(Predicate<Outcome> which) {
        return all.stream().filter(which).count();
    }

    private void list(Predicate<Outcome> which) {
        all.stream().filter(which).map(Outcome::words).forEach(lines::add);
    }

    private void listStopped(Predicate<Outcome> which) {
        all.stream().filter(which).forEach(o -> {
            lines.add(o.words());
            say("    with STOP in the fault's own scan: %s", stopped.containsKey(o.what().number()) ? stopped.get(o.what().number()).harm() : "not run");
        });
    }

    private void cases() {
        say("");
        say("Cases: %d, of them %d pairs, in %d of which the first fault ended the run before the second came; by origin of the last that came: %s", all.size(),
                count(o -> !o.what().single()), count(Outcome::cutShort), counts(o -> o.cause().kind().origin().word()));
        say("Noticed: %s", counts(o -> o.noticed().name().toLowerCase(Locale.ROOT)));
    }

    private String counts(Function<Outcome, String> by) {
        return all.stream().collect(Collectors.groupingBy(by, TreeMap::new, Collectors.counting())).entrySet().stream()
                .map(e -> e.getKey() + " " + e.getValue()).collect(Collectors.joining(", "));
    }

    private void unsafe() {
        long any = count(o -> !o.harms().isEmpty());
        long unsafe = count(Outcome::unsafe);
        long pairs = count(o -> o.unsafe() && !o.what().single());
        say("");
        say("UNSAFE by the model's physics, and an order could have prevented it: %d of %d, %d of them pairs.", unsafe, all.size(), pairs);
        say("    95 %% sure (Clopper-Pearson, one-sided) below %.3g %% of what is drawn so.", PERCENT * Bound.upper(unsafe, all.size()));
        list(Outcome::unsafe);
        say("Unsafe, and over before the first scan after the fault: %d. What it needs: a fuse that breaks a dead short.", count(Outcome::unsafeAtOnce));
        listStopped(Outcome::unsafeAtOnce);
        say("Unsafe only while everything was off, from heat or a leak inside a cell: %d. What it needs: distance between cells, a place that"
                + " bears a burning cell, and a smoke alarm in the loop.", count(Outcome::unsafeThoughOff));
        listStopped(Outcome::unsafeThoughOff);
        say("Of these %d, run again with STOP pressed in the very scan in which the fault came: unsafe then too %d.", count(Outcome::beyondOrders),
                stopped.values().stream().filter(o -> !o.harms().isEmpty()).count());
        say("All three together: %d of %d, %.3g %%; 95 %% sure below %.3g %%.", any, all.size(), PERCENT * any / all.size(),
                PERCENT * Bound.upper(any, all.size()));
    }

    private void safeTimes() {
        say("");
        List<Outcome> crossed = all.stream().filter(Outcome::crossed).toList();
        List<Double> seconds = crossed.stream().flatMapToDouble(o -> o.safeSeconds().stream()).filter(s -> s > 0).sorted().boxed().toList();
        say("The truth crossed a limit of the envelope (cell 3.70 V, 2.40 V, body 55 °C, other node 60 °C, 110 %% of the rig's current) in %d cases.", crossed.size());
        if (!seconds.isEmpty()) {
            say("From there to no current, where any flowed: median %.2f s, worst %.1f s, over %d (in the others it had stopped before, or in that very step"
                    + " of the model); the slowest:", seconds.get(seconds.size() / 2), seconds.getLast(), seconds.size());
            crossed.stream().filter(o -> o.safeSeconds().isPresent())
                    .sorted(Comparator.comparingDouble((Outcome o) -> o.safeSeconds().getAsDouble()).reversed()).limit(5)
                    .forEach(o -> say("  %6.1f s, case %d: %s", o.safeSeconds().getAsDouble(), o.what().number(), o.what().words()));
        }
        long flows = crossed.stream().filter(o -> o.safeSeconds().isEmpty()).count();
        say("Current still flowed at the end of the case in %d of them:", flows);
        list(o -> o.crossed() && o.safeSeconds().isEmpty());
        say("Farthest that any true value came: %.3f V, %.3f V, %.1f °C (%.1f °C with those that heat while all is off)",
                most(Outcome::highestVolts, _ -> true), -most(o -> -o.lowestVolts(), _ -> true),
                most(Outcome::hottestCelsius, o -> !o.unsafeThoughOff()), most(Outcome::hottestCelsius, _ -> true));
    }

    private double most(ToDoubleFunction<Outcome> value, Predicate<Outcome> which) {
        return all.stream().filter(which).mapToDouble(value).max().orElse(Double.NaN);
    }

    private void guards() {
        say("");
        say("Guards without the computer that acted before the warden:");
        for (Outcome.Guard guard : Outcome.Guard.values()) {
            List<Outcome> acted = all.stream().filter(o -> o.hardware().contains(guard)).toList();
            long only = acted.stream().filter(o -> o.noticed() != Noticed.TRIPPED).count();
            Map<String, Long> kinds = acted.stream().collect(Collectors.groupingBy(o -> o.cause().kind().name(), TreeMap::new,
                    Collectors.counting()));
            say("  %-22s %5d, and the warden never tripped in %d of them  %s", guard.words(), acted.size(), only, kinds.isEmpty() ? "" : kinds);
        }
    }

    private void rules() {
        say("");
        say("By rule (first trip, or notice where nothing tripped; seconds from the fault):");
        Map<String, List<Outcome>> rules = all.stream().filter(o -> o.rule().isPresent())
                .sorted(Comparator.comparingInt(o -> o.rule().orElseThrow().number()))
                .collect(Collectors.groupingBy(o -> o.rule().orElseThrow().toString(), LinkedHashMap::new, Collectors.toList()));
        rules.forEach((rule, outcomes) -> {
            List<Double> seconds = outcomes.stream().map(o -> o.seconds().orElse(0)).sorted().toList();
            say("  %-32s %5d  median %7.1f s, latest %8.1f s%s", rule, outcomes.size(), seconds.get(seconds.size() / 2), seconds.getLast(),
                    outcomes.stream().allMatch(o -> o.noticed() == Noticed.NOTICE) ? "  (notice)" : "");
        });
    }

    private void thrown() {
        say("");
        say("The loop ended by an exception, and with it everything was off, in %d cases.", count(o -> o.thrown().isPresent()));
        list(o -> o.thrown().isPresent());
    }
}
