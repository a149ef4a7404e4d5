package rigwarden.circuit;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * One simulation of the whole protective chain: reset at 0.05 s, beats from 0.2 s, sounder armed at 0.8 s, pre-charge from 1 s,
 * contact at 2.5 s, current from 3 s; then what a test changes at {@link #EVENT}.
 */
final class Chain {
    /** When something happens, s: the current has flowed for half a second. */
    static final double EVENT = 3.5;
    static final Beats UNTIL_EVENT = Beats.none().then(0.2, 33, Beats.PERIOD);
    private static final Beats BEATING = Beats.none().then(0.2, 64, Beats.PERIOD);
    private static final double SECONDS = 6;

    private final Map<String, String> levels = new LinkedHashMap<>();
    private final StringBuilder parameters = new StringBuilder();
    private final StringBuilder measures = new StringBuilder();
    private Beats beats = BEATING;
    private String window = "";

    Chain() {
        List.of("estop", "thermal", "smoke", "window").forEach(contact -> levels.put(contact, "1"));
        levels.put("vs", "24");
        levels.put("call", "0");
        levels.put("reset", "pwl(0 0 0.05 0 0.0501 1 0.15 1 0.1501 0)");
        levels.put("order1", "pwl(0 0 2.5 0 2.5001 1)");
        levels.put("orderp", "pwl(0 0 1 0 1.0001 1 2.7 1 2.7001 0)");
        levels.put("order2", "pwl(0 0 3 0 3.0001 1)");
        levels.put("arm", "pwl(0 0 0.8 0 0.8001 1)");
    }

    /** A node that has another course than usual: a value or a source of ngspice. */
    Chain with(String node, String course) {
        if (!levels.containsKey(node)) {
            throw new IllegalArgumentException("the chain has no input " + node);
        }
        levels.put(node, course);
        return this;
    }

    /** A node that falls to zero at the event and comes back after so many seconds; 0 for never. */
    Chain falls(String node, double backAfter) {
        String high = levels.get(node);
        String back = backAfter == 0 ? "" : String.format(Locale.ROOT, " %f 0 %f %s", EVENT + backAfter, EVENT + backAfter + 0.01, high);
        return with(node, String.format(Locale.ROOT, "pwl(0 %s %f %s %f 0%s)", high, EVENT, high, EVENT + 1e-4, back));
    }

    /** A cell window in the loop, on a cell whose voltage has this course; words are parameters of {@code window.sub}. */
    Chain cell(String course, String words) {
        levels.remove("window");
        window = "Vcell cell 0 " + course + "\nVw vw 0 12\nXW cell vw reset window window " + words;
        return this;
    }

    Chain beats(Beats others) {
        beats = others;
        return this;
    }

    Chain parameters(String words) {
        parameters.append(' ').append(words);
        return this;
    }

    /** A figure to be measured, as ngspice says it after the name. */
    Chain measure(String name, String how) {
        measures.append(".meas tran ").append(name).append(' ').append(how).append('\n');
        return this;
    }

    Map<String, Double> run() throws IOException, InterruptedException {
        StringBuilder deck = new StringBuilder(beats.source("pin")).append('\n').append(window).append('\n');
        levels.forEach((node, course) -> deck.append("V").append(node).append(' ').append(node).append(" 0 ").append(course).append('\n'));
        deck.append("X1 pin vs estop thermal smoke window reset order1 orderp order2 arm call feed p1 p2 bus amps horn chain").append(parameters)
                .append("\n.tran 1m ").append(SECONDS).append(" 0 1m uic\n");
        return Ngspice.lines(deck.append(measures).toString());
    }
}
