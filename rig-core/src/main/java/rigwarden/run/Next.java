package rigwarden.run;

import java.util.List;
import rigwarden.warden.Wish;

/**
 * What the machine makes of one scan.
 *
 * @param state where the run is now
 * @param wish what it would like
 * @param events what happened
 */
public record Next(RunState state, Wish wish, List<Event> events) {
    static Next of(RunState state, Wish wish) {
        return new Next(state, wish, List.of());
    }

    static Next quiet(RunState state, Event... events) {
        return new Next(state, Wish.NOTHING, List.of(events));
    }
}
