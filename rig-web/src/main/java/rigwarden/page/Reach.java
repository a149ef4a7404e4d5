package rigwarden.page;

import java.util.Optional;

/**
 * How a visitor reaches the page, as far as its own request says.
 *
 * @param main prefix of links to the page; empty from the page itself
 * @param stop prefix of STOP's own port, if there is one
 */
record Reach(String main, Optional<String> stop) {
    /** From the page itself, asked for by this host (its port taken off). */
    static Reach here(String host, int stopPort) {
        return new Reach("", stopPort > 0 && !host.isEmpty() ? Optional.of("http://" + host + ":" + stopPort)
                : Optional.empty());
    }

    /** From STOP's own port, whose form leads to itself. */
    static Reach fromStopPort(String host, int pagePort) {
        return new Reach("http://" + host + ":" + pagePort, Optional.empty());
    }

    /** Host of a Host header without its port; empty where there is nothing usable. */
    static String hostOf(String header) {
        if (header == null || !header.matches("[A-Za-z0-9.\\-]{1,253}(:\\d{1,5})?|\\[[0-9a-fA-F:.]{2,45}](:\\d{1,5})?")) {
            return "";
        }
        return header.replaceFirst(":\\d{1,5}$", "");
    }
}
