package rigwarden.page;

import java.io.IOException;
import java.net.ServerSocket;

/** The page's port and the next one, STOP's. */
final class Ports {
    private Ports() {}

    /** The pair that was asked for, or any two that are free. */
    static int[] pair(Site.Place place) throws IOException {
        if (place.port() != 0) {
            return new int[] {place.port(), place.port() + 1};
        }
        try (ServerSocket one = new ServerSocket(0, 1, place.address());
                ServerSocket other = new ServerSocket(0, 1, place.address())) {
            return new int[] {one.getLocalPort(), other.getLocalPort()};
        }
    }
}
