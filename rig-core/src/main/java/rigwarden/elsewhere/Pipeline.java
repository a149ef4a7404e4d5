package rigwarden.elsewhere;

import java.nio.file.Path;
import java.util.function.Consumer;

/** One pass over a log: lines, their numbers, their time, their steps. */
final class Pipeline {
    private Pipeline() {}

    /** Hands on each row, and what is wrong with a line before the rows after it; returns the lines after the heading. */
    static long run(Path file, LogMap map, Consumer<Sections.Marked> on, Consumer<Remark> said) {
        Sections sections = new Sections(map, on, said);
        Timeline timeline = new Timeline(sections::take, said);
        LineReader reader = new LineReader(map, timeline::take, said);
        CsvLines.read(file, map.layout(), reader);
        timeline.end();
        sections.end();
        return reader.lines();
    }
}
