package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;

/** A rehearsal, as a test of another package wants one in a logbook. */
public final class Rehearsing {
    private Rehearsing() {}

    /** Rehearses a programme on a rig with seed 1. */
    public static void done(Path rig, Path programme, Path book) {
        Spoken said = Spoken.of("rehearse", rig.toString(), programme.toString(), "--logbook", book.toString());
        assertThat(said.exit()).as(said.err() + said.out()).isEqualTo(Exits.DONE);
    }
}
