package rigwarden.elsewhere;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import rigwarden.rig.Cells;
import rigwarden.rigfile.KeyFile;
import rigwarden.rigfile.Keys;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RatingKeys;
import rigwarden.rigfile.RefusalKind;

/** Reads a map. */
public final class MapFile {
    private static final LogMap.Layout PLAIN = new LogMap.Layout(',', false, 0);
    private static final int MOST_CELLS = 16;
    private static final double MOST = 1e6;
    private static final double MOST_VOLTS = 1000;
    private static final String HEADING = "it is the name in the file's own heading, letter for letter";
    private static final String STATED = "the instrument's own statement, limits ±: no finding can be surer";
    private static final String OVERFLOW = "beyond it a number is an overflow, and no reading";

    private MapFile() {}

    /** Reads a map; nothing is thrown. */
    public static Read<LogMap> read(Path file) {
        return KeyFile.read(file, MapFile::map);
    }

    /** Reads a map from memory; {@code name} is for refusals. */
    public static Read<LogMap> read(String name, String text) {
        return KeyFile.read(name, text, MapFile::map);
    }

    /** The keys of a map. */
    public static LogMap map(Keys keys) {
        String name = keys.text("name", "the findings name the log by it");
        String source = keys.has("source") ? keys.text("source", 400, "where the data come from, and their licence") : "";
        Cells described = keys.table("cells", "what was under test").map(MapFile::cells).orElse(new Cells(1, 1, 1, 1, 0, 0, 0));
        Cells cells = keys.has("rating")
                ? keys.table("rating", RatingKeys.WHY).map(rating -> RatingKeys.read(rating, described, 0, MOST_VOLTS)).orElse(described)
                : described;
        LogMap.Layout layout = keys.has("file") ? keys.table("file", "how the file is written").map(MapFile::layout).orElse(PLAIN) : PLAIN;
        LogMap.Column time = keys.table("time", "no charge without a time").map(MapFile::time).orElse(nothing());
        LogMap.Current current = keys.table("current", "no charge without a current").map(MapFile::current)
                .orElse(new LogMap.Current(nothing(), 0, 0, 1));
        List<LogMap.Measured> columns = new ArrayList<>();
        for (Keys one : keys.tables("voltage", RefusalKind.MISSING_KEY, "each cell in series has its voltage, or a whole pack is one \"cell\"")) {
            columns.add(voltage(one, cells.series()));
        }
        if (keys.has("temperature")) {
            for (Keys one : keys.tables("temperature", RefusalKind.MISSING_KEY, "a capacity is decided at the rating's temperature only")) {
                columns.add(temperature(one, cells.series()));
            }
        }
        Optional<LogMap.Counted> counted = keys.has("counted")
                ? keys.table("counted", "the instrument's own count of the charge is primary, since it missed nothing").map(MapFile::counted)
                : Optional.empty();
        Stretches stretches = StretchKeys.read(keys);
        placesOnce(keys, columns, cells.series());
        return new LogMap(name, source, cells, layout, time, current, columns, counted, stretches);
    }

    private static Cells cells(Keys keys) {
        Cells cells = new Cells(
                Math.max(1, keys.whole("series", "cells", 1, MOST_CELLS, "each has its own voltage")),
                Math.max(1, keys.whole("parallel", "cells", 1, 64, "they share one voltage")),
                keys.number("rated_ah", "Ah", 0.01, 10_000, "rates are in parts of it: of one place, with all its cells in parallel"),
                keys.number("ceiling_v", "V", 0.5, MOST_VOLTS, "an end by ceiling or taper is believed only where it was reached"),
                keys.number("cut_off_v", "V", 0, MOST_VOLTS, "an end by cut-off is believed only where it was reached"), 0, 0);
        keys.noOthers();
        return cells;
    }

    private static LogMap.Layout layout(Keys keys) {
        String separator = keys.has("separator")
                ? keys.word("separator", List.of("comma", "semicolon", "tab"), "what stands between two fields; a comma without this key")
                : "comma";
        boolean comma = keys.has("decimal_comma") && keys.yesOrNo("decimal_comma", "whether numbers have a comma instead of a point");
        int before = keys.has("lines_before") ? keys.whole("lines_before", "lines", 0, 10_000, "they come before the heading, and are not read") : 0;
        keys.noOthers();
        return new LogMap.Layout(switch (separator) {
            case "semicolon" -> ';';
            case "tab" -> '\t';
            case String _ -> ',';
        }, comma, before);
    }

    private static LogMap.Column nothing() {
        return new LogMap.Column("", 1, 0, -1, 1);
    }

