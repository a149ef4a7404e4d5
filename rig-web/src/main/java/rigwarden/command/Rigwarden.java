package rigwarden.command;

import java.nio.file.FileSystemException;
import java.util.Locale;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import rigwarden.logbook.LogbookException;

/** The command {@code rigwarden}. */
@Command(
        name = "rigwarden",
        mixinStandardHelpOptions = true,
        version = "rigwarden 0.1.0",
        description = "Data logger and test-rig controller for large LFP cells.",
        subcommands = {RehearseCommand.class, LimitsCommand.class, RunsCommand.class, ExportCommand.class,
            KeysCommand.class, ProveCommand.class, RunCommand.class, ContinueCommand.class, AbandonCommand.class, ServeCommand.class, OperatorCommand.class,
            NoticeCommand.class, CardCommand.class, CampaignCommand.class, WiringCommand.class, FindingsCommand.class,
            CalibrateCommand.class, WalkCommand.class, SpotCommand.class, CompareCommand.class, ImportCommand.class})
public final class Rigwarden implements Runnable {
    private Rigwarden() {}

    public static void main(String[] arguments) {
        Locale.setDefault(Locale.ROOT);
        System.exit(line().execute(arguments));
    }

    /** The command line, for a program or a test. */
    static CommandLine line() {
        CommandLine line = new CommandLine(new Rigwarden());
        line.setExecutionExceptionHandler((thrown, _, _) -> {
            if (thrown instanceof Refused || thrown instanceof LogbookException) {
                System.err.println(thrown.getMessage());
                return Exits.REFUSED;
            }
            if (thrown instanceof FileSystemException file) {
                System.err.println(FileTrouble.words(file));
                return Exits.REFUSED;
            }
            System.err.println("rigwarden: a defect of ours, please report it: " + thrown);
            if (System.getenv("RIGWARDEN_TRACE") != null) {
                thrown.printStackTrace();
            }
            return Exits.DEFECT;
        });
        return line;
    }

    @Override
    public void run() {
        line().usage(System.out);
    }
}
