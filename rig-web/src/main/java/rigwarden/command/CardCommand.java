package rigwarden.command;

import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.notice.NoticePlan;

/** {@code rigwarden card}: what to know before a night. */
@Command(
        name = "card",
        mixinStandardHelpOptions = true,
        description = "Rehearse a programme and print the good-night card: what to know before the rig is left alone.")
final class CardCommand implements Callable<Integer> {
    static final LocalTime SEVEN = LocalTime.of(7, 0);

    @Parameters(index = "0", paramLabel = "RIG", description = "Rig file.")
    private Path rigFile = Path.of("");

    @Parameters(index = "1", paramLabel = "PROGRAMME", description = "Programme file.")
    private Path programFile = Path.of("");

    @Option(names = "--breakfast", paramLabel = "H:MM", description = "When you look at it again (default: 7:00).")
    private String breakfast = "7:00";

    @Mixin
    private NoticeOption notices = new NoticeOption();

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() {
        Inputs inputs = Inputs.read(rigFile, programFile);
        List<String> wakes = notices.namedOrBeside(logbook.folder()).map(NoticePlan::lines).orElse(List.of());
        LocalDateTime now = LocalDateTime.now(ZoneId.systemDefault()).withNano(0);
        Foreseen.card(inputs, wakes, LastProof.of(logbook.folder(), inputs, now).lines(), now, hour(), System.out,
                Terminal.there()).lines().forEach(System.out::println);
        return Exits.DONE;
    }

    private LocalTime hour() {
        if (!breakfast.matches("([01]?\\d|2[0-3]):[0-5]\\d")) {
            throw new Refused("--breakfast " + breakfast + ": it is an hour and minutes, for example 7:00.");
        }
        String[] parts = breakfast.split(":", -1);
        return LocalTime.of(Integer.parseInt(parts[0]), Integer.parseInt(parts[1]));
    }
}
