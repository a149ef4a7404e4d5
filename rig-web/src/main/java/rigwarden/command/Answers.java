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
        Said now = said(line);
        last.accumulateAndGet(now, (before, said) -> before.compareTo(said) > 0 ? before : said);
    }

    private static Said said(String line) {
        return switch (line.strip().toLowerCase(Locale.ROOT)) {
            case "", "done", "yes" -> Said.YES;
            case "s", "skip", "n", "no" -> Said.NO;
            case "stop" -> Said.STOP;
            case String _ -> Said.UNCLEAR;
        };
    }

    /** What was said since the last time. */
    Said take() {
        return last.getAndSet(Said.NOTHING);
    }
}
