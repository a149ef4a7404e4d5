package rigwarden.logbook;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import rigwarden.run.PickUp;

/**
 * What a run file says about itself, so that it can be read without anything beside it.
 *
 * @param rigText the rig file, whole
 * @param programmeText the programme file, whole
 * @param versions name to version: software, runtime, database
 * @param boot identity of the boot that the run began in
 * @param seed of every random stream of a rehearsal; 0 in a real run
 * @param rehearsal whether the world was emulated
 * @param started wall-clock label of the beginning; a label, no measure
 * @param originNanos monotonic time that elapsed seconds count from
 * @param mishaps what was to go wrong in a rehearsal, in the words in which it was asked for
 * @param from where it goes on, if another run was broken off there
 * @param calibrations the files that lay beside the rig file, whole, in the order of their channels
 * @param imported from which file, where it is no run of a rig but a log from elsewhere; the text of the rig file is then its map
 */
public record RunAbout(
        String rigText,
        String programmeText,
        Map<String, String> versions,
        String boot,
        long seed,
        boolean rehearsal,
        String started,
        long originNanos,
        List<String> mishaps,
        Optional<PickUp> from,
        List<String> calibrations,
        Optional<String> imported) {
    private static final String VERSION = "version ";
    private static final String MISHAP = "mishap ";
    private static final String IMPORTED = "imported from";
    private static final String CALIBRATION = "calibration ";

    public RunAbout {
        versions = Map.copyOf(versions);
        mishaps = List.copyOf(mishaps);
        calibrations = List.copyOf(calibrations);
    }

    /** A run of a rig. */
    public RunAbout(String rigText, String programmeText, Map<String, String> versions, String boot, long seed, boolean rehearsal,
            String started, long originNanos, List<String> mishaps, Optional<PickUp> from, List<String> calibrations) {
        this(rigText, programmeText, versions, boot, seed, rehearsal, started, originNanos, mishaps, from, calibrations, Optional.empty());
    }

    /** A run on a rig without calibrations. */
    public RunAbout(String rigText, String programmeText, Map<String, String> versions, String boot, long seed, boolean rehearsal,
            String started, long originNanos, List<String> mishaps, Optional<PickUp> from) {
        this(rigText, programmeText, versions, boot, seed, rehearsal, started, originNanos, mishaps, from, List.of());
    }

    /** A run that begins at its beginning, and nothing is to go wrong. */
    public RunAbout(String rigText, String programmeText, Map<String, String> versions, String boot, long seed,
            boolean rehearsal, String started, long originNanos) {
        this(rigText, programmeText, versions, boot, seed, rehearsal, started, originNanos, List.of(), Optional.empty());
    }

    /**
     * A log from elsewhere.
     *
     * @param mapText its map, whole
     * @param versions name to version
     * @param imported where it came from, in words
     * @param started wall-clock label of the import
     * @param originNanos time of its first row, by its own clock
     */
    public static RunAbout imported(String mapText, Map<String, String> versions, String imported, String started, long originNanos) {
        return new RunAbout(mapText, "", versions, "", 0, false, started, originNanos, List.of(), Optional.empty(), List.of(),
                Optional.of(imported));
    }

    /** SHA-256 of a rig file's or a programme's text in UTF-8, hexadecimal. */
    public static String hashOf(String text) {
        return Recovery.sha256(text);
    }

    /** SHA-256 of a file, hexadecimal. */
    public static String hashOf(Path file) throws IOException {
        return Recovery.sha256(file);
    }

    /** The same run on a rig with its calibrations. */
    public RunAbout calibrated(List<String> texts) {
        return new RunAbout(rigText, programmeText, versions, boot, seed, rehearsal, started, originNanos, mishaps, from, texts, imported);
    }

    /** SHA-256 of the rig file; with calibrations, of all of them one after the other. */
    public String rigHash() {
        return Recovery.sha256(rigText + String.join("", calibrations));
    }

    /** SHA-256 of the programme. */
    public String programmeHash() {
        return Recovery.sha256(programmeText);
    }

    Map<String, String> rows() {
        Map<String, String> rows = new LinkedHashMap<>();
        rows.put("rig file", rigText);
        rows.put("programme", programmeText);
        rows.put("boot", boot);
        rows.put("seed", Long.toString(seed));
        rows.put("rehearsal", rehearsal ? "yes" : "no");
        rows.put("started", started);
        rows.put("origin ns", Long.toString(originNanos));
        new TreeMap<>(versions).forEach((name, version) -> rows.put(VERSION + name, version));
        for (int i = 0; i < mishaps.size(); i++) {
            rows.put(MISHAP + (i + 1), mishaps.get(i));
        }
        for (int i = 0; i < calibrations.size(); i++) {
            rows.put(CALIBRATION + (i + 1), calibrations.get(i));
        }
        imported.ifPresent(words -> rows.put(IMPORTED, words));
        from.ifPresent(place -> rows.putAll(PickUpRows.rows(place)));
        return rows;
    }

    static RunAbout of(Map<String, String> rows) {
        Map<String, String> versions = new TreeMap<>();
        rows.forEach((key, value) -> {
            if (key.startsWith(VERSION)) {
                versions.put(key.substring(VERSION.length()), value);
            }
        });
        return new RunAbout(need(rows, "rig file"), need(rows, "programme"), versions, need(rows, "boot"),
                Long.parseLong(need(rows, "seed")), need(rows, "rehearsal").equals("yes"), need(rows, "started"),
                Long.parseLong(need(rows, "origin ns")), numbered(rows, MISHAP), PickUpRows.read(rows), numbered(rows, CALIBRATION),
                Optional.ofNullable(rows.get(IMPORTED)));
    }

    private static List<String> numbered(Map<String, String> rows, String begin) {
        List<String> found = new ArrayList<>();
        for (int i = 1; rows.containsKey(begin + i); i++) {
            found.add(rows.get(begin + i));
        }
        return found;
    }

    private static String need(Map<String, String> rows, String key) {
        String value = rows.get(key);
        if (value == null) {
            throw new LogbookException("The run file does not say \"" + key + "\" in its table about.");
        }
        return value;
    }
}
