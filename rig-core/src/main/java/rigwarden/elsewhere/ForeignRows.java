package rigwarden.elsewhere;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Consumer;
import rigwarden.rig.Channel;
import rigwarden.run.Event;
import rigwarden.warden.Failure;
import rigwarden.warden.Reading;
import rigwarden.warden.Scan;

/** The second pass over a log: its rows as scans, with numbers that leave room for what is missing, and all that was wrong. */
public final class ForeignRows {
    private final Survey survey;
    private final Consumer<ForeignRow> on;
    private final List<Remark> remarks = new ArrayList<>();
    private long number;
    private int step;
    private long lastNanos;
    private final long[] failedSince;

    private ForeignRows(Survey survey, Consumer<ForeignRow> on) {
        this.survey = survey;
        this.on = on;
        failedSince = new long[survey.log().channels().size()];
    }

    /**
     * Reads a log that was looked at.
     *
     * @param on takes each row; it may throw, which ends the reading
     * @return what was wrong after the last row
     */
    public static List<Remark> read(Path file, LogMap map, Survey survey, Consumer<ForeignRow> on) {
        ForeignRows rows = new ForeignRows(survey, on);
        Pipeline.run(file, map, rows::row, rows.remarks::add);
        return List.copyOf(rows.remarks);
    }

    private void row(Sections.Marked marked) {
        long nanos = marked.row().nanos();
        double seconds = (nanos - lastNanos) * 1e-9;
        boolean begins = marked.marks().stream().anyMatch(Event.StepBegun.class::isInstance);
        step += begins ? 1 : 0;
        long further = 1;
        if (number > 0 && !begins && marked.stretch().isPresent()) {
            double usual = survey.usualSeconds().get(step - 1);
            further = Spacing.rows(seconds, usual);
            if (further > 1) {
                remarks.add(new Remark(marked.row().line().line(), Fault.GAP,
                        String.format(Locale.ROOT, "%.1f s after the line before, where %.1f s are usual", seconds, usual)));
            }
        }
        number += further;
        lastNanos = nanos;
        on.accept(new ForeignRow(new Scan(number, nanos, readings(marked.row())), marked.marks(), List.copyOf(remarks)));
        remarks.clear();
    }

    private List<Reading> readings(Timeline.Timed row) {
        List<Reading> readings = new ArrayList<>(failedSince.length);
        for (Channel channel : survey.log().channels()) {
            double value = row.line().values()[channel.index()];
            if (Double.isNaN(value)) {
                boolean nonsense = (row.line().nonsense() & 1L << channel.index()) != 0;
                failedSince[channel.index()] = failedSince[channel.index()] == 0 ? row.nanos() : failedSince[channel.index()];
                readings.add(new Reading.Failed(nonsense ? Failure.NONSENSE : Failure.NO_ANSWER, failedSince[channel.index()]));
            } else {
                failedSince[channel.index()] = 0;
                readings.add(Reading.of(channel, Math.round((value - channel.shift()) / channel.scale()), row.nanos()));
            }
        }
        return List.copyOf(readings);
    }
}
