package rigwarden.warden;

import java.util.List;

/** The one latch. */
public sealed interface Guard {
    Memory memory();

    /** No trip. */
    record Watching(Memory memory) implements Guard {}

    /** Tripped: the first cause, and what came after it, until a granted clear. */
    record Tripped(Trip first, List<Trip> also, Memory memory) implements Guard {}
}
