package rigwarden.rigfile;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.calibration.Calibrating;
import rigwarden.calibration.MeterStatement;
import rigwarden.calibration.Point;
import rigwarden.calibration.Result;
import rigwarden.logbook.RunAbout;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;

/** Calibrations that lie beside a rig file: what they change, and when they are refused. */
class CalibrationKeysTest {
    private static final LocalDate MADE = LocalDate.of(2026, 11, 26);
    private static final MeterStatement METER = new MeterStatement("m", 0.0002, 3, 0.0001, 0, 60, LocalDate.of(2026, 3, 1), 365);

    @TempDir
    private Path folder = Path.of("");

    private Path rigFile(Path original) throws IOException {
        return Files.writeString(folder.resolve("hut.toml"), Reference.text(original));
    }

    private static String calibration(Path rigFile, String channel, double gain, double offset) {
        Rig rig = Reference.sound(RigFile.bare(rigFile)).value();
        Calibrating how = new Calibrating(rig, channel, METER, Optional.empty());
        return switch (how.of(List.of(new Point(2.5, 1e-4, 50, 2.5 * gain + offset), new Point(3.6, 1e-4, 50, 3.6 * gain + offset)), MADE,
                100, Calibrating.Seen.NOTHING)) {
            case Result.Found found -> found.calibration().text();
            case Result.Refused refused -> throw new AssertionError(refused.words());
        };
    }

    private Path put(Path rigFile, String channel, String text) throws IOException {
        return Files.writeString(CalibrationFile.of(rigFile, channel), text);
    }

    private static List<String> refused(Path rigFile, LocalDate today) {
        return Reference.printed(Reference.refusals(RigFile.read(rigFile, today)));
    }

    @Test
    void a_calibrated_channel_reads_and_doubts_by_its_file() throws IOException {
        Path file = rigFile(Reference.RIG);
        put(file, "cell_01_v", calibration(file, "cell_01_v", 1.002, 0.003));

        Rig rig = Reference.sound(RigFile.read(file, MADE)).value();
        Channel bare = Reference.rig().value().column("cell_01_v").orElseThrow();
        Channel cell = rig.column("cell_01_v").orElseThrow();

        assertThat(cell.value(20_000)).isEqualTo(1.002 * bare.value(20_000) + 0.003, within(1e-9));
        assertThat(cell.uncertainty(3.65)).isLessThan(0.3 * bare.uncertainty(3.65));
        assertThat(rig.column("bus_v")).isEqualTo(Reference.rig().value().column("bus_v"));
    }

    @Test
    void the_sum_of_the_chip_is_corrected_by_the_currents_gain() throws IOException {
        Path file = rigFile(Reference.RIG);
        put(file, "current_a", calibration(file, "current_a", 0.998, 0.02));

        Rig rig = Reference.sound(RigFile.read(file, MADE)).value();

        assertThat(rig.column("charge_as").orElseThrow().scale())
                .isEqualTo(0.998 * Reference.rig().value().column("charge_as").orElseThrow().scale(), within(1e-15));
        assertThat(rig.column("current_a").orElseThrow().value(0)).isEqualTo(0.02, within(1e-9));
    }

    @Test
    void a_cell_between_two_calibrated_taps_is_as_sure_as_both() throws IOException {
        Path file = Files.writeString(folder.resolve("hut.toml"), Reference.text(Reference.PACK).replaceAll("calibration = .*", ""));
        double before = Reference.sound(RigFile.read(file, MADE)).value().column("cell_02_v").orElseThrow().uncertainty(3.65);
        put(file, "tap_01_v", calibration(file, "tap_01_v", 1.001, 0));
        put(file, "tap_02_v", calibration(file, "tap_02_v", 1.001, 0));

        double after = Reference.sound(RigFile.read(file, MADE)).value().column("cell_02_v").orElseThrow().uncertainty(3.65);

        assertThat(after).isLessThan(0.4 * before);
    }

    @Test
    void it_holds_up_to_the_day_before_it_expires_and_not_before_it_was_made() throws IOException {
        Path file = rigFile(Reference.RIG);
        put(file, "cell_01_v", calibration(file, "cell_01_v", 1.001, 0));

        assertThat(refused(file, MADE.plusDays(99))).isEmpty();
        assertThat(refused(file, MADE.plusDays(100))).singleElement().asString()
                .startsWith("hut.cell_01_v.calibration.toml:7: expires = 2027-03-06: allowed a day after today, which is 2027-03-06, because")
                .endsWith("[R174]");
        assertThat(refused(file, MADE.minusDays(1))).singleElement().asString().contains("made = 2026-11-26").endsWith("[R174]");
    }

