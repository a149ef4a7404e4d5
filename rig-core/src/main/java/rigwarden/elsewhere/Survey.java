package rigwarden.elsewhere;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rigwarden.rig.ForeignLog;
import rigwarden.run.Event;

/**
 * What a first look at a whole log tells, before anything of it is kept.
 *
 * @param log as the findings will see it
 * @param lines after the heading
 * @param rows that can be kept
 * @param steps that the map names
 * @param faults how many lines or readings of each kind; of gaps nothing yet
 * @param firstNanos time of the first row
 * @param lastNanos time of the last
 * @param usualSeconds usual distance of two rows in each step
 */
public record Survey(ForeignLog log, long lines, long rows, int steps, Map<Fault, Long> faults, long firstNanos, long lastNanos,
        List<Double> usualSeconds) {
    /** So many lines with a time that goes back make two clocks of one. */
    private static final double TWO_CLOCKS = 0.1;
    private static final double FEW = 2;
    /** A step with fewer rows does not tell what is usual in it: its likes do. */
    private static final int TELLS = 50;

    public Survey {
        faults = Map.copyOf(faults);
        usualSeconds = List.copyOf(usualSeconds);
    }

    /** Looks at a log. Throws {@link LogUnreadable} where it cannot be read, or holds nothing that could be kept. */
    public static Survey of(Path file, LogMap map) {
        Looking looking = new Looking();
        long lines = Pipeline.run(file, map, looking::row, looking::remark);
        long astray = looking.count(Fault.TIME_ASTRAY) + looking.count(Fault.TIME_WENT_BACK);
        if (looking.rows == 0) {
            throw new LogUnreadable(file.getFileName() + " has no line that could be kept, of " + lines + " after the heading"
                    + looking.first.map(remark -> "; the first: " + remark.words()).orElse("") + ".");
        }
        if (astray > Math.max(FEW, TWO_CLOCKS * lines)) {
            throw new LogUnreadable(file.getFileName() + " has two clocks: in " + astray + " of " + lines
                    + " lines the time goes back. Bring in what belongs to each clock as a log of its own.");
        }
        List<Double> usual = looking.usual();
        double flowing = Optional.of(looking.flowing.usual()).filter(seconds -> seconds > 0).orElseGet(looking.all::usual);
        return new Survey(LogChannels.of(map, Math.max(1, Math.round(flowing * 1e9))), lines, looking.rows, looking.steps, looking.faults,
                looking.firstNanos, looking.lastNanos, usual);
    }

    /** What is gathered row by row. */
    private static final class Looking {
        private final Map<Fault, Long> faults = new EnumMap<>(Fault.class);
        private final List<Spacing> byStretch = new ArrayList<>();
        /** Of each step: its own usual distance, or less than 0 the place of its meaning. */
        private final List<Double> bySteps = new ArrayList<>();
        private Spacing step = new Spacing();
        private int stretch;
        private final Spacing flowing = new Spacing();
        private final Spacing all = new Spacing();
        private long rows;
        private int steps;
        private long firstNanos;
        private long lastNanos;
        private double lastAmps;
        private Optional<Remark> first = Optional.empty();

        void remark(Remark remark) {
            faults.merge(remark.fault(), 1L, Long::sum);
            first = first.or(() -> Optional.of(remark));
        }

        void row(Sections.Marked marked) {
            double seconds = (marked.row().nanos() - lastNanos) * 1e-9;
            boolean begins = marked.marks().stream().anyMatch(Event.StepBegun.class::isInstance);
            double amps = marked.row().line().values()[0];
            if (begins) {
                over();
                stretch = marked.stretch().orElseThrow();
            } else if (rows > 0 && marked.stretch().isPresent()) {
                step.take(seconds);
                all.take(seconds);
                if (Math.abs(amps) > 0 && Math.abs(lastAmps) > 0) {
                    flowing.take(seconds);
                }
            }
            firstNanos = rows == 0 ? marked.row().nanos() : firstNanos;
            lastNanos = marked.row().nanos();
            lastAmps = amps;
            rows++;
            steps += begins ? 1 : 0;
        }

        private void over() {
            if (steps > 0) {
                spacing(stretch).take(step);
                bySteps.add(step.count() < TELLS ? -1.0 - stretch : step.usual());
                step = new Spacing();
            }
        }

        private List<Double> usual() {
            over();
            return bySteps.stream().map(own -> own < 0 ? spacing((int) Math.round(-1 - own)).usual() : own).toList();
        }

        private Spacing spacing(int meaning) {
            while (byStretch.size() <= meaning) {
                byStretch.add(new Spacing());
            }
            return byStretch.get(meaning);
        }

        private long count(Fault fault) {
            return faults.getOrDefault(fault, 0L);
        }
    }
}
