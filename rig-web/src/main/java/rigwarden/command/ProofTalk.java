package rigwarden.command;

import java.io.PrintStream;
import java.util.List;
import rigwarden.prove.Outcome;
import rigwarden.prove.Prompt;
import rigwarden.prove.Turn;

/** What is said on the terminal in a proof: each prompt once, each outcome. */
final class ProofTalk {
    private final PrintStream out;
    private String said = "";

    ProofTalk(PrintStream out) {
        this.out = out;
    }

    void turn(Turn turn) {
        outcomes(turn.outcomes());
        if (!turn.over()) {
            prompt(turn.prompt());
        }
    }

    private void prompt(Prompt prompt) {
        say(prompt.words());
    }

    /** Says something to the person, unless it was the last that was said. */
    void say(String words) {
        if (!words.equals(said)) {
            said = words;
            out.println("> " + words);
        }
    }

    void outcomes(List<Outcome> outcomes) {
        for (Outcome one : outcomes) {
            String mark = switch (one.result()) {
                case PASSED -> "  good   ";
                case FAILED -> "  WRONG  ";
                case SKIPPED -> "  left   ";
            };
            out.println(mark + one.kind().replace('_', ' ') + ": " + one.words());
        }
    }
}
