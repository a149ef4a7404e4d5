package rigwarden.rigfile;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Calibrations lie beside the rig file that they belong to, one file a channel: {@code hut.current_a.calibration.toml} beside
 * {@code hut.toml}. The first line of each seals the rest.
 *
 * @param name of the file, for refusals
 * @param text of it, whole
 */
public record CalibrationFile(String name, String text) {
    private static final String END = ".calibration.toml";
    private static final String SEAL = "sha256 = \"";
    private static final Pattern CHANNEL = Pattern.compile("^channel = \"([^\"]*)\"$", Pattern.MULTILINE);

    /** Where the calibration of a channel lies. */
    public static Path of(Path rigFile, String channel) {
        return rigFile.resolveSibling(stem(rigFile) + "." + channel + END);
    }

    private static String stem(Path rigFile) {
        String name = RigFile.name(rigFile);
        return name.endsWith(".toml") ? name.substring(0, name.length() - ".toml".length()) : name;
    }

    /** The channel that it says it is of; empty where no line says one, and then it is refused when it is read. */
    public Optional<String> channel() {
        Matcher line = CHANNEL.matcher(text);
        return line.find() ? Optional.of(line.group(1)) : Optional.empty();
    }

    /** Seals what a calibration says. */
    public static String sealed(String body) {
        return SEAL + hash(body) + "\"\n" + body;
    }

    /** Whether the first line is the seal of all others. */
    boolean whole() {
        int end = text.indexOf('\n');
        return end > 0 && text.substring(0, end).equals(SEAL + hash(text.substring(end + 1)) + "\"");
    }

    private static String hash(String body) {
        try {
            return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(body.getBytes(StandardCharsets.UTF_8)));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every JDK has SHA-256", e);
        }
    }

    /** All that lie beside a rig file, by name; those that cannot be read are refused on the page. */
    static List<CalibrationFile> beside(Path rigFile, Page page) {
        Path folder = rigFile.toAbsolutePath().getParent();
        String begin = stem(rigFile) + ".";
        if (folder == null) {
            return List.of();
        }
        try (Stream<Path> files = Files.list(folder)) {
            return files.filter(file -> RigFile.name(file).startsWith(begin) && RigFile.name(file).endsWith(END)).sorted()
                    .flatMap(file -> read(file, page).stream()).toList();
        } catch (IOException | UncheckedIOException e) {
            page.refuseAt(RefusalKind.NOT_READABLE, 0, "", "a folder that cannot be listed (" + e.getMessage() + ")",
                    "a readable folder", "calibrations lie beside the rig file, and nobody knows whether there are any",
                    "Look at the folder's permissions.");
            return List.of();
        }
    }

    private static List<CalibrationFile> read(Path file, Page page) {
        Page own = new Page(RigFile.name(file));
        List<CalibrationFile> found = Source.text(file, own).map(text -> new CalibrationFile(RigFile.name(file), text)).stream().toList();
        page.carry(own.refusals());
        return found;
    }
}