    private static LogMap.Column time(Keys keys) {
        LogMap.Column column = new LogMap.Column(keys.text("column", HEADING),
                keys.number("unit_s", "s", 1e-9, 1e5, "it is the worth of 1 in the column"), 0, -1e12, 1e12);
        keys.noOthers();
        return column;
    }

    private static LogMap.Current current(Keys keys) {
        String name = keys.text("column", HEADING);
        double unit = keys.number("unit_a", "A", 1e-9, 1e3, "it is the worth of 1 in the column");
        boolean positive = keys.word("into_cells", List.of("positive", "negative"), "charge and discharge must not be taken for each other")
                .equals("positive");
        double most = keys.number("most_a", "A", 1e-3, MOST, OVERFLOW);
        LogMap.Current current = new LogMap.Current(new LogMap.Column(name, positive ? unit : -unit, 0, -most, most),
                keys.number("gain_percent", "%", 0, 20, STATED + "; its clock included") / 100,
                keys.number("offset_a", "A", 0, 100, STATED),
                keys.number("step_a", "A", 1e-12, 100, "the smallest change that it shows: a count cannot be surer than half of it"));
        keys.noOthers();
        return current;
    }

    private static LogMap.Measured voltage(Keys keys, int series) {
        LogMap.Column column = new LogMap.Column(keys.text("column", HEADING),
                keys.number("unit_v", "V", 1e-9, 1e3, "it is the worth of 1 in the column"), 0,
                keys.number("least_v", "V", -1000, 1000, "below it a number is an overflow, and no reading"),
                keys.number("most_v", "V", 0, MOST, OVERFLOW));
        LogMap.Measured voltage = new LogMap.Measured(column, Place.CELL,
                cell(keys, series, "findings are by cell, from 1 on"),
                keys.number("gain_percent", "%", 0, 20, STATED) / 100,
                keys.number("offset_v", "V", 0, 10, STATED),
                keys.number("step_v", "V", 1e-12, 10, "the smallest change that it shows: a resistance cannot be surer"));
        keys.noOthers();
        return voltage;
    }

    private static LogMap.Measured temperature(Keys keys, int series) {
        String place = keys.word("place", List.of("body", "stud", "bar", "room"), "a cell's own warmth is not that of its joint");
        boolean room = place.equals("room");
        double zero = keys.has("zero_c") ? keys.number("zero_c", "°C", -300, 300, "it is the worth of 0 in the column") : 0;
        LogMap.Measured temperature = new LogMap.Measured(new LogMap.Column(keys.text("column", HEADING),
                keys.number("unit_k", "K", 1e-9, 1e3, "it is the worth of 1 in the column"), zero, -100, 300),
                Place.valueOf(place.toUpperCase(Locale.ROOT)),
                room ? 0 : cell(keys, series, "the cell that it is on; of a bar the lower of its two"),
                0, keys.number("limits_k", "K", 0, 50, STATED), 0);
        keys.noOthers();
        return temperature;
    }

    private static int cell(Keys keys, int series, String why) {
        int cell = keys.whole("cell", "", 1, MOST_CELLS, why);
        if (cell > series && keys.good("cell")) {
            keys.refuse(RefusalKind.OUT_OF_RANGE, "cell", "1…" + series, "there are so many cells in series", "");
        }
        return cell;
    }

    private static LogMap.Counted counted(Keys keys) {
        double unit = 3600 * keys.number("unit_ah", "Ah", 1e-12, 1e3, "it is the worth of 1 in both columns");
        LogMap.Counted counted = new LogMap.Counted(
                new LogMap.Column(keys.text("in_column", "what went into the cells since the log began; it never falls"), unit, 0, 0, 1e9),
                new LogMap.Column(keys.text("out_column", "what came out of them since the log began, positive; it never falls"), unit, 0, 0, 1e9),
                3600 * keys.number("step_ah", "Ah", 1e-12, 10, "the smallest change that they show"));
        keys.noOthers();
        return counted;
    }

    private static void placesOnce(Keys keys, List<LogMap.Measured> columns, int series) {
        Set<String> places = new HashSet<>();
        for (LogMap.Measured one : columns) {
            if (!places.add(LogChannels.nameOf(one))) {
                keys.refuse(RefusalKind.SAME_NAME, one.place() == Place.CELL ? "voltage" : "temperature",
                        "each place once", "two columns for " + LogChannels.nameOf(one) + " would be taken for each other", "");
            }
        }
        long cells = columns.stream().filter(one -> one.place() == Place.CELL).count();
        if (cells < series && keys.good("voltage") && keys.good("cells")) {
            keys.refuse(RefusalKind.MISSING_KEY, "voltage", "one for each of the " + series + " cells in series",
                    "a cell that nobody saw may have been the one that ended it", "Add it, or map the pack as one cell with its ceiling and cut-off.");
        }
    }
}
