package rigwarden.circuit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** One simulation by the program ngspice, in a process of its own. */
final class Ngspice {
    static final Path CIRCUITS = Path.of("circuits").toAbsolutePath();

    private static final List<String> PARTS = List.of("parts", "heartbeat", "loop", "window", "sounder", "path", "chain");
    private static final Pattern MEASURED = Pattern.compile("^([a-z]\\w*)\\s+=\\s+([-+0-9.e]+)(?:\\s.*)?$");
    private static final int LONGEST_SECONDS = 60;

    private Ngspice() {}

    /** Simulates lines that stand on the parts of {@code hardware/circuits}; what they measure, by name. */
    static Map<String, Double> lines(String lines) throws IOException, InterruptedException {
        StringBuilder deck = new StringBuilder("a test of the protective chain\n");
        PARTS.forEach(part -> deck.append(".include ").append(CIRCUITS.resolve(part + ".sub")).append('\n'));
        Path file = Files.createTempFile("rigwarden", ".cir");
        try {
            Files.writeString(file, deck.append(lines).append("\n.end\n"));
            return file(file);
        } finally {
            Files.delete(file);
        }
    }

    /** Simulates a deck of its own; what it measures, by name. Fails where a measurement failed. */
    static Map<String, Double> file(Path deck) throws IOException, InterruptedException {
        Path said = Files.createTempFile("rigwarden", ".ngspice");
        try {
            Process process = start(deck, said);
            if (!process.waitFor(LONGEST_SECONDS, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                throw new AssertionError("ngspice did not end within " + LONGEST_SECONDS + " s on\n" + Files.readString(deck));
            }
            return measured(Files.readString(said), deck);
        } finally {
            Files.delete(said);
        }
    }

    private static Process start(Path deck, Path said) {
        try {
            return new ProcessBuilder("ngspice", "-b", deck.toString()).directory(CIRCUITS.toFile())
                    .redirectErrorStream(true).redirectOutput(said.toFile()).start();
        } catch (IOException e) {
            throw new AssertionError("there is no ngspice here: run `hardware/prepare tests`", e);
        }
    }

    private static Map<String, Double> measured(String said, Path deck) throws IOException {
        Map<String, Double> measured = new HashMap<>();
        for (String line : said.lines().toList()) {
            Matcher figure = MEASURED.matcher(line);
            if (figure.matches()) {
                measured.put(figure.group(1), Double.valueOf(figure.group(2)));
            }
        }
        long asked = Files.readString(deck).lines().filter(line -> line.startsWith(".meas")).count();
        if (measured.size() != asked) {
            throw new AssertionError(asked + " figures were asked for and " + measured.keySet() + " came:\n" + said
                    + Files.readString(deck));
        }
        return measured;
    }
}
