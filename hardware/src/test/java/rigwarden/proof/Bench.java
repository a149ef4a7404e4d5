package rigwarden.proof;

import java.nio.file.Path;
import java.util.List;
import java.util.function.BooleanSupplier;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.Rehearsal;
import rigwarden.loop.Recorder;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** The reference rig and night, and rehearsals brought to an instant from which cases fork. */
final class Bench {
    static final Path RIGS = Path.of("rigs");
    static final Recorder NOWHERE = (_, _, _, _) -> { };

    private Bench() {}

    static Read.Sound<Rig> rigRead() {
        return (Read.Sound<Rig>) RigFile.read(RIGS.resolve("one-cell.toml"));
    }

    static Rig rig() {
        return rigRead().value();
    }

    static Program night() {
        return ((Read.Sound<Program>) ProgramFile.read(RIGS.resolve("one-cell-night.toml"), rigRead())).value();
    }

    static Read.Sound<Rig> packRead() {
        return (Read.Sound<Rig>) RigFile.read(RIGS.resolve("eight-cells.toml"));
    }

    static Rig packRig() {
        return packRead().value();
    }

    static Program packNight() {
        return ((Read.Sound<Program>) ProgramFile.read(RIGS.resolve("eight-cells-night.toml"), packRead())).value();
    }

    static Rehearsal rehearsal(long seed) {
        return rehearsal(seed, night());
    }

    static Rehearsal rehearsal(long seed, Program program) {
        try {
            return new Rehearsal(rig(), program, seed, List.of(), NOWHERE);
        } catch (BusFailure e) {
            throw new AssertionError(e);
        }
    }

    /** Runs on until something holds; fails after a virtual day. */
    static void until(Rehearsal rehearsal, BooleanSupplier holds) {
        for (long scan = 0; scan < 864_000 && !holds.getAsBoolean(); scan++) {
            if (rehearsal.over()) {
                throw new AssertionError("over before its time: " + rehearsal.loop().standing().state());
            }
            rehearsal.scan();
        }
        if (!holds.getAsBoolean()) {
            throw new AssertionError("did not come within a virtual day");
        }
    }

    static void seconds(Rehearsal rehearsal, double seconds) {
        long end = rehearsal.rig().clock().nanos() + Math.round(seconds * 1e9);
        while (rehearsal.rig().clock().nanos() < end) {
            rehearsal.scan();
        }
    }

    static boolean flowing(Rehearsal rehearsal, int step) {
        return rehearsal.step() == step && Math.abs(rehearsal.rig().world().amps()) > 5;
    }
}
