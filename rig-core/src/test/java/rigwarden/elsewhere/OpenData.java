package rigwarden.elsewhere;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Assumptions;

/** The open measured data, which are no part of this project; a test that needs them and does not find them says so and is skipped. */
public final class OpenData {
    private OpenData() {}

    /** A file of a data set. */
    public static Path file(String set, String name) {
        Path file = shared().resolve("data").resolve(set).resolve(name);
        Assumptions.assumeTrue(Files.isReadable(file), "SKIPPED: needs ../shared/data, which is not here; name the folder that holds"
                + " data/ with -Drigwarden.shared=FOLDER");
        return file;
    }

    private static Path shared() {
        String named = System.getProperty("rigwarden.shared");
        if (named != null) {
            return Path.of(named);
        }
        Path folder = Path.of("").toAbsolutePath();
        while (folder.getParent() != null && !Files.isDirectory(folder.resolve("shared"))) {
            folder = folder.getParent();
        }
        return folder.resolve("shared");
    }
}
