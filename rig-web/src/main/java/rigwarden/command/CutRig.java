package rigwarden.command;

import java.util.List;
import rigwarden.bus.BusFailure;
import rigwarden.emulated.EmulatedRig;
import rigwarden.emulated.Mishap;
import rigwarden.emulated.Rehearsal;
import rigwarden.logbook.Cycle;
import rigwarden.logbook.Cycles;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunReader;
import rigwarden.run.PickUp;
import rigwarden.warden.Request;
import rigwarden.warden.Scan;

/**
 * The emulated rig as a rehearsal left it. Nothing of it is stored: the rehearsal is run again from its seed, with what
 * people asked for in it, and must give every reading that its file holds.
 */
final class CutRig {
    private final Logbook book;
    private final Inputs inputs;
    private Scan taken = new Scan(0, 0, List.of());

    private CutRig(Logbook book, Inputs inputs) {
        this.book = book;
        this.inputs = inputs;
    }

    /**
     * The rig of a run at its last scan.
     *
     * @param run a rehearsal with this rig and programme
     */
    static EmulatedRig of(Logbook book, int run, Inputs inputs) {
        return new CutRig(book, inputs).again(run);
    }

    private EmulatedRig again(int run) {
        try (RunReader reader = RunReader.open(book.file(run)); Cycles cycles = reader.cycles()) {
            Rehearsal rehearsal = rehearsal(reader.about());
            while (cycles.hasNext()) {
                Cycle cycle = cycles.next();
                if (cycle.inbox().stop()) {
                    rehearsal.stop();
                }
                if (cycle.inbox().has(Request.CLEAR)) {
                    rehearsal.clear();
                }
                rehearsal.scan();
                if (!taken.equals(cycle.scan())) {
                    throw new Refused("Run " + run + " cannot be rehearsed again up to where it was broken off: scan "
                            + cycle.scan().number() + " comes out differently on this machine.");
                }
            }
            return rehearsal.rig();
        } catch (BusFailure e) {
            throw new Refused("The rig cannot be started: " + e.getMessage());
        }
    }

    private Rehearsal rehearsal(RunAbout about) throws BusFailure {
        MishapReader reader = new MishapReader(inputs.rig());
        List<Mishap> mishaps = about.mishaps().stream().map(reader::read).toList();
        if (about.from().isEmpty()) {
            return new Rehearsal(inputs.rig(), inputs.program(), about.seed(), mishaps, (scan, _, _, _) -> taken = scan);
        }
        PickUp from = about.from().get();
        EmulatedRig before = new CutRig(book, inputs).again(from.run());
        return new Rehearsal(inputs.rig(), inputs.program(),
                before.afterCut(about.originNanos() - before.clock().nanos()), from, mishaps, (scan, _, _, _) -> taken = scan);
    }
}
