package rigwarden.rigfile;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.tomlj.TomlParseResult;

/** Reads cases of a fault campaign, so that they can be written without code. */
public final class CaseFile {
    private static final double MOST_MINUTES = 3000;
    private static final double MOST_SECONDS = 200_000;
    private static final int MOST_TIMES = 1000;

    private final Map<String, FaultWords> faults = new LinkedHashMap<>();
    private final int steps;

    private CaseFile(List<FaultWords> known, int steps) {
        this.steps = steps;
        known.forEach(fault -> faults.put(fault.name(), fault));
    }

    /**
     * Reads cases from disk.
     *
     * @param path of the file
     * @param known what can happen to the rig that they are for
     * @param steps of the programme that they are for
     * @return the cases, or every refusal; nothing is thrown
     */
    public static Read<List<WrittenCase>> read(Path path, List<FaultWords> known, int steps) {
        Page page = new Page(RigFile.name(path));
        return Source.text(path, page).map(text -> read(page, text, known, steps)).orElseGet(page::refused);
    }

    /** Reads cases that are already in memory; {@code name} is the file's, for refusals. */
    public static Read<List<WrittenCase>> read(String name, String text, List<FaultWords> known, int steps) {
        return read(new Page(name), text, known, steps);
    }

    private static Read<List<WrittenCase>> read(Page page, String text, List<FaultWords> known, int steps) {
        Optional<TomlParseResult> table = Source.table(text, page);
        if (table.isEmpty()) {
            return page.refused();
        }
        List<WrittenCase> cases = new CaseFile(known, steps).cases(new Keys(page, table.get()));
        return page.sound() ? new Read.Sound<>(cases, page.warnings()) : page.refused();
    }

    private List<WrittenCase> cases(Keys root) {
        List<WrittenCase> cases = new ArrayList<>();
        for (Keys keys : some(root, "case", "the file is its cases")) {
            String name = keys.text("name", "the report names the case");
            double minutes = keys.number("minutes", "min", 0.1, MOST_MINUTES, "a case ends some day");
            List<WrittenCase.Fault> list = some(keys, "fault", "a case is its faults").stream()
                    .flatMap(this::strikes).toList();
            keys.noOthers();
            cases.add(new WrittenCase(name, minutes, list));
        }
        root.noOthers();
        return List.copyOf(cases);
    }

    /** The tables of a list that is not empty. */
    private static List<Keys> some(Keys keys, String key, String why) {
        List<Keys> tables = keys.tables(key, RefusalKind.MISSING_KEY, why);
        if (tables.isEmpty() && keys.page().sound()) {
            keys.page().refuse(RefusalKind.MISSING_KEY, keys.full(key), "an empty list", "at least one table [[" + key + "]]", why, "Add one.");
        }
        return tables;
    }

    /** A fault that comes again and again is one table: so many times, so far apart. */
    private Stream<WrittenCase.Fault> strikes(Keys keys) {
        boolean again = keys.has("times");
        int times = again ? keys.whole("times", "", 2, MOST_TIMES, "a case is run to its end") : 1;
        double every = again ? keys.number("every_s", "s", 0.1, MOST_SECONDS, "what comes again comes at some pace") : 0;
        WrittenCase.Fault first = fault(keys);
        return IntStream.range(0, times)
                .mapToObj(i -> new WrittenCase.Fault(first.fault(), first.place(), first.size(), first.step(), first.afterSeconds() + i * every));
    }

    private WrittenCase.Fault fault(Keys keys) {
        String name = keys.word("fault", faults.keySet(), "a fault is one of these");
        FaultWords words = faults.get(name);
        boolean known = keys.good("fault");
        String place = known ? keys.word("place", words.places(), "this fault can happen there and nowhere else") : "";
        boolean sized = known && words.sized();
        double size = sized ? keys.number("size", words.unit(), 0, words.most(), "beyond it this fault makes no sense") : 0;
        int step = keys.has("step") ? keys.whole("step", "", 1, steps, "the programme has so many steps") : 0;
        double after = keys.number("after_s", "s", 0, MOST_SECONDS, "it must begin within a night");
        keys.noOthers();
        return new WrittenCase.Fault(name, place, size, step, after);
    }
}
