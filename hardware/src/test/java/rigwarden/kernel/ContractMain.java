package rigwarden.kernel;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** The program of the emulated board: keeps the contract sentence by sentence and says so, one line each. */
final class ContractMain {
    static final String KEPT = "kept: ";
    static final String BROKEN = "BROKEN: ";
    static final String OVER = "contract over";

    private ContractMain() {}

    public static void main(String[] arguments) throws Exception {
        for (Case sentence : cases(KernelHeader.served(), KernelSpiHeader.served())) {
            say(sentence);
        }
        System.out.println(OVER);
        CuseDevice.endAll();
        System.exit(0);
    }

    /** All sentences, in their order. */
    static List<Case> cases(KernelHeader header, KernelSpiHeader spi) {
        List<Case> cases = new ArrayList<>(BusContract.cases(header, spi));
        cases.addAll(ProcessContract.cases(header));
        return cases;
    }

    @SuppressWarnings("CatchAndPrintStackTrace") // the trace goes into the board's log, which the test prints
    private static void say(Case sentence) {
        long began = System.nanoTime();
        try {
            sentence.body().run();
            System.out.printf("%s%s (%d ms)%n", KEPT, sentence.name(), (System.nanoTime() - began) / 1_000_000);
        } catch (Exception | Error e) {
            System.out.println(BROKEN + sentence.name());
            e.printStackTrace(System.out);
        }
    }

    /** Words that start another program of the board. */
    static List<String> java(Class<?> program) {
        return List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1", "-XX:-UsePerfData", "-Xmx96m", "--enable-native-access=ALL-UNNAMED", "-cp",
                System.getProperty("java.class.path"), program.getName());
    }
}
