package rigwarden.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;

/** What a person confirms once for each rig before anything real is switched on. */
final class Cautions {
    private static final String FILE = "cautions-understood";
    private static final String ANSWER = "understood";
    private static final List<String> WORDS = List.of(
            "Large cells can weld a dropped spanner, burn, and start fires. Insulated tools, no jewellery, eye protection,",
            "  covered terminals; a non-combustible bench with a smoke alarm, away from where people sleep.",
            "Know how to cut the power, and leave: gas from a venting cell burns and is poisonous.",
            "Rigwarden is a second line of defence and no certified safety equipment: fuse, hard-wired emergency stop, thermal",
            "  cut-out and the battery's own protection must work with the computer dead, and have been tried first.",
            "The makers' instructions for cells and equipment come first; the tighter limit wins.",
            "`rigwarden prove` shows what it can see from here; what hangs on wires that it cannot see is yours to have looked at.");

    private Cautions() {}

    /** Asks, unless this rig's cautions were confirmed before; keeps the answer with its date in the logbook's folder. */
    static void confirm(Path folder, String rig, String now) throws IOException {
        Path file = folder.resolve(FILE);
        String line = rig.replaceAll("[\\r\\n\\t]", " ");
        if (Files.exists(file) && Files.readAllLines(file, StandardCharsets.UTF_8).stream()
                .anyMatch(l -> l.endsWith("\t" + line))) {
            return;
        }
        WORDS.forEach(System.out::println);
        System.out.print("Type \"" + ANSWER + "\" to confirm this for " + rig + ": ");
        System.out.flush();
        String said = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)).readLine();
        if (said == null || !said.strip().equalsIgnoreCase(ANSWER)) {
            throw new Refused("Not confirmed; nothing was switched on.");
        }
        Files.createDirectories(folder);
        Files.writeString(file, now + "\t" + line + "\n", StandardCharsets.UTF_8, StandardOpenOption.CREATE,
                StandardOpenOption.APPEND);
    }
}
