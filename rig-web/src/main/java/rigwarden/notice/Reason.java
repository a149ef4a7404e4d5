package rigwarden.notice;

import java.net.ConnectException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.net.http.HttpTimeoutException;
import java.nio.channels.UnresolvedAddressException;
import java.util.Optional;
import java.util.regex.Pattern;

/** Why something failed, short, on one line. */
final class Reason {
    private static final int LONGEST = 160;
    private static final Pattern CONTROL = Pattern.compile("\\p{Cntrl}+");

    private Reason() {}

    /** The first cause that says something to a person; else the message nearest to the top. */
    static String of(Throwable thrown) {
        for (Throwable t = thrown; t != null; t = t.getCause()) {
            Optional<String> known = known(t);
            if (known.isPresent()) {
                return known.orElseThrow();
            }
        }
        String message = thrown.getMessage() == null ? "" : CONTROL.matcher(thrown.getMessage()).replaceAll(" ").strip();
        String said = message.isEmpty() ? thrown.getClass().getSimpleName() : message;
        return said.length() <= LONGEST ? said : said.substring(0, LONGEST) + "…";
    }

    private static Optional<String> known(Throwable thrown) {
        return switch (thrown) {
            case UnknownHostException _, UnresolvedAddressException _ -> Optional.of("nobody knows a machine of that name");
            case HttpTimeoutException _, SocketTimeoutException _ -> Optional.of("no answer in time");
            case ConnectException _ -> Optional.of("no connection: nobody listens there, or no network");
            case Throwable _ -> Optional.empty();
        };
    }
}
