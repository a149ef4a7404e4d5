package rigwarden.notice;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.UnaryOperator;

/** Where a secret lies: never in a file that is shown, copied into run files or sent on. It is read anew for each use. */
sealed interface Secret {
    /** Why a secret cannot be had, in words that hold nothing of it. */
    final class Missing extends Exception {
        private static final long serialVersionUID = 1;

        Missing(String words) {
            super(words);
        }
    }

    /** The secret itself. */
    String read() throws Missing;

    /** The first line of a file. */
    record InFile(Path file) implements Secret {
        @Override
        public String read() throws Missing {
            try {
                String first = Files.readString(file, StandardCharsets.UTF_8).lines().findFirst().orElse("").strip();
                if (first.isEmpty()) {
                    throw new Missing("the file " + file + " is empty");
                }
                return first;
            } catch (IOException e) {
                throw new Missing("the file " + file + " cannot be read");
            }
        }
    }

    /** A variable of the environment. */
    record InEnvironment(String variable, UnaryOperator<String> environment) implements Secret {
        @Override
        public String read() throws Missing {
            String value = environment.apply(variable);
            if (value == null || value.isBlank()) {
                throw new Missing("the environment has no " + variable);
            }
            return value;
        }
    }

    /** Nothing is needed. */
    record None() implements Secret {
        @Override
        public String read() {
            return "";
        }
    }
}
