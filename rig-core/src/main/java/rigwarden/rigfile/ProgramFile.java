package rigwarden.rigfile;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.tomlj.TomlParseResult;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.prove.Stops;
import rigwarden.rig.Rig;

/** Reads a programme and checks it against the rig that will run it. */
public final class ProgramFile {
    private ProgramFile() {}

    /**
     * Reads a programme from disk.
     *
     * @param path of the file
     * @param rig the rig with its warnings: an unattended programme is refused for some of them
     * @return the programme, or every refusal; nothing is thrown
     */
    public static Read<Program> read(Path path, Read.Sound<Rig> rig) {
        Page page = new Page(RigFile.name(path));
        return Source.text(path, page).map(text -> read(page, text, rig)).orElseGet(page::refused);
    }

    /**
     * Reads a programme that is already in memory.
     *
     * @param name of the file, for refusals
     * @param text its TOML
     * @param rig the rig with its warnings
     */
    public static Read<Program> read(String name, String text, Read.Sound<Rig> rig) {
        return read(new Page(name), text, rig);
    }

    /** Reads the programme that a run file holds: a file's text, or what stands for the stops of a proof. */
    public static Read<Program> stored(String name, String text, Read.Sound<Rig> rig) {
        return text.equals(Stops.TEXT) ? new Read.Sound<>(Stops.programme(rig.value()), List.of()) : read(name, text, rig);
    }

    private static Read<Program> read(Page page, String text, Read.Sound<Rig> rig) {
        Optional<TomlParseResult> table = Source.table(text, page);
        if (table.isEmpty()) {
            return page.refused();
        }
        Keys root = new Keys(page, table.get());
        Whole whole = whole(page, root, rig.value());
        List<Step> steps = whole.steps();
        boolean unattended = whole.unattended();
        if (!page.sound()) {
            return page.refused();
        }
        if (!(steps.getLast() instanceof Step.Park) && !whole.leaveEmpty()) {
            page.refuse(RefusalKind.NOT_PARKED, "step." + steps.size() + ".kind", steps.getLast().kind(),
                    "park as the last step, or leave_empty = true", "cells left empty or full age",
                    "Add a park step.");
        }
        new ProgramChecks(page, rig.value(), steps).check(whole.leaveEmpty());
        boolean person = steps.stream().anyMatch(Step::attended);
        if (unattended && person) {
            page.refuse(RefusalKind.ATTENDED_STEP, "unattended", "false", "it goes where no other step may",
                    "Stand by, or leave the step out.");
        }
        if (unattended) {
            page.carry(rig.warnings().stream()
                    .filter(warning -> warning.kind().weight() == RefusalKind.Weight.UNATTENDED)
                    .toList());
        }
        return page.sound() ? new Read.Sound<>(new Program(whole.name(), unattended, steps), page.warnings()) : page.refused();
    }

    /** What stands in a programme. */
    private record Whole(String name, boolean unattended, boolean leaveEmpty, List<Step> steps) {}

    /** Reads every key of a programme. */
    static void keys(Page page, Keys root, Rig rig) {
        whole(page, root, rig);
    }

    private static Whole whole(Page page, Keys root, Rig rig) {
        Whole whole = new Whole(
                root.text("name", "runs and reports name their programme"),
                root.yesOrNo("unattended", "some rigs may run only while a person stands by"),
                root.has("leave_empty") && root.yesOrNo("leave_empty", "it is either so or not"),
                new StepKeys(page, rig).steps(root));
        root.noOthers();
        return whole;
    }
}
