package rigwarden.live;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.run.PickUp;

/**
 * A run that can be watched, and stopped.
 *
 * @param number of the run
 * @param rig what it runs on
 * @param program what it runs
 * @param live what is seen of it
 * @param desk where wishes to it lie
 * @param rehearsal whether every part is emulated
 * @param speed seconds of the run to a second of the clock on the wall; 1 for a real run
 * @param file its run file
 * @param undelivered what became of notices that did not arrive, one line a way; empty when all is well
 * @param goodNight what must be confirmed with a start, if anything
 * @param from where it goes on, if another run was broken off there
 * @param laying where the loose probe lies; empty where nobody can say so
 * @param complaints of its instruments
 */
public record Watched(
        int number, Rig rig, Program program, Live live, Desk desk, boolean rehearsal, double speed, Path file,
        Supplier<List<String>> undelivered, Optional<GoodNight> goodNight, Optional<PickUp> from, Optional<Laying> laying,
        Complaints complaints) {
    /** A run that nobody elsewhere is told of. */
    public Watched(int number, Rig rig, Program program, Live live, Desk desk, boolean rehearsal, double speed, Path file) {
        this(number, rig, program, live, desk, rehearsal, speed, file, List::of, Optional.empty(), Optional.empty());
    }

    /** A run without a loose probe. */
    public Watched(int number, Rig rig, Program program, Live live, Desk desk, boolean rehearsal, double speed, Path file,
            Supplier<List<String>> undelivered, Optional<GoodNight> goodNight, Optional<PickUp> from) {
        this(number, rig, program, live, desk, rehearsal, speed, file, undelivered, goodNight, from, Optional.empty());
    }

    /** A run whose instruments are not listened to. */
    public Watched(int number, Rig rig, Program program, Live live, Desk desk, boolean rehearsal, double speed, Path file,
            Supplier<List<String>> undelivered, Optional<GoodNight> goodNight, Optional<PickUp> from, Optional<Laying> laying) {
        this(number, rig, program, live, desk, rehearsal, speed, file, undelivered, goodNight, from, laying, new Complaints());
    }
}
