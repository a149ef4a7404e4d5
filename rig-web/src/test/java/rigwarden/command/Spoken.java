package rigwarden.command;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;

/**
 * What a command said, and how it ended.
 *
 * @param exit its exit code
 * @param out on standard output
 * @param err on standard error
 */
record Spoken(int exit, String out, String err) {
    /** Runs a command line in this process. */
    static Spoken of(String... arguments) {
        PrintStream out = System.out;
        PrintStream err = System.err;
        ByteArrayOutputStream said = new ByteArrayOutputStream();
        ByteArrayOutputStream refused = new ByteArrayOutputStream();
        try {
            System.setOut(new PrintStream(said, true, StandardCharsets.UTF_8));
            System.setErr(new PrintStream(refused, true, StandardCharsets.UTF_8));
            int exit = Rigwarden.line().execute(arguments);
            return new Spoken(exit, said.toString(StandardCharsets.UTF_8), refused.toString(StandardCharsets.UTF_8));
        } finally {
            System.setOut(out);
            System.setErr(err);
        }
    }
}
