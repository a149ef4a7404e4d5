package rigwarden.command;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** Where the logbook is. */
final class LogbookOption {
    @Option(
            names = "--logbook",
            paramLabel = "DIR",
            description = "Folder of the logbook (default: rigwarden under $XDG_DATA_HOME or ~/.local/share).")
    private Path folder = standard();

    private static Path standard() {
        String data = System.getenv("XDG_DATA_HOME");
        Path base = data == null || data.isBlank()
                ? Path.of(System.getProperty("user.home", "."), ".local", "share")
                : Path.of(data);
        return base.resolve("rigwarden");
    }

    Path folder() {
        return folder;
    }
}
