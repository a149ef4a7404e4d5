package rigwarden.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.logbook.RunAbout;
import rigwarden.paper.CautionWords;
import rigwarden.paper.Connection;
import rigwarden.paper.Wiring;
import rigwarden.paper.WiringDrawing;
import rigwarden.paper.WiringTable;
import rigwarden.rig.Rig;
import rigwarden.rigfile.RigFile;

/** {@code rigwarden wiring}: every connection of a rig, as a table and as a drawing. */
@Command(
        name = "wiring",
        mixinStandardHelpOptions = true,
        description = "Write what is wired to what, from the rig file: a table (CSV) and a drawing (SVG).")
final class WiringCommand implements Callable<Integer> {
    /** Digits that tell one rig file from another at a glance. */
    private static final int MARK = 12;

    @Parameters(index = "0", paramLabel = "RIG", description = "Rig file.")
    private Path rigFile = Path.of("");

    @Option(names = "--to", required = true, paramLabel = "DIR", description = "Folder to write into.")
    private Path folder = Path.of("");

    @Override
    public Integer call() throws Exception {
        Rig rig = Inputs.sound(RigFile.read(rigFile)).value();
        String mark = RunAbout.hashOf(Files.readString(rigFile)).substring(0, MARK);
        List<Connection> connections = Wiring.of(rig);
        String name = String.valueOf(rigFile.getFileName()).replaceFirst("\\.toml$", "") + "-wiring";
        Files.createDirectories(folder);
        Path table = folder.resolve(name + ".csv");
        Path power = folder.resolve(name + "-power.svg");
        Path stop = folder.resolve(name + "-stop.svg");
        Files.writeString(table, WiringTable.text(connections));
        Files.writeString(power, WiringDrawing.power(rig, connections, mark));
        Files.writeString(stop, WiringDrawing.stop(rig, connections, mark));
        System.out.println(table + ": " + connections.size() + " connections");
        System.out.println(power + " and " + stop + ": drawings of rig file " + mark);
        CautionWords.all().forEach(System.out::println);
        return Exits.DONE;
    }
}
