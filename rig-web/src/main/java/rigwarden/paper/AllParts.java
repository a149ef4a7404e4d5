package rigwarden.paper;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import rigwarden.findings.Gathered;
import rigwarden.findings.Joined;
import rigwarden.findings.Trace;
import rigwarden.findings.trace.Recount;
import rigwarden.findings.trace.Row;
import rigwarden.logbook.Cycle;
import rigwarden.logbook.Cycles;
import rigwarden.logbook.LogbookException;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunReader;
import rigwarden.rig.Rig;
import rigwarden.rig.Traced;
import rigwarden.run.Account;
import rigwarden.run.PickUp;

/**
 * A run with all that it went on with, kept as one: a step that was broken off and went on in the next run is one step.
 *
 * @param gathered of all parts; scans are counted on from part to part
 * @param parts in their order; the last is the run itself
 * @param lost why nothing is told of the run that the first of them went on with, naming it; empty where nothing is lost
 */
record AllParts(Gathered gathered, List<RunFindings.Part> parts, Optional<String> lost) {
    AllParts {
        parts = List.copyOf(parts);
    }

    /** What becomes of a row before it is taken; a new one for each file, since it may count. */
    interface Reading extends Function<Row, Row> {}

    /** How the files are read. */
    interface Way {
        /** The rig of a file, or the log that it holds; nothing where this version refuses it. */
        Optional<? extends Traced> rig(RunReader reader);

        /** What is done to its rows. */
        default Reading reading(Traced rig) {
            return row -> row;
        }
    }

    /**
     * Reads a run and those before it, which lie beside it, one row at a time in memory.
     *
     * @return nothing where the way gives no rig
     * @throws LogbookException where the run's own file is missing or cannot be read
     */
    static Optional<AllParts> read(Path file, Way way) {
        try (RunReader reader = RunReader.open(file)) {
            return read(file, reader, way);
        }
    }

    private static Optional<AllParts> read(Path file, RunReader reader, Way way) {
        return way.rig(reader).map(rig -> {
            Gathered own = gather(reader, rig, way.reading(rig));
            RunAbout about = reader.about();
            Optional<Double> outage = about.from().flatMap(_ -> reader.events().stream().filter(e -> e.kind().equals("continued"))
                    .map(e -> e.value().orElse(0)).findFirst());
            if (about.from().isEmpty()) {
                return new AllParts(own, List.of(new RunFindings.Part(number(file), 0, OptionalInt.empty())), Optional.empty());
            }
            PickUp from = about.from().get();
            if (outage.isEmpty()) {
                return new AllParts(own, List.of(new RunFindings.Part(number(file), 0, OptionalInt.empty())),
                        Optional.of(Spots.say("It was to go on with run %04d and never did: nothing here is of that run.", from.run())));
            }
            return joined(file, about, from, outage.get(), way, new AllParts(own, List.of(), Optional.empty()));
        });
    }

    private static AllParts joined(Path file, RunAbout about, PickUp from, double outage, Way way, AllParts own) {
        if (number(file) > 0 && from.run() >= number(file)) {
            return alone(file, from, outage, own, "which is no earlier one");
        }
        String called = Spots.say("%04d.db", from.run());
        try (RunReader before = RunReader.open(file.resolveSibling(called))) {
            if (!before.about().rigHash().equals(about.rigHash()) || !before.about().programmeHash().equals(about.programmeHash())
                    || before.about().seed() != about.seed()) {
                return alone(file, from, outage, own, "whose file is of another rig or programme now");
            }
            Optional<AllParts> earlier = read(file.resolveSibling(called), before, way);
            return earlier.map(whole -> whole.then(file, from, outage, own)).orElseGet(() -> alone(file, from, outage, own,
                    "whose rig this version refuses"));
        } catch (LogbookException e) {
            return alone(file, from, outage, own, "which cannot be read (" + e.getMessage().strip().replaceFirst("[.]$", "") + ")");
        }
    }

    private AllParts then(Path file, PickUp from, double outage, AllParts own) {
        List<RunFindings.Part> all = new ArrayList<>(parts);
        all.add(new RunFindings.Part(number(file), gathered.scans(), OptionalInt.of(from.step())));
        return new AllParts(Joined.of(gathered, outage, from.brokenAmps(), own.gathered), all, lost);
    }

    private static AllParts alone(Path file, PickUp from, double outage, AllParts own, String why) {
        return new AllParts(Joined.alone(outage, from.brokenAmps(), from.step(), own.gathered),
                List.of(new RunFindings.Part(number(file), 0, OptionalInt.of(from.step()))), Optional.of(Spots.say(
                        "It went on in step %d with run %04d, %s: all here is of this part alone, without what step %d gave before the break.",
                        from.step(), from.run(), why, from.step())));
    }

    private static int number(Path file) {
        String name = String.valueOf(file.getFileName()).replaceFirst("[.]db$", "");
        return name.matches("[0-9]{1,9}") ? Integer.parseInt(name) : 0;
    }

    /** A step in which the run was broken off, or which still runs, has the sums that its rows give, since nobody wrote them. */
    private static Gathered gather(RunReader reader, Traced traced, Reading reading) {
        Trace trace = new Trace(traced);
        Optional<Recount> recount = traced instanceof Rig rig && reader.openStep().isPresent() ? Optional.of(new Recount(rig)) : Optional.empty();
        try (Cycles cycles = reader.cycles()) {
            while (cycles.hasNext()) {
                Cycle cycle = cycles.next();
                Row row = reading.apply(new Row(cycle.scan(), RunFindings.marks(traced, cycle.events())));
                recount.ifPresent(count -> count.take(row));
                trace.take(row);
            }
        }
        return trace.end(recount.map(Recount::account).orElse(Account.EMPTY));
    }

    /** Numbers of the runs that it is made of, those that have one. */
    List<Integer> numbers() {
        return parts.stream().map(RunFindings.Part::run).filter(number -> number > 0).toList();
    }

    /** What the steps gave. */
    EndedSteps.Told told() {
        return EndedSteps.Told.of(gathered, lost);
    }
}
