package rigwarden.proof;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import rigwarden.emulated.Rehearsal;
import rigwarden.logbook.Logbook;
import rigwarden.logbook.RunAbout;
import rigwarden.logbook.RunSettings;
import rigwarden.rig.Rig;
import rigwarden.run.RunState;

/**
 * The process that {@link CrashTest} and {@link CardTest} kill: a recorded rehearsal that says what is stored, when it
 * closes a path, and when storing is in trouble.
 */
final class KilledRehearsal {
    private KilledRehearsal() {}

    /** Words that start such a process; its logbook lies in this folder. */
    static List<String> command(Path folder, int seed) {
        return List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx128m", "-XX:+UseSerialGC",
                "-XX:-UsePerfData", "--enable-native-access=ALL-UNNAMED", "-cp", System.getProperty("java.class.path"),
                KilledRehearsal.class.getName(), folder.toString(), Integer.toString(seed));
    }

    public static void main(String[] arguments) throws Exception {
        Rig rig = Bench.rig();
        Logbook book = Logbook.open(Path.of(arguments[0]), "killed");
        RunAbout about = new RunAbout("", "", Map.of(), "emulated", 1, true, "rehearsal", 0);
        RunSettings often = new RunSettings(2_000, 100, 20_000_000L, 200_000_000L, 20_000_000_000L, 0);
        Logbook.Begun begun = book.begin(about, rig.name(), "killed", rig.channels(), 1_000_000, often,
                stored -> System.out.println("stored " + stored));
        Rehearsal rehearsal = new Rehearsal(rig, Bench.night(), Long.parseLong(arguments[1]), List.of(), begun.writer());
        boolean closing = false;
        boolean trouble = false;
        while (!rehearsal.over()) {
            rehearsal.scan();
            boolean closes = rehearsal.loop().standing().state() instanceof RunState.Closes;
            if (closes && !closing) {
                System.out.println("closing");
            }
            closing = closes;
            if (closes) {
                LockSupport.parkNanos(20_000_000L);
            }
            while (begun.writer().fill() > 0.5) {
                if (!trouble && begun.writer().trouble().isPresent()) {
                    System.out.println("trouble " + begun.writer().trouble().get());
                }
                trouble |= begun.writer().trouble().isPresent();
                LockSupport.parkNanos(200_000L);
            }
        }
        throw new IllegalStateException("was not killed");
    }
}
