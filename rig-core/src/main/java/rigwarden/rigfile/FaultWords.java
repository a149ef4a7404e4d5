package rigwarden.rigfile;

import java.util.List;

/**
 * A fault that a case may name, for one rig.
 *
 * @param name as it is written
 * @param unit of its size; empty where it has none
 * @param most greatest size; 0 where it has none
 * @param places where it can happen, as they are written
 */
public record FaultWords(String name, String unit, double most, List<String> places) {
    public FaultWords {
        places = List.copyOf(places);
    }

    /** Whether it has a size. */
    public boolean sized() {
        return most > 0;
    }
}
