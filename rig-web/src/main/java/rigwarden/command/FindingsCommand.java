package rigwarden.command;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.joint.JointOhms;
import rigwarden.logbook.LedgerRun;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.LogbookException;
import rigwarden.paper.FindingsJson;
import rigwarden.paper.FindingsText;
import rigwarden.paper.Recomputed;
import rigwarden.paper.RecomputedText;
import rigwarden.paper.RunFindings;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rigfile.CalibrationFile;

/** {@code rigwarden findings}: what a run says, how sure, and what it does not say. */
@Command(
        name = "findings",
        mixinStandardHelpOptions = true,
        description = "What a run found: the answers, how sure and why, and what would make them surer.")
final class FindingsCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "RUN", description = "Number of the run.")
    private int run;

    @Option(names = "--json", description = "For a program: every number unrounded, with its budget.")
    private boolean json;

    @Option(names = "--beside", paramLabel = "RUN", description = "An earlier run of the same rig: whether its joints' rises, scaled by the square of"
            + " the current, are those of this run.")
    private int beside;

    @Option(
            names = "--with-calibration",
            arity = "1..*",
            paramLabel = "FILE",
            description = "Work the readings out anew from the chips' codes with these calibrations, and say what that would have found. Files of"
                    + " several channels are read with together; a second one of a channel begins another set, told of beside the first.")
    private List<Path> calibrations = List.of();

    @Mixin
    private LogbookOption logbook = new LogbookOption();

    @Override
    public Integer call() throws IOException {
        Path file = StoredRuns.file(logbook, run);
        if (beside == run) {
            throw new Refused("Run " + run + " beside itself says nothing: name an earlier run of the same rig.");
        }
        Kept kept = kept();
        RunFindings found = RunFindings.read(file, kept.walked(), beside > 0 ? Optional.of(StoredRuns.file(logbook, beside)) : Optional.empty())
                .orElseThrow(() -> new Refused("The rig of run " + run
                + " is refused by this version of Rigwarden, so that nothing is found from it; `rigwarden export` still gives its readings."));
        List<Recomputed.Found> recomputed = new ArrayList<>();
        for (List<CalibrationFile> set : sets()) {
            recomputed.add(recomputed(file, set));
        }
        if (!json) {
            kept.changed().ifPresent(sentences -> sentences.forEach(System.out::println));
        }
        if (json) {
            System.out.println(new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(json(kept, found, recomputed)));
        } else if (recomputed.isEmpty()) {
            FindingsText.of(run, found, kept.later()).forEach(System.out::println);
        } else {
            RecomputedText.of(run, found, recomputed).forEach(System.out::println);
        }
        return Exits.DONE;
    }

    /**
     * What the ledger adds to a run's file.
     *
     * @param walked what a hand meter found on the joints, in this run and in those that it went on with
     * @param later number of the run that went on with it, if one did
     * @param changed a sentence for each of their files that is not the one that was closed; nothing where nobody could look
     */
    private record Kept(List<JointOhms> walked, OptionalInt later, Optional<List<String>> changed) {}

    /** Only one process may open the ledger: beside a run it is left alone, and that is said. */
    private Kept kept() {
        try (Logbook book = Logbook.open(logbook.folder(), LocalDateTime.now(ZoneId.systemDefault()).withNano(0).toString())) {
            List<LedgerRun> runs = book.runs();
            List<JointOhms> walked = new ArrayList<>();
            List<String> changed = new ArrayList<>();
            for (OptionalInt each = OptionalInt.of(run); each.isPresent(); each = before(runs, each.getAsInt())) {
                int number = each.getAsInt();
                walked.addAll(0, book.joints(number));
                runs.stream().filter(r -> r.number() == number).findFirst().flatMap(r -> Seal.broken(r, book.file(number))).ifPresent(changed::addFirst);
            }
            return new Kept(walked, runs.stream().filter(r -> r.continues().equals(OptionalInt.of(run))).mapToInt(LedgerRun::number).findFirst(), Optional.of(changed));
        } catch (LogbookException e) {
            System.err.println("Without what the ledger adds (a hand meter's joints, whether another run went on with it, whether its file was changed): "
                    + e.getMessage());
            return new Kept(List.of(), OptionalInt.empty(), Optional.empty());
        }
    }

    private static OptionalInt before(List<LedgerRun> runs, int number) {
        return runs.stream().filter(r -> r.number() == number).map(LedgerRun::continues).findFirst()
                .filter(before -> before.orElse(number) < number).orElse(OptionalInt.empty());
    }

    /** In the order in which they were named; each has one of a channel. */
    private List<List<CalibrationFile>> sets() {
        List<List<CalibrationFile>> sets = new ArrayList<>();
        for (Path path : calibrations) {
            CalibrationFile file = calibration(path);
            if (sets.isEmpty() || sets.getLast().stream().anyMatch(other -> other.channel().equals(file.channel()))) {
                sets.add(new ArrayList<>());
            }
            sets.getLast().add(file);
        }
        return sets;
    }

    private static Recomputed.Found recomputed(Path run, List<CalibrationFile> set) {
        return switch (Recomputed.of(run, set)) {
            case Recomputed.Found found -> found;
            case Recomputed.Refused refused -> throw new Refused(refused.words());
        };
    }

    private static CalibrationFile calibration(Path file) {
        try {
            return new CalibrationFile(String.valueOf(file.getFileName()), Files.readString(file));
        } catch (CharacterCodingException _) {
            throw new Refused("The calibration " + file + " is no text: allowed is a file that `rigwarden calibrate` wrote.");
        } catch (IOException e) {
            throw new Refused("The calibration " + file + " cannot be read: " + FileTrouble.why(e) + ".");
        }
    }

    private Map<String, Object> json(Kept kept, RunFindings found, List<Recomputed.Found> recomputed) {
        Map<String, Object> whole = new LinkedHashMap<>(FindingsJson.of(run, found));
        kept.changed().ifPresent(sentences -> whole.put("files_changed", sentences));
        if (!recomputed.isEmpty()) {
            whole.put("with_calibrations", recomputed.stream().map(other -> {
                Map<String, Object> one = new LinkedHashMap<>();
                one.put("calibrations", other.given().stream().map(FindingsCommand::json).toList());
                one.putAll(FindingsJson.of(run, other.found()));
                return one;
            }).toList());
        }
        return whole;
    }

    private static Map<String, Object> json(ChannelCalibration one) {
        Map<String, Object> map = new LinkedHashMap<>();
        map.put("channel", one.channel());
        map.put("made", one.made().toString());
        map.put("expires", one.expires().toString());
        map.put("gain", one.gain());
        map.put("offset", one.offset());
        return map;
    }
}
