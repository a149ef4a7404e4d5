package rigwarden.command;

import java.io.IOException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import picocli.CommandLine.Option;
import rigwarden.live.Watched;
import rigwarden.page.AtRig;
import rigwarden.page.Shelf;
import rigwarden.page.Site;

/** Where the page is served. */
final class PageOptions {
    private static final int HIGHEST_PORT = 65_534;

    @Option(names = "--address", paramLabel = "ADDRESS",
            description = "Address that the page listens on (default: loopback, this machine only; 0.0.0.0 is all).")
    private String address = "127.0.0.1";

    @Option(names = "--port", paramLabel = "N",
            description = "Port of the page (default: 8040); STOP has the next one to itself.")
    private int port = 8040;

    @Option(names = "--name", paramLabel = "NAME",
            description = "A host name under which the page may be asked for, besides this machine's.")
    private List<String> names = new ArrayList<>();

    /** Where a command without host names of its own serves it. */
    static PageOptions at(String address, int port) {
        PageOptions options = new PageOptions();
        options.address = address;
        options.port = port;
        return options;
    }

    /** {@code rig} is what a person at the rig is asked for. */
    Site serve(Supplier<Optional<Watched>> run, Shelf shelf, Path folder, AtRig rig) {
        if (port < 0 || port > HIGHEST_PORT) {
            throw new Refused("--port " + port + ": a port is 1…" + HIGHEST_PORT + "; the next one is taken as well.");
        }
        try {
            return new Site(new Site.Place(InetAddress.getByName(address), port, allNames()), run, shelf, folder, rig);
        } catch (UnknownHostException e) {
            throw new Refused("--address " + address + ": this is no address of this machine.");
        } catch (IOException | RuntimeException e) {
            throw new Refused("The page cannot be served on " + address + ", ports " + port + " and " + (port + 1) + ": "
                    + e.getMessage() + ". Choose another with --port.");
        }
    }

    private Set<String> allNames() {
        Set<String> all = new HashSet<>();
        names.forEach(name -> all.add(name.toLowerCase(Locale.ROOT)));
        try {
            String host = InetAddress.getLocalHost().getHostName().toLowerCase(Locale.ROOT);
            all.add(host);
            all.add(host + ".local");
        } catch (UnknownHostException _) {
            return all;
        }
        return all;
    }

    String address() {
        return address;
    }
}
