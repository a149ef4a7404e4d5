package rigwarden.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import rigwarden.emulated.Rehearsal;
import rigwarden.warden.Warden;

/** What a run is made with: a run that was broken off goes on with the same and nothing else. */
final class Version {
    static final String RIGWARDEN = "0.1.0";
    private static final int SHOWN = 16;
    /** One class of each part of the program. */
    private static final List<Class<?>> PARTS = List.of(Warden.class, Rehearsal.class, Version.class);
    private static final String BUILD = build();

    private Version() {}

    /** Name to version, of software and runtime; the build is the first half of a SHA-256 over every class of ours. */
    static Map<String, String> all() {
        return Map.of("rigwarden", RIGWARDEN, "build", BUILD, "java", Runtime.version().toString());
    }

    private static String build() {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (Class<?> part : PARTS) {
                Path code = Path.of(part.getProtectionDomain().getCodeSource().getLocation().toURI());
                if (Files.isDirectory(code)) {
                    add(digest, code);
                } else {
                    try (FileSystem jar = FileSystems.newFileSystem(code)) {
                        add(digest, jar.getPath("/"));
                    }
                }
            }
            return HexFormat.of().formatHex(digest.digest()).substring(0, SHOWN);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (NoSuchAlgorithmException | URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void add(MessageDigest digest, Path root) throws IOException {
        List<Path> classes;
        try (Stream<Path> files = Files.walk(root)) {
            classes = files.filter(f -> f.toString().endsWith(".class"))
                    .sorted((one, other) -> one.toString().compareTo(other.toString())).toList();
        }
        for (Path file : classes) {
            digest.update(Files.readAllBytes(file));
        }
    }
}
