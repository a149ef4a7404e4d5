package rigwarden.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.StoredProof;
import rigwarden.program.Program;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Rig;
import rigwarden.rigfile.ProgramFile;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.Refusal;
import rigwarden.rigfile.RigFile;

/**
 * A rig file and a programme file, read and found sound.
 *
 * @param rig the rig
 * @param rigText its file, whole
 * @param program the programme
 * @param programText its file, whole
 * @param warnings what is named and not refused
 */
record Inputs(Rig rig, String rigText, Program program, String programText, List<Refusal> warnings) {

    /** Reads both, or refuses with every reason found. */
    static Inputs read(Path rigFile, Path programFile) {
        Read.Sound<Rig> rig = sound(RigFile.read(rigFile));
        Read.Sound<Program> program = sound(ProgramFile.read(programFile, rig));
        List<Refusal> warnings = new ArrayList<>(rig.warnings());
        warnings.addAll(program.warnings());
        try {
            return new Inputs(rig.value(), Files.readString(rigFile), program.value(), Files.readString(programFile),
                    List.copyOf(warnings));
        } catch (IOException e) {
            throw new Refused("the files went away while they were read: " + e.getMessage());
        }
    }

    /** Reads both from what a run's file holds, or refuses with every reason found. */
    static Inputs stored(RunAbout about) {
        if (about.imported().isPresent()) {
            throw new Refused("This run is a log from elsewhere: it has neither rig nor programme. `rigwarden findings` and `rigwarden export` read it.");
        }
        Read.Sound<Rig> rig = sound(RigFile.read("the rig file of the run", about.rigText(), about.calibrations()));
        Read.Sound<Program> program = sound(ProgramFile.stored("the programme of the run", about.programmeText(), rig));
        return new Inputs(rig.value(), about.rigText(), program.value(), about.programmeText(), List.of());
    }

    /** Files of the calibrations that the rig was read with, whole. */
    List<String> calibrations() {
        return rig.calibrations().stream().map(ChannelCalibration::text).toList();
    }

    /** Refuses what says nothing about a real rig: a calibration that was made on an emulated one. */
    void insistReal() {
        rig.calibrations().stream().filter(found -> found.emulatedSeed().isPresent()).findFirst().ifPresent(found -> {
            throw new Refused("The calibration of " + found.channel() + " beside the rig file is of a rehearsal, and says nothing about a real"
                    + " chip. Calibrate it with `rigwarden calibrate`, or move the file away.");
        });
    }

    /** What is left of the programme from this step on, counted from 1; the files stay as they are. */
    Inputs leftFrom(int step) {
        Program left = new Program(program.name(), program.unattended(), program.steps().subList(step - 1, program.steps().size()));
        return new Inputs(rig, rigText, left, programText, warnings);
    }

    static <T> Read.Sound<T> sound(Read<T> read) {
        return switch (read) {
            case Read.Sound<T> sound -> sound;
            case Read.Refused<T> refused ->
                throw new Refused(String.join("\n", refused.refusals().stream().map(Refusal::print).toList()));
        };
    }

    /** What a proof made now with these cells would be of. */
    StoredProof.Of proved(List<String> cells) {
        String beside = calibrations().isEmpty() ? "" : RunAbout.hashOf(String.join("", calibrations()));
        return new StoredProof.Of(RunAbout.hashOf(rigText), beside, String.join(", ", cells));
    }

    /** A file of the distribution's reference rig. */
    static Path reference(String name) {
        return Path.of(System.getProperty("rigwarden.home", "."), "rigs", name);
    }
}
