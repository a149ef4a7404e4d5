package rigwarden.rigfile;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.tomlj.Toml;
import org.tomlj.TomlParseError;
import org.tomlj.TomlParseResult;

/** From a path to text to a TOML table, with refusals for what goes wrong on the way. */
final class Source {
    private static final long MOST_BYTES = 1_000_000;

    private Source() {}

    static Optional<String> text(Path path, Page page) {
        try {
            if (Files.size(path) > MOST_BYTES) {
                page.refuseAt(RefusalKind.NOT_READABLE, 0, "", "a file of " + Files.size(path) + " bytes",
                        "at most " + MOST_BYTES + " bytes", "no rig needs more", "Is this the right file?");
                return Optional.empty();
            }
            byte[] bytes = Files.readAllBytes(path);
            return Optional.of(StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString());
        } catch (CharacterCodingException _) {
            page.refuseAt(RefusalKind.NOT_UTF8, 0, "", "bytes that are not UTF-8", "UTF-8 text",
                    "TOML is defined as UTF-8", "Save it as UTF-8 in your editor.");
        } catch (IOException | SecurityException _) {
            page.refuseAt(RefusalKind.NOT_READABLE, 0, "",
                    Files.exists(path) ? "a file that may not be read" : "no such file", "a readable file",
                    "without it nothing is known about the rig or the test", "Check the name and its permissions.");
        }
        return Optional.empty();
    }

    /** The parser checks itself where assertions are on, and nests as deep as the text: neither may end the program. */
    static Optional<TomlParseResult> table(String text, Page page) {
        TomlParseResult result;
        try {
            result = Toml.parse(text);
        } catch (StackOverflowError | AssertionError | RuntimeException _) {
            page.refuseAt(RefusalKind.NOT_TOML, 0, "", "text on which the reader of TOML gave up", "TOML",
                    "the file cannot be read otherwise", "Look for brackets that do not close.");
            return Optional.empty();
        }
        for (TomlParseError error : result.errors()) {
            int line = error.position() == null ? 0 : error.position().line();
            String message = String.valueOf(error.getMessage());
            if (message.contains("previously defined") || message.contains("already defined")) {
                page.refuseAt(RefusalKind.TWICE, line, "", message, "each key once",
                        "nobody could tell which of them holds", "Remove one of them.");
            } else {
                page.refuseAt(RefusalKind.NOT_TOML, line, "", message, "TOML", "the file cannot be read otherwise",
                        "Look at this line and the one before it.");
            }
        }
        return result.hasErrors() ? Optional.empty() : Optional.of(result);
    }
}
