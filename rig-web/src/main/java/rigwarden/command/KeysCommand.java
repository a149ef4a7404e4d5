package rigwarden.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.calibration.MeterFile;
import rigwarden.elsewhere.MapFile;
import rigwarden.notice.NoticeFile;
import rigwarden.rigfile.KeyList;
import rigwarden.rigfile.RigFile;

/** {@code rigwarden keys}: what may stand in a rig file, or in a programme for a rig. */
@Command(
        name = "keys",
        mixinStandardHelpOptions = true,
        description = "Print every key of a rig file; with RIG every key of a programme for that rig.")
final class KeysCommand implements Callable<Integer> {
    @Parameters(index = "0", arity = "0..1", paramLabel = "RIG", description = "Rig file for which a programme is written.")
    private Path rigFile = Path.of("");

    @Option(names = "--notices", description = "Print every key of a file that says where notices go.")
    private boolean notices;

    @Option(names = "--meter", description = "Print every key of a file that says what a reference meter states.")
    private boolean meter;

    @Option(names = "--map", description = "Print every key of a map of a log from elsewhere.")
    private boolean map;

    @Override
    public Integer call() {
        if (map) {
            System.out.println("# Every key of a map (TOML), for `rigwarden import`: what the columns of a plain CSV mean.");
            System.out.println("# Each must be there unless it says \"optional\"; keys that depend on a word say on which. hardware/maps shows some.");
            KeyList.of(MapFile::map).forEach(KeysCommand::print);
            return Exits.DONE;
        }
        if (meter) {
            System.out.println("# Every key of a file that says what a reference meter states for one range (TOML), for `rigwarden calibrate`:");
            System.out.println("# ± (percent of what it shows + counts × digit + range_percent of range), in V or A.");
            KeyList.of(MeterFile::meter).forEach(KeysCommand::print);
            return Exits.DONE;
        }
        if (notices) {
            System.out.println("# Every key of a file that says where notices go (TOML), for example notices.toml in the logbook's folder.");
            System.out.println("# Each must be there unless it says \"optional\"; of two keys for one secret one is enough.");
            KeyList.of(NoticeFile::keys).forEach(KeysCommand::print);
            return Exits.DONE;
        }
        boolean rig = rigFile.toString().isEmpty();
        List<KeyList.Table> tables = rig ? KeyList.ofRig() : KeyList.ofProgram(Inputs.sound(RigFile.read(rigFile)).value());
        System.out.println(rig ? "# Every key of a rig file (TOML)." : "# Every key of a programme (TOML) for this rig.");
        System.out.println("# Each must be there unless it says \"optional\"; keys that depend on a word say on which.");
        tables.forEach(KeysCommand::print);
        return Exits.DONE;
    }

    private static void print(KeyList.Table table) {
        System.out.println();
        if (!table.heading().isEmpty()) {
            System.out.printf("%-30s# %s%s%n", table.heading(), table.optional() ? "optional; " : "", table.why());
        }
        for (KeyList.Key key : table.keys()) {
            List<String> said = new ArrayList<>();
            if (key.optional()) {
                said.add("optional");
            }
            if (!key.onlyWith().isEmpty()) {
                said.add("with " + key.onlyWith());
            }
            said.add(key.why());
            System.out.printf("%-26s# %-28s %s%n", key.name() + " =", key.allowed() + ";", String.join("; ", said));
        }
    }
}
