package rigwarden.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicReference;

/** What the person types: a line is an answer, and the next scan takes it. */
final class Answers {
    /** What was typed, the more cautious later: of two lines within one scan the more cautious counts. */
    enum Said {
        NOTHING,
        /** It is done, or it is so: an empty line, "done" or "yes". */
        YES,
        /** No answer to anything; it is asked again. */
        UNCLEAR,
        /** Leave it out, or it is not so. */
        NO,
        /** End all of it. */
        STOP
    }

    private final AtomicReference<Said> last = new AtomicReference<>(Said.NOTHING);
    private final AtomicReference<Said> page = new AtomicReference<>(Said.NOTHING);

    /** Listens on a thread of its own until the input ends. */
    static Answers on(BufferedReader lines) {
        Answers answers = new Answers();
        Thread.ofPlatform().daemon().name("answers").start(() -> answers.listen(lines));
        return answers;
    }

    private void listen(BufferedReader lines) {
        try {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                heard(line);
            }
        } catch (IOException _) {
            heard("stop");
        }
    }

    /** Takes a line. Any thread. */
    void heard(String line) {
        last.accumulateAndGet(said(line), Answers::cautious);
    }

    /** Takes an answer that was given on the page: it counts at rest only, however late it comes. Any thread. */
    void heardOnPage(boolean so) {
        page.accumulateAndGet(so ? Said.YES : Said.NO, Answers::cautious);
    }

    private static Said cautious(Said one, Said other) {
        return one.compareTo(other) > 0 ? one : other;
    }

    private static Said said(String line) {
        return switch (line.strip().toLowerCase(Locale.ROOT)) {
            case "", "done", "yes" -> Said.YES;
            case "s", "skip", "n", "no" -> Said.NO;
            case "stop" -> Said.STOP;
            case String _ -> Said.UNCLEAR;
        };
    }

    /** What was said since the last time, at the terminal or on the page. */
    Said takeAtRest() {
        return cautious(take(), page.getAndSet(Said.NOTHING));
    }

    /** What was said at the terminal since the last time. */
    Said take() {
        return last.getAndSet(Said.NOTHING);
    }
}
