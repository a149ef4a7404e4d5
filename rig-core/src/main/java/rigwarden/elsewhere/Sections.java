package rigwarden.elsewhere;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import rigwarden.program.Ended;
import rigwarden.run.Event;

/** Divides a log into steps: each from its own first row to its own last. A row waits until the next tells whether it was the last. */
final class Sections {
    /**
     * A row with what began or ended in it.
     *
     * @param marks in that order
     * @param stretch place of its meaning among those of the map; empty for a row of no step
     */
    record Marked(Timeline.Timed row, List<Event> marks, OptionalInt stretch) {}

    /** A meaning, and its place. */
    private record Known(int place, String kind, Optional<Ended> by) {}

    private static final List<String> BY_CURRENT = List.of("rest", "charge", "discharge");

    private final LogMap map;
    private final int[] cells;
    private final Consumer<Marked> on;
    private final Consumer<Remark> said;
    private Timeline.Timed held;
    private List<Event> marks = new ArrayList<>();
    private String key = "";
    private Optional<Known> known = Optional.empty();
    private int number;
    private StepSums sums = new StepSums();
    private Shown shown;

    Sections(LogMap map, Consumer<Marked> on, Consumer<Remark> said) {
        this.map = map;
        this.on = on;
        this.said = said;
        shown = new Shown(map.cells());
        int first = map.counted().isPresent() ? 2 : 1;
        cells = IntStream.range(0, map.columns().size()).filter(i -> map.columns().get(i).place() == Place.CELL).map(i -> i + first).toArray();
    }

    void take(Timeline.Timed row) {
        String next = key(row.line());
        if (held == null || !next.equals(key)) {
            close();
            open(row.line(), next);
        } else {
            hand();
        }
        held = row;
        double[] values = row.line().values();
        double volts = 0;
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        for (int cell : cells) {
            volts += values[cell];
            lowest = Math.min(lowest, values[cell]);
            highest = Math.max(highest, values[cell]);
        }
        sums.take(row.nanos(), values[0], volts);
        shown.take(values[0], lowest, highest);
    }

    /** What tells a row's step from another's. A row without a current goes on with the step that it is in. */
    private String key(LogLine line) {
        return switch (map.stretches()) {
            case Stretches.ByColumn _ -> line.step();
            case Stretches.ByCurrent by -> {
                double amps = line.values()[0];
                yield Double.isNaN(amps) ? key : BY_CURRENT.get(Math.abs(amps) < by.restBelowAmps() ? 0 : amps > 0 ? 1 : 2);
            }
        };
    }

    private Optional<Known> meaning(String of) {
        return switch (map.stretches()) {
            case Stretches.ByColumn by -> IntStream.range(0, by.known().size()).filter(i -> by.known().get(i).values().contains(of)).boxed()
                    .findFirst().map(i -> new Known(i, by.known().get(i).kind(), Optional.of(by.known().get(i).by())));
            case Stretches.ByCurrent _ -> Optional.of(of).filter(BY_CURRENT::contains)
                    .map(kind -> new Known(BY_CURRENT.indexOf(kind), kind, Optional.empty()));
        };
    }

    private void open(LogLine first, String next) {
        key = next;
        known = meaning(next);
        sums = new StepSums();
        shown = new Shown(map.cells());
        if (known.isPresent()) {
            number++;
            marks.add(new Event.StepBegun(number, known.get().kind()));
        } else {
            said.accept(new Remark(first.line(), Fault.STEP_NOT_KNOWN, "a step \"" + next + "\" begins, which the map does not name"));
        }
    }

    private void close() {
        if (held != null) {
            known.ifPresent(of -> marks.add(new Event.StepEnded(number, end(of), false, sums.account())));
            hand();
        }
    }

    private Ended end(Known of) {
        if (of.by().isEmpty()) {
            return shown.end(of.kind());
        }
        if (shown.supports(of.by().get())) {
            return of.by().get();
        }
        said.accept(new Remark(held.line().line(), Fault.END_NOT_SHOWN, String.format(Locale.ROOT, "the map says that step %d, \"%s\", ended by %s; it shows %s",
                number, key, of.by().get().word().replace('_', ' '), shown.words())));
        return shown.instead(of.by().get());
    }

    private void hand() {
        on.accept(new Marked(held, List.copyOf(marks), known.map(of -> OptionalInt.of(of.place())).orElse(OptionalInt.empty())));
        marks = new ArrayList<>();
    }

    /** No more rows come. */
    void end() {
        close();
        held = null;
    }

    /** Steps until now. */
    int steps() {
        return number;
    }
}
