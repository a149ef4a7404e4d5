package rigwarden.live;

import java.util.function.Consumer;
import rigwarden.paper.Card;

/**
 * What must be read before a run is started.
 *
 * @param card what is read
 * @param confirmed takes note, in the run file, that somebody has; told in words who and how; any thread
 */
public record GoodNight(Card card, Consumer<String> confirmed) {}
