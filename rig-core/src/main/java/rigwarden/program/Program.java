package rigwarden.program;

import java.util.List;

/**
 * A programme: the steps of one test.
 *
 * @param name a person's name for it
 * @param unattended whether nobody stands beside it; some rigs are then refused
 * @param steps in order, never empty
 */
public record Program(String name, boolean unattended, List<Step> steps) {
    public Program {
        steps = List.copyOf(steps);
    }
}
