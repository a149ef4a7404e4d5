package rigwarden.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;

/** The pin map and the files for the operating system. */
class SystemFilesTest {
    private static final Path SYSTEM = Path.of("system").toAbsolutePath();

    @TempDir
    private Path folder;

    @Test
    void the_pin_map_says_the_lines_of_both_reference_rigs_and_no_others() throws IOException {
        for (String name : List.of("one-cell", "eight-cells")) {
            Map<Integer, String> mapped = new TreeMap<>();
            for (NamedCsvRecord row : pins()) {
                if (row.getField("rig").equals("both") || row.getField("rig").equals(name)) {
                    mapped.put(Integer.valueOf(row.getField("line")), row.getField("direction") + " " + row.getField("name"));
                }
            }

            assertThat(mapped).as(name).isEqualTo(lines(PrechargeTest.rig(name)));
        }
    }

    @Test
    void each_output_and_only_an_output_has_a_safe_level_and_stands_in_the_lines_that_are_taken_low() throws IOException {
        List<String> low = Files.readAllLines(SYSTEM.resolve("pins")).stream().filter(line -> !line.startsWith("#")).toList();

        for (NamedCsvRecord row : pins()) {
            boolean output = row.getField("direction").equals("out");
            assertThat(row.getField("safe_level")).as(row.getField("name")).isEqualTo(output ? "low" : "");
            if (output && !row.getField("rig").equals("one-cell")) {
                assertThat(low).contains(row.getField("line") + " " + row.getField("name"));
            }
        }
    }

    @Test
    void every_line_is_taken_low_although_one_of_them_fails_and_the_failure_is_said() throws Exception {
        for (String version : List.of("1.6.3", "2.2.1")) {
            Path said = folder.resolve("said-" + version);
            Path tool = folder.resolve("bin-" + version).resolve("gpioset");
            Files.createDirectories(tool.getParent());
            Files.writeString(tool, """
                    #!/bin/sh
                    if [ "$1" = --version ]; then echo "gpioset (libgpiod) v%s"; exit 0; fi
                    echo "$*" >> %s
                    case $* in *26=0*) exit 1 ;; esac
                    """.formatted(version, said));
            assertThat(tool.toFile().setExecutable(true)).isTrue();

            Said script = script(tool.getParent(), SYSTEM.resolve("pins"));

            String before = version.startsWith("1") ? "gpiochip0 " : "--chip gpiochip0 --toggle 0 ";
            assertThat(Files.readAllLines(said)).containsExactly(List.of(5, 6, 26, 21, 13, 19, 22).stream()
                    .map(line -> before + line + "=0").toArray(String[]::new));
            assertThat(script.exit()).isEqualTo(1);
            assertThat(script.words()).contains("line 26 (heartbeat) could not be taken low");
        }
    }

    @Test
    void without_a_pin_map_or_a_tool_it_says_so_and_fails() throws Exception {
        Said noMap = script(folder, folder.resolve("none"));
        Said noTool = script(folder, SYSTEM.resolve("pins"));

        assertThat(noMap.exit()).isEqualTo(1);
        assertThat(noMap.words()).contains("no line was touched");
        assertThat(noTool.exit()).isEqualTo(1);
        assertThat(noTool.words()).contains("there is no gpioset");
    }

    @Test
    void the_unit_makes_outputs_safe_before_and_after_and_never_begins_again_after_a_trip() throws IOException {
        List<String> unit = Files.readAllLines(SYSTEM.resolve("rigwarden.service"));

        assertThat(unit).contains("ExecStartPre=/usr/share/rigwarden/safe-outputs", "ExecStopPost=/usr/share/rigwarden/safe-outputs",
                "RestartPreventExitStatus=2 3 4 5", "PrivateDevices=no", "DeviceAllow=char-gpiochip rw", "DeviceAllow=char-i2c rw");
        assertThat(unit).noneMatch(line -> line.startsWith("MemoryDenyWriteExecute") || line.startsWith("Type=notify")
                || line.startsWith("WatchdogSec"));
    }

    private record Said(int exit, String words) {}

    /** Runs the script with these tools before all others and, of the machine's own, nothing but the shell. */
    private Said script(Path tools, Path pins) throws Exception {
        Path words = folder.resolve("words");
        ProcessBuilder builder = new ProcessBuilder("/bin/sh", SYSTEM.resolve("safe-outputs").toString(), pins.toString());
        builder.environment().put("PATH", tools.toString());
        Process process = builder.redirectErrorStream(true).redirectOutput(words.toFile()).start();
        assertThat(process.waitFor(10, TimeUnit.SECONDS)).isTrue();
        return new Said(process.exitValue(), Files.readString(words));
    }

    private static Map<Integer, String> lines(Rig rig) {
        var panel = rig.panel();
        Map<Integer, String> lines = new TreeMap<>(Map.of(panel.contactor(), "out contactor", panel.precharge(), "out precharge",
                panel.heartbeat(), "out heartbeat", panel.sounder(), "out sounder", panel.loop(), "in loop",
                panel.coilFeed(), "in coil_feed", panel.feedback(), "in feedback", panel.arm(), "in arm"));
        for (Device device : rig.devices()) {
            lines.put(device.relay(), "out " + device.name());
        }
        return lines;
    }

    private static List<NamedCsvRecord> pins() throws IOException {
        try (CsvReader<NamedCsvRecord> reader = CsvReader.builder().ofNamedCsvRecord(Path.of("pins.csv"))) {
            return reader.stream().toList();
        }
    }
}
