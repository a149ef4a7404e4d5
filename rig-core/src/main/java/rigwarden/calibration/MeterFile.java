package rigwarden.calibration;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import rigwarden.rigfile.KeyFile;
import rigwarden.rigfile.Keys;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RefusalKind;

/** Reads what a person writes for a calibration: the reference meter's statement, and points that were taken before. */
public final class MeterFile {
    private static final double MOST = 1e5;
    private static final String STATED = "the result cannot be better than the meter";

    private MeterFile() {}

    /** Reads a meter's statement; nothing is thrown. */
    public static Read<MeterStatement> read(Path file) {
        return KeyFile.read(file, MeterFile::meter);
    }

    /** Reads a meter's statement from memory; {@code name} is for refusals. */
    public static Read<MeterStatement> read(String name, String text) {
        return KeyFile.read(name, text, MeterFile::meter);
    }

    /** Reads points; nothing is thrown. */
    public static Read<List<Point>> points(Path file) {
        return KeyFile.read(file, MeterFile::points);
    }

    /** Reads points from memory; {@code name} is for refusals. */
    public static Read<List<Point>> points(String name, String text) {
        return KeyFile.read(name, text, MeterFile::points);
    }

    /** The keys of a meter's statement, in the unit that it shows. */
    public static MeterStatement meter(Keys keys) {
        return new MeterStatement(
                named(keys),
                keys.number("percent", "%", 0, 5, STATED) / 100,
                keys.number("counts", "", 0, 1000, STATED),
                positive(keys, "digit", "it is the worth of one count, in V or A"),
                keys.has("range_percent") ? keys.number("range_percent", "%", 0, 5, STATED) / 100 : 0,
                positive(keys, "range", "it is the end of the range in which all points are taken, in V or A"),
                day(keys),
                keys.whole("holds_days", "days", 1, 1100, "a meter's statement is for some time after its calibration"));
    }

    private static String named(Keys keys) {
        return keys.text("name", "the result says what it was calibrated against");
    }

    /** What stands here after a refusal ends up nowhere. */
    private static double positive(Keys keys, String key, String why) {
        return Math.max(1e-9, keys.number(key, "", 1e-9, MOST, why));
    }

    private static LocalDate day(Keys keys) {
        String text = keys.text("calibrated", "a meter nobody has calibrated states nothing");
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException _) {
            if (keys.good("calibrated")) {
                keys.refuse(RefusalKind.UNKNOWN_WORD, "calibrated", "a day, as 2026-03-01", "the statement holds for some time after it", "");
            }
            return LocalDate.EPOCH;
        }
    }

    private static List<Point> points(Keys keys) {
        List<Point> points = new ArrayList<>();
        for (Keys one : keys.tables("point", RefusalKind.MISSING_KEY, "the file is its points")) {
            points.add(new Point(
                    one.number("reads", "", -MOST, MOST, "it is the channel's mean, in its unit, without any calibration"),
                    one.number("scatter", "", 0, MOST, "it is the standard deviation of the readings"),
                    Math.max(2, one.whole("scans", "", 2, 1_000_000, "the mean is of so many readings")),
                    one.number("shown", "", -MOST, MOST, "it is what the reference meter showed meanwhile")));
            one.noOthers();
        }
        return List.copyOf(points);
    }
}
