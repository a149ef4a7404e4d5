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
    private static final int DEEPEST = 40;

    private Source() {}

    static Optional<String> text(Path path, Page page) {
        try {
            if (Files.size(path) > MOST_BYTES) {
                page.refuseAt(RefusalKind.TOO_LARGE, 0, "", "a file of " + Files.size(path) + " bytes",
                        "at most " + MOST_BYTES + " bytes", "no rig needs more", "Is this the right file?");
                return Optional.empty();
            }
            byte[] bytes = Files.readAllBytes(path);
            if (!plain(bytes, page)) {
                return Optional.empty();
            }
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

    /** What an editor may have saved instead of plain UTF-8; each is said by its name. */
    private static boolean plain(byte[] bytes, Page page) {
        int first = bytes.length > 0 ? bytes[0] & 0xFF : 0;
        int second = bytes.length > 1 ? bytes[1] & 0xFF : 0;
        boolean marked = first == 0xFF && second == 0xFE || first == 0xFE && second == 0xFF;
        boolean unmarked = bytes.length > 3 && (bytes[0] == 0) != (bytes[1] == 0) && (bytes[2] == 0) != (bytes[3] == 0);
        if (marked || unmarked) {
            page.refuseAt(RefusalKind.UTF_16, 0, "", "UTF-16", "UTF-8 text", "TOML is defined as UTF-8",
                    "Save it as UTF-8 in your editor.");
        } else if (first == 0xEF && second == 0xBB) {
            page.refuseAt(RefusalKind.BYTE_ORDER_MARK, 1, "", "a byte-order mark before the text", "UTF-8 without a mark",
                    "the first key would be another one", "Save it as UTF-8 without a mark.");
        } else if (indexOfNul(bytes) >= 0) {
            page.refuseAt(RefusalKind.NUL_BYTES, 0, "", "a NUL at byte " + indexOfNul(bytes), "text",
                    "this file was damaged, or is none", "Take it from your backup.");
        } else {
            return true;
        }
        return false;
    }

    private static int indexOfNul(byte[] bytes) {
        for (int i = 0; i < bytes.length; i++) {
            if (bytes[i] == 0) {
                return i;
            }
        }
        return -1;
    }

    /** The parser goes as deep as the text; nothing that a rig needs is nested like that. */
    private static boolean deep(String text, Page page) {
        int depth = 0;
        int line = 1;
        for (int i = 0; i < text.length(); i++) {
            char letter = text.charAt(i);
            depth += letter == '[' || letter == '{' ? 1 : letter == ']' || letter == '}' ? -1 : 0;
            if (letter == '\n') {
                line++;
                depth = Math.min(depth, DEEPEST / 2);
            }
            if (depth > DEEPEST) {
                page.refuseAt(RefusalKind.TOO_DEEP, line, "", "more than " + DEEPEST + " brackets in each other",
                        "plain tables and lists", "no rig needs more", "Look for brackets that do not close.");
                return true;
            }
        }
        return false;
    }

    /** The parser checks itself where assertions are on, and nests as deep as the text: neither may end the program. */
    static Optional<TomlParseResult> table(String text, Page page) {
        if (deep(text, page)) {
            return Optional.empty();
        }
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
