package rigwarden.command;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.IntStream;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import rigwarden.campaign.Scene;
import rigwarden.campaign.StepNeverBegan;
import rigwarden.campaign.UnfitNight;
import rigwarden.campaign.Campaign;
import rigwarden.campaign.FaultList;
import rigwarden.campaign.Night;
import rigwarden.campaign.Outcome;
import rigwarden.campaign.Report;
import rigwarden.campaign.WrittenCases;
import rigwarden.rigfile.CaseFile;
import rigwarden.rigfile.WrittenCase;

/** {@code rigwarden campaign}: faults put into rehearsals of a night, judged by the model's physics. */
@Command(
        name = "campaign",
        mixinStandardHelpOptions = true,
        description = "Put faults into an emulated rig, many times over, and count what was unsafe. Without RIG: both reference rigs.")
final class CampaignCommand implements Callable<Integer> {
    private static final int MOST = 10_000_000;
    private static final int MOST_SPECIMENS = 100;
    private static final int DEFAULT_CASES = 300;

    @Parameters(index = "0", arity = "0..1", paramLabel = "RIG", description = "Rig file (default: both reference rigs).")
    private Optional<Path> rigFile = Optional.empty();

    @Parameters(index = "1", arity = "0..1", paramLabel = "PROGRAMME", description = "Programme file for that rig.")
    private Optional<Path> programFile = Optional.empty();

    @Option(names = "--faults", paramLabel = "N", description = "Cases that are drawn (default: 300).")
    private Optional<Integer> faults = Optional.empty();

    @Option(names = "--seed", paramLabel = "S", description = "Seed from which they are drawn (default: 1).")
    private Optional<Long> seed = Optional.empty();

    @Option(names = "--specimens", paramLabel = "K", description = "Specimens of each rig, other errors of the parts (default: 1).")
    private int specimens = 1;

    @Option(names = "--only", paramLabel = "CASE", description = "Run this case of the campaign alone; may be given more than once.")
    private List<Integer> only = new ArrayList<>();

    @Option(names = "--cases", paramLabel = "FILE", description = "Run the cases of this file (TOML) instead of drawn ones.")
    private Optional<Path> caseFile = Optional.empty();

    @Option(names = "--list", description = "Print every fault that there is for the rig, with unit, limit and places, and end.")
    private boolean list;

    @Override
    public Integer call() {
        within("--specimens", specimens, MOST_SPECIMENS);
        within("--faults", faults.orElse(DEFAULT_CASES), MOST);
        only.forEach(n -> within("--only", n, MOST));
        if (caseFile.isPresent() && rigFile.isEmpty()) {
            throw new Refused("--cases " + caseFile.get() + ": cases are written for one rig and one programme. Write: rigwarden campaign RIG PROGRAMME --cases FILE.");
        }
        boolean drawn = faults.isPresent() || seed.isPresent() || !only.isEmpty();
        if (caseFile.isPresent() && drawn) {
            throw new Refused("--cases " + caseFile.get() + ": --faults, --seed and --only are for cases that are drawn. Leave them out.");
        }
        List<Scene> scenes = scenes();
        if (list) {
            scenes.forEach(CampaignCommand::list);
            return Exits.DONE;
        }
        return caseFile.isPresent() ? written(scenes, caseFile.orElseThrow()) : drawn(scenes);
    }

    private static void list(Scene scene) {
        System.out.println(scene.name() + ":");
        FaultList.of(scene).forEach(System.out::println);
    }

    private Campaign campaign(List<Scene> scenes) {
        return new Campaign(scenes, specimens, Runtime.getRuntime().availableProcessors());
    }

    private int written(List<Scene> scenes, Path file) {
        Scene scene = scenes.getFirst();
        List<WrittenCase> cases = Inputs.sound(CaseFile.read(file, WrittenCases.words(scene), scene.program().steps().size())).value();
        System.out.printf("Fault campaign: %d written cases on %s. Every part is emulated, no cell is touched.%n", cases.size(), scene.name());
        Campaign campaign = campaign(scenes);
        try {
            return told(campaign, campaign.run(healthy(campaign), cases), false);
        } catch (StepNeverBegan e) {
            throw new Refused(file + ": " + e.getMessage() + " Choose a step that the night without a fault comes to.");
        }
    }

    private int drawn(List<Scene> scenes) {
        Campaign campaign = campaign(scenes);
        List<Integer> numbers = only.isEmpty()
                ? IntStream.rangeClosed(1, faults.orElse(DEFAULT_CASES)).boxed().toList()
                : List.copyOf(only);
        System.out.printf("Fault campaign: %d cases, seed %d, %d specimens of each of %s. Every part is emulated, no cell is touched.%n",
                numbers.size(), seed.orElse(1L), specimens, String.join(", ", scenes.stream().map(Scene::name).toList()));
        List<Night> nights = healthy(campaign);
        nights.forEach(night -> System.out.println("  " + night.words()));
        return told(campaign, campaign.run(nights, seed.orElse(1L), numbers, this::tell), only.isEmpty());
    }

    private static List<Night> healthy(Campaign campaign) {
        try {
            return campaign.nights();
        } catch (UnfitNight e) {
            throw new Refused("The night must be sound before faults are put into it. " + e.getMessage()
                    + " `rigwarden rehearse` shows it.");
        }
    }

    private static int told(Campaign campaign, List<Outcome> outcomes, boolean many) {
        if (many) {
            Report.of(outcomes, campaign.stopped(outcomes)).lines().forEach(System.out::println);
            System.out.println("Any case runs again alone by adding --only N to the same command.");
        } else {
            outcomes.forEach(outcome -> System.out.println(outcome.words()));
        }
        return outcomes.stream().anyMatch(Outcome::unsafe) ? Exits.TRIPPED : Exits.DONE;
    }

    private List<Scene> scenes() {
        if (rigFile.isPresent() && programFile.isEmpty()) {
            throw new Refused("campaign: a programme for " + rigFile.get() + " is missing. Write: rigwarden campaign RIG PROGRAMME.");
        }
        return rigFile.isPresent()
                ? List.of(scene(rigFile.get(), programFile.orElseThrow()))
                : List.of(scene(Inputs.reference("one-cell.toml"), Inputs.reference("one-cell-night.toml")),
                        scene(Inputs.reference("eight-cells.toml"), Inputs.reference("eight-cells-night.toml")));
    }

    private static Scene scene(Path rig, Path program) {
        Inputs inputs = Inputs.read(rig, program);
        return new Scene(rig.getFileName().toString().replaceFirst("\\.toml$", ""), inputs.rig(), inputs.program());
    }

    private static void within(String option, int number, int most) {
        if (number < 1 || number > most) {
            throw new Refused(option + " " + number + ": it is 1…" + most + ".");
        }
    }

    private void tell(int done) {
        if (done % 1000 == 0) {
            System.out.println("  " + done + " cases done");
        }
    }
}
