package rigwarden.logbook;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.run.LeftOff;
import rigwarden.run.LeftOff.Ending;
import rigwarden.run.Retrace;
import rigwarden.warden.Orders;

/** Reads from a run's file where it was broken off: the whole run is put through the core once more. */
public final class Broken {
    private Broken() {}

    /**
     * What there is to go on with: seconds for a night.
     *
     * @param run as the ledger lists it
     * @param runs all that it lists
     * @param file the run's
     * @param rig that is in the file
     * @param program that is in the file
     */
    public static LeftOff read(LedgerRun run, List<LedgerRun> runs, Path file, Rig rig, Program program) {
        try (RunReader reader = RunReader.open(file); Cycles cycles = reader.cycles()) {
            Retrace retrace = new Retrace(run.number(), rig, program, reader.about().from());
            Optional<String> fault = reader.integrity().or(() -> differs(retrace, cycles));
            RunAbout about = reader.about();
            return new LeftOff(run.number(), fault, ending(run.outcome()), run.decided(runs), about.rigHash(),
                    about.programmeHash(), about.versions(), retrace.cleared(), retrace.tripStands(), retrace.step(), retrace.recovers(),
                    retrace.place());
        }
    }

    private static Optional<String> differs(Retrace retrace, Cycles cycles) {
        while (cycles.hasNext()) {
            Cycle cycle = cycles.next();
            Orders orders = retrace.cycle(cycle.scan(), cycle.inbox());
            if (!StoredOrders.of(orders).equals(cycle.orders())) {
                return Optional.of("one whose scan " + cycle.scan().number() + " gives other orders now");
            }
        }
        return Optional.empty();
    }

    private static Ending ending(Outcome outcome) {
        return switch (outcome) {
            case INTERRUPTED -> Ending.BROKEN_OFF;
            case TRIPPED -> Ending.TRIPPED;
            case RUNNING -> Ending.RUNNING;
            case FINISHED, STOPPED -> Ending.OVER;
        };
    }
}
