package rigwarden.notice;

import java.util.List;

/**
 * Where notices go, and how often.
 *
 * @param checkInMinutes between check-ins; 0 for none
 * @param repeatHours after which nearly empty cells are told of again
 * @param routes the ways; never empty
 */
public record NoticePlan(int checkInMinutes, int repeatHours, List<Route> routes) implements AutoCloseable {
    public NoticePlan {
        routes = List.copyOf(routes);
    }

    /** For a person, one line a way. */
    public List<String> lines() {
        return routes.stream().map(r -> r.name() + ": " + r.where()).toList();
    }

    @Override
    public void close() {
        routes.forEach(Route::close);
    }
}
