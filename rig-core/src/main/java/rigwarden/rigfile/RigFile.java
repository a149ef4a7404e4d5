package rigwarden.rigfile;

import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.tomlj.TomlParseResult;
import rigwarden.rig.Rig;

/** Reads a rig file. */
public final class RigFile {
    private RigFile() {}

    /**
     * Reads a rig file from disk with the calibrations that lie beside it, each of which must hold today.
     *
     * @param path of the file
     * @return the rig with what is to be named about it, or every refusal; nothing is thrown
     */
    public static Read<Rig> read(Path path) {
        return read(path, LocalDate.now(ZoneId.systemDefault()));
    }

    /** The same for a day; see {@link #read(Path)}. */
    public static Read<Rig> read(Path path, LocalDate today) {
        Page page = new Page(name(path));
        Optional<String> text = Source.text(path, page);
        return text.isEmpty() ? page.refused() : read(page, text.get(), CalibrationFile.beside(path, page), Optional.of(today));
    }

    /** Reads a rig file from disk without what lies beside it: for somebody who is about to calibrate. */
    public static Read<Rig> bare(Path path) {
        Page page = new Page(name(path));
        return Source.text(path, page).map(text -> read(page, text, List.of(), Optional.empty())).orElseGet(page::refused);
    }

    /**
     * Reads a rig file that is already in memory.
     *
     * @param name of the file, for refusals
     * @param text its TOML
     */
    public static Read<Rig> read(String name, String text) {
        return read(name, text, List.of());
    }

    /**
     * Reads a rig file that is already in memory with its calibrations, which held when they were put with it.
     *
     * @param calibrations text of each
     */
    public static Read<Rig> read(String name, String text, List<String> calibrations) {
        return read(new Page(name), text, calibrations.stream().map(one -> new CalibrationFile("calibration with " + name, one)).toList(),
                Optional.empty());
    }

    /**
     * Reads a rig file that is already in memory with calibrations that a person names; whether they hold today is not asked.
     *
     * @param name of the rig file, for refusals
     * @param calibrations with their own names
     */
    public static Read<Rig> with(String name, String text, List<CalibrationFile> calibrations) {
        return read(new Page(name), text, calibrations, Optional.empty());
    }

    static String name(Path path) {
        Path last = path.getFileName();
        return last == null ? path.toString() : last.toString();
    }

    private static Read<Rig> read(Page page, String text, List<CalibrationFile> beside, Optional<LocalDate> today) {
        Optional<TomlParseResult> table = Source.table(text, page);
        if (table.isEmpty()) {
            return page.refused();
        }
        Sketch parts = new RigKeys(page).sketch(new Keys(page, table.get()));
        if (!page.sound()) {
            return page.refused();
        }
        Sketch sketch = parts.with(new CalibrationKeys(page, parts.rig(), today).read(beside));
        new NameChecks(page, sketch).check();
        new WireChecks(page, sketch).check();
        new PlaceChecks(page, sketch).check();
        new PathChecks(page, sketch).check();
        new GuardChecks(page, sketch).check();
        new DeviceChecks(page, sketch).check();
        new FitChecks(page, sketch).check();
        return page.sound() ? new Read.Sound<>(sketch.complete(), page.warnings()) : page.refused();
    }
}
