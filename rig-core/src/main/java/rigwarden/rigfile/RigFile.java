package rigwarden.rigfile;

import java.nio.file.Path;
import java.util.Optional;
import org.tomlj.TomlParseResult;
import rigwarden.rig.Rig;

/** Reads a rig file. */
public final class RigFile {
    private RigFile() {}

    /**
     * Reads a rig file from disk.
     *
     * @param path of the file
     * @return the rig with what is to be named about it, or every refusal; nothing is thrown
     */
    public static Read<Rig> read(Path path) {
        Page page = new Page(name(path));
        return Source.text(path, page).map(text -> read(page, text)).orElseGet(page::refused);
    }

    /**
     * Reads a rig file that is already in memory.
     *
     * @param name of the file, for refusals
     * @param text its TOML
     */
    public static Read<Rig> read(String name, String text) {
        return read(new Page(name), text);
    }

    static String name(Path path) {
        Path last = path.getFileName();
        return last == null ? path.toString() : last.toString();
    }

    private static Read<Rig> read(Page page, String text) {
        Optional<TomlParseResult> table = Source.table(text, page);
        if (table.isEmpty()) {
            return page.refused();
        }
        Sketch sketch = new RigKeys(page).sketch(new Keys(page, table.get()));
        if (!page.sound()) {
            return page.refused();
        }
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
