package rigwarden.command;

import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import rigwarden.rigfile.Refusal;

/** {@code rigwarden run}: a programme on the real rig. */
@Command(
        name = "run",
        mixinStandardHelpOptions = true,
        description = "Run a programme on the real rig. The start is asked for on the page, with the arm key turned.")
final class RunCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RIG", description = "Rig file.")
    private Path rigFile = Path.of("");

    @Parameters(index = "1", paramLabel = "PROGRAMME", description = "Programme file.")
    private Path programFile = Path.of("");

    @Mixin
    private PageOptions place = new PageOptions();

    @Mixin
    private NoticeOption notices = new NoticeOption();

    @Mixin
    private CellsOption cells = new CellsOption();

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() throws Exception {
        Inputs inputs = Inputs.read(rigFile, programFile);
        inputs.warnings().stream().map(Refusal::print).forEach(System.out::println);
        return new RigRun(place, notices, cells, logbook).call(inputs, Optional.empty());
    }
}
