package rigwarden.rigfile;

import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Function;
import org.tomlj.TomlParseResult;

/** Reads a TOML file that is neither rig nor programme in the manner of both: by questions, and every refusal with its line. */
public final class KeyFile {
    private KeyFile() {}

    /**
     * Reads a file from disk.
     *
     * @param path of the file
     * @param reader asks for every key that may be there; a key that it does not ask for is refused
     * @return what the reader made, or every refusal; nothing is thrown
     */
    public static <T> Read<T> read(Path path, Function<Keys, T> reader) {
        Page page = new Page(RigFile.name(path));
        return Source.text(path, page).map(text -> read(page, text, reader)).orElseGet(page::refused);
    }

    /** Reads a file that is already in memory; {@code name} is for refusals. */
    public static <T> Read<T> read(String name, String text, Function<Keys, T> reader) {
        return read(new Page(name), text, reader);
    }

    private static <T> Read<T> read(Page page, String text, Function<Keys, T> reader) {
        Optional<TomlParseResult> table = Source.table(text, page);
        if (table.isEmpty()) {
            return page.refused();
        }
        Keys root = new Keys(page, table.get());
        T value = reader.apply(root);
        root.noOthers();
        return page.sound() ? new Read.Sound<>(value, page.warnings()) : page.refused();
    }
}
