package rigwarden.paper;

import java.nio.file.Path;

/** A programme of minutes for the reference pack, whose stored runs are read in tests. */
final class ShortDischarge {
    /** The pack's rig file. */
    static final Path RIG = Path.of("..", "hardware", "rigs", "eight-cells.toml");

    private ShortDischarge() {}

    /** The programme's text: the inverter for so many minutes. */
    static String text(int minutes) {
        return """
                name = "a short discharge"
                unattended = false
                leave_empty = true

                [[step]]
                kind = "heat_run"
                with = "inverter"
                cut_off_v = 2.50
                at_most_min = %d
                """.formatted(minutes);
    }
}
