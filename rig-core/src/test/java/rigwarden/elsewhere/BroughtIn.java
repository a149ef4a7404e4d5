package rigwarden.elsewhere;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;
import rigwarden.findings.Gathered;
import rigwarden.findings.Trace;
import rigwarden.findings.trace.Row;
import rigwarden.findings.trace.StepMark;
import rigwarden.rig.ForeignLog;
import rigwarden.rigfile.Read;
import rigwarden.run.Event;

/**
 * A log that was brought in and traced, without a file between.
 *
 * @param log as the findings see it
 * @param gathered what the trace kept
 * @param remarks all that was wrong, in order
 * @param survey the first look
 */
public record BroughtIn(ForeignLog log, Gathered gathered, List<Remark> remarks, Survey survey) {
    /** By a map of {@code hardware/maps}. */
    public static BroughtIn by(String map, Path csv) {
        return of(csv, sound(shipped(map)));
    }

    /** By such a map with some of its text changed. */
    public static BroughtIn edited(String map, Path csv, UnaryOperator<String> edit) {
        return of(csv, sound(edit.apply(shipped(map))));
    }

    /** The same without the instrument's own count. */
    public static BroughtIn uncounted(String map, Path csv) {
        String text = shipped(map).replace("[counted]", "").replaceAll("(?m)^(unit_ah|in_column|out_column|step_ah) = .*$", "");
        return of(csv, sound(text));
    }

    /** Text of a map of {@code hardware/maps}. */
    public static String shipped(String map) {
        try {
            return Files.readString(Path.of("..", "hardware", "maps", map + ".toml"));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    static LogMap sound(String text) {
        return switch (MapFile.read("map", text)) {
            case Read.Sound<LogMap> sound -> sound.value();
            case Read.Refused<LogMap> refused -> throw new AssertionError(refused.refusals());
        };
    }

    static BroughtIn of(Path csv, LogMap map) {
        Survey survey = Survey.of(csv, map);
        Trace trace = new Trace(survey.log());
        List<Remark> remarks = new ArrayList<>();
        remarks.addAll(ForeignRows.read(csv, map, survey, row -> {
            remarks.addAll(row.remarks());
            trace.take(new Row(row.scan(), row.events().stream().map(BroughtIn::mark).toList()));
        }));
        return new BroughtIn(survey.log(), trace.end(), List.copyOf(remarks), survey);
    }

    private static StepMark mark(Event event) {
        return switch (event) {
            case Event.StepBegun begun -> new StepMark.Begun(begun.step(), begun.kind());
            case Event.StepEnded over -> new StepMark.Over(over.by(), over.settled(), over.account());
            case Event other -> throw new AssertionError(other);
        };
    }
}
