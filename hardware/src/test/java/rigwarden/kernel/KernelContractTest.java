package rigwarden.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import rigwarden.panel.Output;

/**
 * The bus contract on Debian 13's own arm64 kernel through the official plugins: the board's program says what it keeps,
 * and the machine itself, seen from outside, what became of the lines.
 */
class KernelContractTest {
    /** From power to the first line of the board's program, and to its last: most of the second is Java's starts under emulation. */
    private static final double KERNEL_SECONDS = 15;
    private static final double WHOLE_SECONDS = 300;
    private static final Path FOLDER = Path.of("target", "board").toAbsolutePath();

    @Test
    void the_official_plugins_keep_the_bus_contract_on_debians_kernel() throws Exception {
        refuseWithoutTools();
        BoardDisks.image(FOLDER);
        Path trace = FOLDER.resolve("lines.txt");
        Files.deleteIfExists(trace);

        List<String> said = new GuestBoard(FOLDER, BoardDisks.program(FOLDER), trace).run();

        Files.write(FOLDER.resolve("said.txt"), said);
        assertThat(said).noneMatch(line -> line.contains(ContractMain.BROKEN));
        for (Case sentence : ContractMain.cases(KernelHeader.notServed(), KernelSpiHeader.notServed())) {
            assertThat(said).as(sentence.name()).filteredOn(line -> line.startsWith(ContractMain.KEPT + sentence.name() + " (")).hasSize(1);
        }
        assertThat(said).contains(ContractMain.OVER).anyMatch(line -> line.startsWith("board: the program ended with 0"));
        assertLines(Files.readAllLines(trace));
        double kernel = up(said, "board: Linux");
        double whole = up(said, "board: the program ended");
        System.out.printf(Locale.ROOT, "the board's own clock: kernel and disks up after %.1f s, the contract over after %.1f s%n", kernel, whole);
        assertThat(kernel).isLessThan(KERNEL_SECONDS);
        assertThat(whole).isLessThan(WHOLE_SECONDS);
    }

    /** The board's time since it was switched on, s, at the end of the line that begins so. */
    private static double up(List<String> said, String beginning) {
        String line = said.stream().filter(one -> one.startsWith(beginning)).findFirst().orElseThrow();
        return Double.parseDouble(line.replaceFirst(".* up ([0-9.]+) s$", "$1"));
    }

    private static void refuseWithoutTools() {
        List<String> missing = BoardDisks.missing();
        if (!missing.isEmpty()) {
            System.err.println("NOT TESTED: the bus contract on the kernel, since this machine has no " + missing
                    + "; `hardware/prepare tests` installs them");
        }
        Assumptions.assumeTrue(missing.isEmpty(), () -> "no " + missing + "; `hardware/prepare tests` installs them");
    }

    /** Each line rose as often as the contract meant it to: never at a claim, a refused claim, a stop or a kill. */
    private static void assertLines(List<String> trace) {
        assertThat(rises(trace, ContractRig.LINES.get(Output.CONTACTOR))).as("contactor: written, before the stop, held").isEqualTo(3);
        assertThat(rises(trace, ContractRig.LINES.get(Output.PRECHARGE))).as("pre-charge: before the stop").isEqualTo(1);
        assertThat(rises(trace, ContractRig.LINES.get(Output.SOUNDER))).as("sounder: before the stop").isEqualTo(1);
        assertThat(rises(trace, ContractRig.FREE)).as("the line that is claimed high").isEqualTo(1);
        assertThat(rises(trace, ContractRig.LINES.get(Output.HEARTBEAT))).as("heartbeat").isGreaterThan(6);
        assertThat(trace).anyMatch(line -> line.endsWith("input " + ContractRig.LOOP + " changed to 1"));
        for (int line : ContractRig.LINES.values()) {
            assertThat(trace.stream().filter(change -> change.contains("setting output " + line + " ")).toList().getLast())
                    .as("line %d after all", line).endsWith(" to 0");
        }
    }

    private static long rises(List<String> trace, int line) {
        return trace.stream().filter(change -> change.endsWith("setting output " + line + " to 1")).count();
    }
}
