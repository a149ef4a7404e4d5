package rigwarden.prove;

import java.util.List;

/**
 * What is made of one scan.
 *
 * @param prompt what the person is asked for now
 * @param outcomes what was found in this scan
 * @param over whether there is nothing more to be asked
 */
public record Turn(Prompt prompt, List<Outcome> outcomes, boolean over) {
    static Turn asks(Prompt prompt) {
        return new Turn(prompt, List.of(), false);
    }

    static Turn found(Prompt prompt, Outcome... outcomes) {
        return new Turn(prompt, List.of(outcomes), false);
    }

    static Turn over(Prompt prompt, List<Outcome> outcomes) {
        return new Turn(prompt, List.copyOf(outcomes), true);
    }
}
