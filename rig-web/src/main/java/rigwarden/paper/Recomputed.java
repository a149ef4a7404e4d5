package rigwarden.paper;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rigwarden.findings.Findings;
import rigwarden.findings.Rating;
import rigwarden.findings.trace.Recount;
import rigwarden.findings.trace.Reread;
import rigwarden.findings.trace.Row;
import rigwarden.logbook.LogbookException;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunReader;
import rigwarden.rig.Channel;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Rig;
import rigwarden.rig.Traced;
import rigwarden.rigfile.CalibrationFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.Refusal;
import rigwarden.rigfile.RigFile;

/** What a run would have found with another calibration: every reading worked out anew from the code that the chip gave. */
public sealed interface Recomputed {
    /**
     * The findings.
     *
     * @param given calibrations, which took the place of those of the same channels
     * @param found with them; its rig has all that were read with
     */
    record Found(List<ChannelCalibration> given, RunFindings found) implements Recomputed {
        public Found {
            given = List.copyOf(given);
        }
    }

    /** The calibrations, or the run, do not allow it. */
    record Refused(String words) implements Recomputed {}

    /**
     * Reads a run file, one row at a time in memory.
     *
     * @param files one for each channel; channels that none is named for keep what they were recorded with
     * @throws LogbookException where the run file is missing or cannot be read
     */
    static Recomputed of(Path run, List<CalibrationFile> files) {
        try (RunReader reader = RunReader.open(run)) {
            RunAbout about = reader.about();
            if (!(RigFile.read("rig", about.rigText(), about.calibrations()) instanceof Read.Sound<Rig> own) || !same(own.value(), reader)) {
                return new Refused("Its rig is refused by this version of Rigwarden, or gives other channels than those that were recorded, so that"
                        + " its codes cannot be read anew.");
            }
            return switch (RigFile.with("rig", about.rigText(), files)) {
                case Read.Refused<Rig> refused -> refused(refused);
                case Read.Sound<Rig> named -> strange(about, own.value(), named.value().calibrations())
                        .<Recomputed>map(Refused::new).orElseGet(() -> found(run, about, own.value(), named.value().calibrations()));
            };
        }
    }

    private static Refused refused(Read.Refused<Rig> refused) {
        return new Refused(refused.refusals().stream().map(Refusal::print).collect(Collectors.joining("\n")));
    }

    /** Whether this version makes the same of a code as the one that recorded it. */
    private static boolean same(Rig rig, RunReader reader) {
        List<Channel> stored = reader.channels();
        return rig.channels().size() == stored.size() && rig.channels().stream().allMatch(c -> {
            Channel then = stored.get(c.index());
            return c.name().equals(then.name()) && c.role() == then.role() && c.scale() == then.scale() && c.shift() == then.shift();
        });
    }

    /** A calibration of an emulated copy says nothing of the real rig, nor the other way round, nor one copy of another. */
    private static Optional<String> strange(RunAbout about, Rig own, List<ChannelCalibration> given) {
        for (ChannelCalibration one : given) {
            OptionalLong seed = one.emulatedSeed();
            if (!about.rehearsal() && seed.isPresent()) {
                return Optional.of(Spots.say("The calibration of %s is of an emulated copy, and the run is real: allowed is one of the real rig, because"
                        + " a rehearsal has errors of its own.", one.channel()));
            }
            if (about.rehearsal() && !seed.equals(OptionalLong.of(about.seed()))) {
                return Optional.of(Spots.say("The calibration of %s is of %s, and the run rehearsed specimen %d: allowed is one that was rehearsed on"
                        + " the same, because each has errors of its own.", one.channel(),
                        seed.isPresent() ? "specimen " + seed.getAsLong() : "the real rig", about.seed()));
            }
            if (about.rehearsal() && own.calibration(one.channel()).stream().anyMatch(then -> !then.emulatedSeed().equals(seed))) {
                return Optional.of(Spots.say("The run rehearsed %s with errors that were drawn from its own calibration's doubt: no other calibration"
                        + " is of that channel.", one.channel()));
            }
        }
        return Optional.empty();
    }

    private static Recomputed found(Path run, RunAbout about, Rig own, List<ChannelCalibration> given) {
        List<String> kept = own.calibrations().stream().filter(then -> given.stream().noneMatch(one -> one.channel().equals(then.channel())))
                .map(ChannelCalibration::text).toList();
        List<String> texts = Stream.concat(kept.stream(), given.stream().map(ChannelCalibration::text)).toList();
        return switch (RigFile.read("rig", about.rigText(), texts)) {
            case Read.Refused<Rig> refused -> refused(refused);
            case Read.Sound<Rig> rig -> {
                AllParts all = AllParts.read(run, new Anew(rig.value())).orElseThrow();
                yield new Found(given, RunFindings.of(rig.value(), about, all,
                        Findings.of(rig.value(), all.gathered(), Rating.of(rig.value().cells()))));
            }
        };
    }

    /** Every part of the run on this rig, its codes read anew and its sums counted anew. */
    record Anew(Rig with) implements AllParts.Way {
        @Override
        public Optional<Rig> rig(RunReader reader) {
            return Optional.of(with);
        }

        @Override
        public AllParts.Reading reading(Traced rig) {
            Reread reread = new Reread(with);
            Recount recount = new Recount(with);
            return row -> recount.take(new Row(reread.of(row.scan()), row.marks()));
        }
    }
}
