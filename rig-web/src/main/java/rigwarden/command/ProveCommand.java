package rigwarden.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.emulated.Mishap;
import rigwarden.prove.Stops;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.Refusal;
import rigwarden.rigfile.RigFile;

/** {@code rigwarden prove}: a guided check of the wiring, before any real current. */
@Command(
        name = "prove",
        mixinStandardHelpOptions = true,
        description = {"Lead a person through the check of a rig's wiring: taps, probes, loop, grounds, each way to stop alone, joints.",
            "Answer with Enter where something is done or so, with \"skip\" where it is left out or not so; \"stop\" ends it."})
final class ProveCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RIG", description = "Rig file.")
    private Path rigFile = Path.of("");

    @Option(names = "--name", paramLabel = "WHO", description = "Who signs it off (default: this computer's name for you).")
    private String who = System.getProperty("user.name", "unknown");

    @Option(names = "--rehearse", description = "On an emulated copy of the rig with an emulated person, as fast as this machine allows.")
    private boolean rehearse;

    @Option(names = "--seed", paramLabel = "N", description = "Rehearsal: seed of the specimen and of all noise (default: 1).")
    private long seed = 1;

    @Option(names = "--with", paramLabel = "MISHAP", description = "Rehearsal: what is wrong, for example \"taps 3 and 4 are swapped\"; \"?\" lists what can be.")
    private List<String> mishaps = new ArrayList<>();

    @Option(names = "--address", paramLabel = "ADDRESS", description = "Address of the page (default: loopback).")
    private String address = "127.0.0.1";

    @Option(names = "--port", paramLabel = "N", description = "Port of the page (default: 8040).")
    private int port = 8040;

    @Mixin
    private CellsOption cells = new CellsOption();

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() throws IOException {
        Inputs inputs = inputs();
        inputs.warnings().stream().map(Refusal::print).forEach(System.out::println);
        String now = LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString();
        ProofRecord record = new ProofRecord(inputs, now, who, rehearse, inputs.rig().cells().labels());
        if (!rehearse) {
            if (!mishaps.isEmpty()) {
                throw new Refused("--with goes with --rehearse: on a real rig nothing is broken on purpose.");
            }
            return new RealProof(record, cells, logbook.folder(), PageOptions.at(address, port)).call();
        }
        if (cells.given()) {
            throw new Refused("--cells goes with a real rig: in a rehearsal every cell is emulated.");
        }
        MishapReader reader = new MishapReader(inputs.rig());
        List<Mishap> read = mishaps.stream().map(words -> reader.read(words.contains(" at ") ? words : words + " at 0:00")).toList();
        return new RehearsedProof(record, logbook.folder(), seed, read, System.out).call();
    }

    private Inputs inputs() throws IOException {
        Read.Sound<Rig> rig = Inputs.sound(RigFile.read(rigFile));
        return new Inputs(rig.value(), Files.readString(rigFile), Stops.programme(rig.value()), Stops.TEXT, rig.warnings());
    }
}
