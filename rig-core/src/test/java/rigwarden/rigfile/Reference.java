package rigwarden.rigfile;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import rigwarden.program.Program;
import rigwarden.rig.Rig;

/** The reference files, and what becomes of them with an edit. */
final class Reference {
    static final Path RIG = Path.of("..", "hardware", "rigs", "one-cell.toml");
    static final Path PACK = Path.of("..", "hardware", "rigs", "eight-cells.toml");
    static final Path SPI = Path.of("..", "hardware", "rigs", "one-cell-spi.toml");
    static final Path PACK_NIGHT = Path.of("..", "hardware", "rigs", "eight-cells-night.toml");
    static final Path NIGHT = Path.of("..", "hardware", "rigs", "one-cell-night.toml");

    static final Path REGISTERS = Path.of("..", "hardware", "rigs", "one-cell-modbus.toml");

    private Reference() {}

    static Read.Sound<Rig> rig() {
        return sound(RigFile.read(RIG));
    }

    /**
     * The rig with texts replaced, in pairs, after the comments behind values are gone. Each old text must stand in the
     * file; its first place is replaced.
     */
    static Read<Rig> rig(String... edits) {
        return RigFile.read("one-cell.toml", edited(text(RIG), edits));
    }

    static Read<Rig> spi(String... edits) {
        return RigFile.read("one-cell-spi.toml", edited(text(SPI), edits));
    }

    static Read<Rig> pack(String... edits) {
        return RigFile.read("eight-cells.toml", edited(text(PACK), edits));
    }

    static Read<Rig> registers(String... edits) {
        return RigFile.read("one-cell-modbus.toml", edited(text(REGISTERS), edits));
    }

    static Read<Program> packNight(Read.Sound<Rig> rig, String... edits) {
        return ProgramFile.read("eight-cells-night.toml", edited(text(PACK_NIGHT), edits), rig);
    }

    static Read<Program> night(Read.Sound<Rig> rig, String... edits) {
        return ProgramFile.read("one-cell-night.toml", edited(text(NIGHT), edits), rig);
    }

    static <T> Read.Sound<T> sound(Read<T> read) {
        return switch (read) {
            case Read.Sound<T> sound -> sound;
            case Read.Refused<T> refused -> throw new AssertionError(printed(refused.refusals()));
        };
    }

    static <T> List<Refusal> refusals(Read<T> read) {
        return switch (read) {
            case Read.Sound<T> _ -> List.of();
            case Read.Refused<T> refused -> refused.refusals();
        };
    }

    static List<String> printed(List<Refusal> refusals) {
        return refusals.stream().map(Refusal::print).toList();
    }

    static String text(Path path) {
        try {
            return Files.readString(path);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String edited(String text, String... edits) {
        String edited = text.replaceAll("  +#.*", "");
        for (int i = 0; i < edits.length; i += 2) {
            int at = edited.indexOf(edits[i]);
            assertThat(at).as(edits[i]).isNotNegative();
            edited = edited.substring(0, at) + edits[i + 1] + edited.substring(at + edits[i].length());
        }
        return edited;
    }
}
