package rigwarden.paper;

import java.util.Locale;
import rigwarden.findings.Answer;
import rigwarden.findings.Capacity;
import rigwarden.findings.Headline;
import rigwarden.findings.Verdict;
import rigwarden.quantity.Uncertain;

/** What a person asks of a discharge first, in one sentence. */
final class Sentence {
    private Sentence() {}

    /**
     * For example "Cell 5 limits the pack: 103.1 Ah ± 1.4 Ah at 0.50 C, 25.0 °C, started full; rated 105 Ah at these conditions: not met,
     * 99.7 % sure".
     */
    static String of(Headline headline) {
        Capacity capacity = headline.capacity();
        if (!headline.refused().isEmpty()) {
            return Spots.say("Step %d gave no capacity: %s", capacity.step(), headline.refused());
        }
        String unit = headline.rating().unit();
        Uncertain out = unit.equals("Wh") ? capacity.wattHours() : capacity.ampHours();
        int decimals = Figures.decimals(out.expanded());
        return Spots.say("%s %s%s %s ± %s %s at %.2f C, %s, %s%s; %s", who(headline), capacity.lowerBound() ? "at least " : "",
                Spots.number(decimals, out.value()), unit, Spots.number(decimals, out.expanded()), unit, capacity.rateC(), warmth(capacity),
                started(capacity) + more(capacity), capacity.interrupted() ? ", interrupted" : "", promise(headline));
    }

    private static String who(Headline headline) {
        if (headline.series() == 1) {
            return "The cell gives";
        }
        return switch (headline.limiting()) {
            case Answer.Named named -> capital(named.who()) + " limits the pack:";
            case Answer.CannotTell either -> capital(either.between()) + " limits the pack, the run cannot tell which:";
            case Answer.Value _, Answer.AtLeast _, Answer.Between _, Answer.Decided _, Answer.NotDecided _, Answer.Refused _ ->
                "Which cell limits the pack is not known:";
        };
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static String warmth(Capacity capacity) {
        return Double.isNaN(capacity.bodyCelsius()) ? "at a temperature that nobody knows" : Spots.say("%.1f °C", capacity.bodyCelsius());
    }

    static String started(Capacity capacity) {
        return switch (capacity.start()) {
            case FULL -> "started full";
            case NOT_FULL -> "started not quite full";
            case UNKNOWN -> "how full it started is not known";
        };
    }

    /** What may be missing is not in the ±, which is of what came out. */
    private static String more(Capacity capacity) {
        return capacity.missingAmpHours() > 0 ? Spots.say(" (up to %.2f Ah more)", capacity.missingAmpHours()) : "";
    }

    private static String promise(Headline headline) {
        String promise = headline.rating().promise();
        return switch (headline.verdict()) {
            case Answer.Decided decided -> Spots.say("%s%s: %s, %s sure", promise, atItsConditions(headline) ? " at these conditions" : ", though not at its conditions",
                    decided.met() ? "met" : "not met", percent(decided.probability()));
            case Answer.NotDecided not -> promise + ": " + not.because();
            case Answer.Value _, Answer.AtLeast _, Answer.Between _, Answer.Named _, Answer.CannotTell _, Answer.Refused _ ->
                promise + ": not held against it";
        };
    }

    /** What is met elsewhere is met in spite of that. */
    private static boolean atItsConditions(Headline headline) {
        return Verdict.atItsConditions(headline.capacity(), headline.rating());
    }

    static String percent(double probability) {
        return probability > 0.999 ? "more than 99.9 %" : probability < 0.001 ? "less than 0.1 %" : Spots.say("%.1f %%", 100 * probability);
    }
}
