package rigwarden.command;

import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code rigwarden spot}: says where the loose probe lies, to the page of the run that goes on in another process. */
@Command(
        name = "spot",
        mixinStandardHelpOptions = true,
        description = {"While a run goes on: say where the loose probe lies, as a tap on the page's drawing does.",
            "It talks to the page of the run's process. Without NAME: where it lies now, and every spot of the rig."})
final class SpotCommand implements Callable<Integer> {
    @Parameters(index = "0", arity = "0..*", paramLabel = "NAME", description = "Where it lies now, for example: cell 3 +, bar 3-4, shunt, away.")
    private List<String> name = List.of();

    @Option(names = "--port", paramLabel = "N", description = "Port of the run's page on this machine (default: 8040).")
    private int port = 8040;

    @Override
    public Integer call() {
        try (PageText page = new PageText(URI.create("http://127.0.0.1:" + port), "/spot.txt")) {
            if (!page.there()) {
                throw new Refused("No page of Rigwarden answers on port " + port + ". A spot is told while a run goes on: name its page with --port.");
            }
            if (!name.isEmpty()) {
                page.post("spot=" + URLEncoder.encode(String.join(" ", name), StandardCharsets.UTF_8));
            }
            if (!page.done()) {
                throw new Refused(page.words().strip());
            }
            System.out.print(page.words());
            return Exits.DONE;
        } catch (IOException e) {
            throw new Refused("The page on port " + port + " answers no longer (" + e + "): its process has ended. Nothing was kept.");
        }
    }
}
