package rigwarden.paper;

import java.util.ArrayList;
import java.util.List;

/**
 * A card for a person: a heading, and a few answers in plain lines. It is the same on a terminal and on the page.
 *
 * @param title its heading
 * @param summary the whole in one line
 * @param parts in order
 */
public record Card(String title, String summary, List<Part> parts) {
    private static final int WIDTH = 116;

    /**
     * One answer.
     *
     * @param heading what is asked
     * @param weight how much it matters now
     * @param lines never empty
     */
    public record Part(String heading, Weight weight, List<String> lines) {
        public Part {
            lines = List.copyOf(lines);
        }

        Part(String heading, List<String> lines) {
            this(heading, Weight.PLAIN, lines);
        }
    }

    /** Whether somebody must do something. */
    public enum Weight {
        PLAIN,
        URGENT
    }

    public Card {
        parts = List.copyOf(parts);
    }

    /** For a terminal. */
    public List<String> lines() {
        List<String> all = new ArrayList<>();
        all.add(title);
        for (Part part : parts) {
            all.add("");
            all.add((part.weight() == Weight.URGENT ? "! " : "  ") + part.heading());
            part.lines().forEach(line -> folded(line, all));
        }
        return List.copyOf(all);
    }

    private static void folded(String line, List<String> all) {
        String lead = "    - ";
        StringBuilder row = new StringBuilder(lead);
        for (String word : line.split(" ", -1)) {
            if (row.length() + word.length() > WIDTH) {
                all.add(row.toString().stripTrailing());
                row = new StringBuilder("      ");
            }
            row.append(word).append(' ');
        }
        all.add(row.toString().stripTrailing());
    }
}
