package rigwarden.page;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The loop's lateness while the web tier beside it is ill used and dies, in a process with the launcher's own memory, beside
 * a bare loop in a process of its own. Twenty seconds a way, or {@code -Drigwarden.seconds}; not in the default run.
 */
class WebDiesBenchmark {
    private static final long SECONDS = Long.getLong("rigwarden.seconds", 20);
    private static final int WAYS = 7;
    private static final Pattern LINE = Pattern.compile(".* \\| \\d+ \\| ([\\d.]+) \\| (\\w+)");
    private static final double THREE_PERIODS_MS = 300;

    @TempDir
    Path folder;

    @Test
    void the_loop_goes_on_whatever_becomes_of_the_page() throws Exception {
        Process bare = java(BareLoop.class, "-Xmx64m", "100000000", Long.toString(SECONDS * WAYS));
        Process night = java(WebDies.class, "-Xmx128m", folder.toString(), Long.toString(SECONDS));
        List<String> lines = new ArrayList<>();
        try (BufferedReader said = night.inputReader(StandardCharsets.UTF_8)) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                System.out.println(line);
                lines.add(line);
            }
        }
        night.waitFor();
        String last = new String(bare.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
        System.out.printf("a bare loop beside it: %.1f ms%n", Double.parseDouble(last.lines().toList().getLast()) * 1000);

        List<String> ways = lines.stream().filter(line -> line.contains(" | ")).toList();
        assertThat(ways).hasSize(WAYS);
        assertThat(ways).allSatisfy(way -> {
            Matcher cells = LINE.matcher(way);
            assertThat(cells.matches()).as(way).isTrue();
            assertThat(cells.group(2)).as("current still flows: %s", way).isEqualTo("flows");
            assertThat(Double.parseDouble(cells.group(1))).as("no later than the warden bears: %s", way).isLessThan(THREE_PERIODS_MS);
        });
    }

    private static Process java(Class<?> main, String memory, String... arguments) throws java.io.IOException {
        List<String> words = new ArrayList<>(List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), memory,
                "-XX:+UseSerialGC", "-XX:+UseCompactObjectHeaders", "--enable-native-access=ALL-UNNAMED", "-cp",
                System.getProperty("java.class.path"), main.getName()));
        words.addAll(List.of(arguments));
        return new ProcessBuilder(words).redirectErrorStream(true).start();
    }
}
