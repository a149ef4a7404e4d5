package rigwarden.warden;

import java.util.List;

/**
 * What people want in this cycle.
 *
 * @param stop read first, never queued behind anything
 * @param requests in order of arrival
 */
public record Inbox(boolean stop, List<Request> requests) {
    public static final Inbox EMPTY = new Inbox(false, List.of());

    public static Inbox of(Request request) {
        return new Inbox(false, List.of(request));
    }

    public boolean has(Request request) {
        return requests.contains(request);
    }
}
