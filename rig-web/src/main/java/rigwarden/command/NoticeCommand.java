package rigwarden.command;

import java.nio.file.Path;
import java.time.Instant;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;
import rigwarden.notice.Delivery;
import rigwarden.notice.Notice;
import rigwarden.notice.NoticePlan;
import rigwarden.notice.Route;

/** {@code rigwarden notice}: whether notices arrive. */
@Command(
        name = "notice",
        mixinStandardHelpOptions = true,
        description = "Send a test notice each way of FILE, and say what happened.")
final class NoticeCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "FILE", description = "File that says where notices go.")
    private Path file = Path.of("");

    @Override
    public Integer call() {
        try (NoticePlan plan = NoticeOption.read(file)) {
            boolean all = true;
            for (Route route : plan.routes()) {
                long began = System.nanoTime();
                Delivery delivery = route.send(Notice.test(Instant.now()));
                double seconds = (System.nanoTime() - began) * 1e-9;
                all &= delivery instanceof Delivery.Delivered;
                System.out.printf("%s (%s): %s, in %.1f s%n", route.name(), route.where(), words(delivery), seconds);
            }
            System.out.println(all ? "Each was taken. Look whether they reached you." : "Not every way works.");
            return all ? Exits.DONE : Exits.REFUSED;
        }
    }

    private static String words(Delivery delivery) {
        return switch (delivery) {
            case Delivery.Delivered taken -> "taken, " + taken.words();
            case Delivery.Failed failed -> "NOT DELIVERED: " + failed.words();
        };
    }
}
