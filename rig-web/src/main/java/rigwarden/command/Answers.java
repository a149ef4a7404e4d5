package rigwarden.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.concurrent.atomic.AtomicReference;
import rigwarden.prove.Answer;

/** What the person types: a line is an answer, and the next scan takes it. */
final class Answers {
    private final AtomicReference<Answer> last = new AtomicReference<>(Answer.NONE);

    private Answers() {}

    /** Listens on a thread of its own until the input ends. */
    static Answers on(InputStream in) {
        Answers answers = new Answers();
        Thread.ofPlatform().daemon().name("answers").start(() -> answers.listen(in));
        return answers;
    }

    private void listen(InputStream in) {
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                last.set(answer(line));
            }
        } catch (IOException _) {
            last.set(Answer.NONE);
        }
    }

    private static Answer answer(String line) {
        return switch (line.strip().toLowerCase(Locale.ROOT)) {
            case "s", "skip", "n", "no" -> Answer.SKIP;
            case String _ -> Answer.DONE;
        };
    }

    /** What was said since the last time. */
    Answer take() {
        return last.getAndSet(Answer.NONE);
    }
}
