package rigwarden.command;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Limits;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** {@code rigwarden limits}: what is in force for a rig, and how fast each rule reacts. */
@Command(
        name = "limits",
        mixinStandardHelpOptions = true,
        description = "Print the envelope in force, the governing part, reaction and wire times.")
final class LimitsCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RIG", description = "Rig file.")
    private Path rigFile = Path.of("");

    @Parameters(index = "1", arity = "0..1", paramLabel = "PROGRAMME", description = "Programme file.")
    private Path programFile = Path.of("");

    @Override
    public Integer call() {
        Read.Sound<Rig> rig = Inputs.sound(RigFile.read(rigFile));
        Limits limits = programFile.toString().isEmpty()
                ? Limits.of(rig.value())
                : Limits.of(rig.value(), Inputs.sound(ProgramFile.read(programFile, rig)).value());
        rig.warnings().forEach(w -> System.out.println(w.print()));
        limits.lines().forEach(System.out::println);
        return Exits.DONE;
    }
}
