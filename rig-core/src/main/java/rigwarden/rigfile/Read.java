package rigwarden.rigfile;

import java.util.List;

/**
 * What reading a file gave: the thing, or every refusal that was found. Nothing is ever repaired.
 *
 * @param <T> what the file describes
 */
public sealed interface Read<T> {
    /**
     * The file is sound.
     *
     * @param value what it describes
     * @param warnings what is named although it is allowed, or allowed only while a person stands by
     */
    record Sound<T>(T value, List<Refusal> warnings) implements Read<T> {
        public Sound {
            warnings = List.copyOf(warnings);
        }
    }

    /**
     * The file is refused.
     *
     * @param refusals all of them in order of line, never empty
     */
    record Refused<T>(List<Refusal> refusals) implements Read<T> {
        public Refused {
            refusals = List.copyOf(refusals);
        }
    }
}
