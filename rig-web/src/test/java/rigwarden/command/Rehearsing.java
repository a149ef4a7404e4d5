package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;

/** A rehearsal, as a test of another package wants one in a logbook. */
public final class Rehearsing {
    /** A programme of one discharge at half the rate, with the rest after it. */
    static final String HALF_RATE_ONCE = """
            name = "half the rate, once"
            unattended = false
            leave_empty = true

            [[step]]
            kind = "discharge"
            rate_c = 0.5
            cut_off_v = 2.50

            [[step]]
            kind = "rest"
            at_least_min = 30
            at_most_min = 30
            """;

    private Rehearsing() {}

    /** Rehearses a programme on a rig with seed 1. */
    public static void done(Path rig, Path programme, Path book) {
        Spoken said = Spoken.of("rehearse", rig.toString(), programme.toString(), "--logbook", book.toString());
        assertThat(said.exit()).as(said.err() + said.out()).isEqualTo(Exits.DONE);
    }
}
