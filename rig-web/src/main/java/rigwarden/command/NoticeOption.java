package rigwarden.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import picocli.CommandLine.Option;
import rigwarden.notice.NoticeFile;
import rigwarden.notice.NoticePlan;
import rigwarden.rigfile.Refusal;

/** Where notices go. */
final class NoticeOption {
    @Option(names = "--notices", paramLabel = "FILE",
            description = "File that says where notices go (`rigwarden keys --notices` lists its keys).")
    private Optional<Path> file = Optional.empty();

    /** The plan of the named file, if one is named. */
    Optional<NoticePlan> named() {
        return file.map(NoticeOption::read);
    }

    /** The plan of the named file, else of the one beside the logbook, if it is there. */
    Optional<NoticePlan> namedOrBeside(Path logbook) {
        Path beside = logbook.resolve(NoticeFile.NAME);
        return file.isEmpty() && Files.exists(beside) ? Optional.of(read(beside)) : named();
    }

    static NoticePlan read(Path file) {
        var read = Inputs.sound(NoticeFile.read(file));
        read.warnings().stream().map(Refusal::print).forEach(System.out::println);
        return read.value();
    }
}