    @Test
    void one_of_another_rig_another_channel_or_another_chip_is_refused() throws IOException {
        Path file = rigFile(Reference.RIG);
        String text = calibration(file, "cell_01_v", 1.001, 0);
        put(file, "cell_01_v", text);
        String rig = Files.readString(file);

        Files.writeString(file, rig.replace("name = \"hut bench, one cell\"", "name = \"shed bench\""));
        assertThat(refused(file, MADE)).singleElement().asString().contains(": rig = hut bench, one cell: allowed \"shed bench\"").endsWith("[R172]");
        Files.writeString(file, rig.replace("address = 0x48", "address = 0x49"));
        assertThat(refused(file, MADE)).singleElement().asString().contains(": chip = ADS1115, I2C bus 1, 0x48, pin 0").endsWith("[R172]");
        Files.writeString(file, rig.replace("\"cell_01_v\"", "\"cell_one_v\""));
        assertThat(refused(file, MADE)).singleElement().asString().contains(": channel = cell_01_v: allowed bus_v, cell_one_v, current_a, pack_v");
    }

    @Test
    void an_edited_one_is_refused_whatever_was_edited() throws IOException {
        Path file = rigFile(Reference.RIG);
        String text = calibration(file, "cell_01_v", 1.001, 0);

        for (String[] edit : List.of(new String[] {"gain = 1.00", "gain = 1.01"}, new String[] {"zero_limits = 3", "zero_limits = 1"},
                new String[] {"expires = \"2027", "expires = \"2028"}, new String[] {"sha256 = \"", "sha256 = \"0"},
                new String[] {"\n", "\r\n"})) {
            assertThat(text).contains(edit[0]);
            put(file, "cell_01_v", text.replace(edit[0], edit[1]));
            assertThat(refused(file, MADE)).as(edit[0]).singleElement().asString().endsWith("[R171]");
        }
    }

    @Test
    void a_channel_has_one_calibration() throws IOException {
        Path file = Files.writeString(folder.resolve("hut.toml"), Reference.text(Reference.PACK));
        String text = calibration(file, "tap_01_v", 1.001, 0);
        put(file, "tap_01_v", text);
        assertThat(refused(file, MADE)).singleElement().asString().contains("the rig file itself has one of tap_01_v").endsWith("[R173]");

        Path one = rigFile(Reference.RIG);
        Files.delete(CalibrationFile.of(file, "tap_01_v"));
        put(one, "cell_01_v", calibration(one, "cell_01_v", 1.001, 0));
        put(one, "another", calibration(one, "cell_01_v", 1.001, 0));
        assertThat(refused(one, MADE)).singleElement().asString().contains("another file beside this one").endsWith("[R173]");
    }

    @Test
    void the_copy_with_a_run_never_expires() throws IOException {
        Path file = rigFile(Reference.RIG);
        String text = calibration(file, "cell_01_v", 1.001, 0);

        Rig rig = Reference.sound(RigFile.read("rig", Files.readString(file), List.of(text))).value();

        assertThat(rig.calibration("cell_01_v").orElseThrow().text()).isEqualTo(text);
        assertThat(rig.calibration("cell_01_v").orElseThrow().gain()).isEqualTo(1.001, within(1e-9));
    }

    @Test
    void a_run_with_another_calibration_is_on_another_rig() throws IOException {
        Path file = rigFile(Reference.RIG);
        RunAbout bare = new RunAbout(Files.readString(file), "", Map.of(), "boot", 0, false, "now", 0);
        RunAbout calibrated = bare.calibrated(List.of(calibration(file, "cell_01_v", 1.001, 0)));

        assertThat(calibrated.rigHash()).isNotEqualTo(bare.rigHash())
                .isNotEqualTo(bare.calibrated(List.of(calibration(file, "cell_01_v", 1.002, 0))).rigHash())
                .isEqualTo(bare.calibrated(List.of(calibration(file, "cell_01_v", 1.001, 0))).rigHash());
    }

    @Test
    void what_is_no_calibration_at_all_is_refused_by_its_own_name_and_line() throws IOException {
        Path file = rigFile(Reference.RIG);
        put(file, "cell_01_v", "gain = 1\n");

        assertThat(refused(file, MADE)).isNotEmpty().allSatisfy(line -> assertThat(line).startsWith("hut.cell_01_v.calibration.toml"));
    }

    @Test
    void limits_say_what_a_calibration_gave_and_what_another_would_give_back() throws IOException {
        Path file = rigFile(Reference.RIG);
        List<String> before = Limits.of(Reference.sound(RigFile.read(file, MADE)).value()).lines();
        put(file, "current_a", calibration(file, "current_a", 1.001, 0));
        List<String> after = Limits.of(Reference.sound(RigFile.read(file, MADE)).value()).lines();

        assertThat(before).anyMatch(line -> line.matches("current_a: U = 0\\.15\\d* A at 52\\.5 A; calibrating it .* gives back 0\\.1\\d* A, .*"));
        assertThat(after).noneMatch(line -> line.contains("calibrating it with"))
                .anyMatch(line -> line.startsWith("current_a is calibrated, from 2026-11-26 to 2027-03-06: U = "));
    }
}
