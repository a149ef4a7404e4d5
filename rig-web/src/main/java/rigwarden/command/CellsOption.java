package rigwarden.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import picocli.CommandLine.Option;
import rigwarden.rig.Rig;

/** Which cells lie in the rig: by its file, or told, or asked of the person at it. */
final class CellsOption {
    @Option(names = "--cells", split = ",", paramLabel = "LABEL",
            description = "What is written on the cells in the rig, from B− to B+, where its file has no labels (default: asked).")
    private List<String> told = new ArrayList<>();

    /** Whether they were told on the command line. */
    boolean given() {
        return !told.isEmpty();
    }

    /**
     * The labels from B− to B+; a rig file that has them must not be contradicted.
     *
     * @param person is asked where neither says them
     * @param terminal on which
     */
    List<String> in(Rig rig, BufferedReader person, PrintStream terminal) throws IOException {
        List<String> written = rig.cells().labels();
        if (written.isEmpty()) {
            return checked(rig, given() ? told : asked(rig, person, terminal));
        }
        if (given() && !stripped(told).equals(written)) {
            throw new Refused("--cells " + String.join(",", told) + ": the rig file says " + String.join(", ", written) + ". Nothing was switched on.");
        }
        return written;
    }

    private static List<String> asked(Rig rig, BufferedReader person, PrintStream terminal) throws IOException {
        terminal.print(count(rig) == 1
                ? "What is written on the cell in the rig? "
                : "What is written on the " + count(rig) + " cells in the rig, from B− to B+, with commas between? ");
        terminal.flush();
        String said = person.readLine();
        if (said == null) {
            throw new Refused("Nobody says which cells are in the rig: name them with --cells. Nothing was switched on.");
        }
        return List.of(said.split(",", -1));
    }

    private static List<String> checked(Rig rig, List<String> labels) {
        List<String> plain = stripped(labels);
        boolean each = plain.size() == count(rig) && new HashSet<>(plain).size() == plain.size() && plain.stream().noneMatch(String::isEmpty);
        if (!each) {
            throw new Refused("Cells " + String.join(", ", plain) + ": allowed are " + count(rig)
                    + " different labels, one for each cell from B− to B+, because a rig is proved with the cells that are in it. Nothing was switched on.");
        }
        return plain;
    }

    private static int count(Rig rig) {
        return rig.cells().series() * rig.cells().parallel();
    }

    private static List<String> stripped(List<String> labels) {
        return labels.stream().map(String::strip).toList();
    }
}
