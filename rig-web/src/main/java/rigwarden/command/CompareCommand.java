package rigwarden.command;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;
import rigwarden.paper.CompareText;
import rigwarden.paper.ComparedRun;

/** {@code rigwarden compare}: one pack with itself over time. */
@Command(
        name = "compare",
        mixinStandardHelpOptions = true,
        description = "Hold runs of one pack against the first of them: what changed at like conditions, and how sure that is.")
final class CompareCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN", description = "Number of the run that the others are held against.")
    private int first;

    @Parameters(index = "1..*", arity = "1..*", paramLabel = "RUN", description = "Numbers of later runs of the same pack.")
    private List<Integer> others = List.of();

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() {
        ComparedRun earliest = read(first);
        List<ComparedRun> later = new ArrayList<>();
        for (int number : others) {
            ComparedRun run = read(number);
            earliest.stranger(run).ifPresent(why -> {
                throw new Refused("Nothing was compared: " + why + ".");
            });
            later.add(run);
        }
        CompareText.of(earliest, later).forEach(System.out::println);
        return Exits.DONE;
    }

    private ComparedRun read(int run) {
        return ComparedRun.read(run, StoredRuns.file(logbook, run)).orElseThrow(() -> new Refused("The rig of run " + run
                + " is refused by this version of Rigwarden, so that it is not compared."));
    }
}
