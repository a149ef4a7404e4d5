package rigwarden.elsewhere;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.findings.StepFinding;
import rigwarden.program.Ended;

/** What becomes of a log's lines, on logs small enough to be worked by hand. */
class BroughtInTest {
    private static final String MAP = """
            name = "by hand"
            [cells]
            series = 2
            parallel = 1
            rated_ah = 10
            ceiling_v = 3.65
            cut_off_v = 2.5
            [file]
            separator = "semicolon"
            decimal_comma = true
            lines_before = 1
            [time]
            column = "t"
            unit_s = 60
            [current]
            column = "I"
            unit_a = 1
            into_cells = "positive"
            most_a = 50
            gain_percent = 0.1
            offset_a = 0
            step_a = 0.001
            [[voltage]]
            column = "U1"
            cell = 1
            unit_v = 1
            least_v = 0
            most_v = 5
            gain_percent = 0.1
            offset_v = 0
            step_v = 0.001
            [[voltage]]
            column = "U2"
            cell = 2
            unit_v = 0.001
            least_v = 0
            most_v = 5
            gain_percent = 0.1
            offset_v = 0
            step_v = 0.001
            [[temperature]]
            column = "F"
            place = "body"
            cell = 2
            unit_k = 0.5555555555555556
            zero_c = -17.77777777777778
            limits_k = 1
            [counted]
            unit_ah = 1
            in_column = "in"
            out_column = "out"
            step_ah = 0.001
            [steps]
            column = "s"
            [[steps.stretch]]
            values = ["d"]
            kind = "discharge"
            ended_by = "cut_off"
            [[steps.stretch]]
            values = ["r"]
            kind = "rest"
            ended_by = "time"
            """;

    @TempDir
    private Path folder;

    private BroughtIn log(String... lines) throws IOException {
        Path csv = Files.writeString(folder.resolve("log.csv"), "made by hand\nt;s;I;U1;U2;F;in;out\n" + String.join("\n", lines) + "\n");
        return BroughtIn.of(csv, BroughtIn.sound(MAP));
    }

    private static StepFinding step(BroughtIn in, int place) {
        return in.gathered().steps().get(place).sums();
    }

    @Test
    void scales_signs_commas_and_degrees_are_as_the_map_says() throws IOException {
        BroughtIn in = log("0;d;-6,0;3,2;3300;77;0;0", "1;d;-6,0;3,1;3200;77;0;0,1", "2;d;-6,0;2,4;3100;77;0;0,2");

        assertThat(in.remarks()).isEmpty();
        assertThat(step(in, 0).chargeAmpHours().value()).isCloseTo(-0.2, within(1e-9));
        assertThat(step(in, 0).trapezoidAmpHours()).isCloseTo(-0.2, within(1e-9));
        // 6 A at 6.5, 6.3 and 5.5 V, a minute each
        assertThat(step(in, 0).energyWattHours().value()).isCloseTo(-6 * (6.4 + 5.9) / 60, within(1e-6));
        assertThat(step(in, 0).meanBodyCelsius()).isCloseTo(25, within(1e-5));
        assertThat(step(in, 0).lowest().value()).isCloseTo(2.4, within(1e-9));
        assertThat(step(in, 0).lowest().where()).isEqualTo("cell_01_v");
        assertThat(step(in, 0).by()).isEqualTo(Ended.CUT_OFF);
    }

    @Test
    void an_end_that_the_last_row_does_not_show_is_not_believed() throws IOException {
        BroughtIn in = log("0;d;-6;3,2;3300;77;0;0", "1;d;-6;3,1;3200;77;0;0,1");

        assertThat(step(in, 0).by()).isEqualTo(Ended.STOPPED);
        assertThat(in.remarks()).extracting(Remark::words).containsExactly(
                "line 4: the map says that step 1, \"d\", ended by cut off; it shows 3.100 to 3.200 V and -6.0000 A in its last row");
    }

    @Test
    void a_time_and_a_count_that_begin_anew_with_a_step_are_counted_on() throws IOException {
        BroughtIn in = log("0;d;-6;3,2;3300;77;0;0", "1;d;-6;2,5;3200;77;0;0,1", "0;r;0;3,0;3000;77;0;0", "1;r;0;3,0;3000;77;0;0");

        assertThat(in.remarks()).extracting(Remark::fault).containsExactlyInAnyOrder(Fault.TIME_BEGAN_ANEW, Fault.COUNT_BEGAN_ANEW);
        assertThat(step(in, 0).chargeAmpHours().value()).isCloseTo(-0.1, within(1e-9));
        assertThat(step(in, 1).chargeAmpHours().value()).isCloseTo(0, within(1e-9));
        assertThat(in.survey().lastNanos()).isEqualTo(180_000_000_000L);
    }

    @Test
    void a_missing_cell_is_left_out_of_what_it_would_falsify_and_of_nothing_else() throws IOException {
        BroughtIn in = log("0;d;-6;3,2;3300;77;0;0", "1;d;-6;;3300;;0;0,1", "2;d;-6;2,4;3300;77;0;0,2");

        assertThat(in.remarks()).extracting(Remark::words).containsExactly("line 4: U1 is empty", "line 4: F is empty");
        assertThat(step(in, 0).chargeAmpHours().value()).isCloseTo(-0.2, within(1e-9));
        assertThat(step(in, 0).energyWattHours().value()).isCloseTo(-6 * 6.1 * 2 / 60, within(1e-6));
        assertThat(step(in, 0).meanBodyCelsius()).isCloseTo(25, within(1e-5));
    }

    @Test
    void a_step_that_the_map_does_not_name_is_in_no_finding() throws IOException {
        BroughtIn in = log("0;d;-6;3,2;3300;77;0;0", "1;d;-6;2,5;3300;77;0;0,1", "2;x;-40;2,5;3300;77;0;0,2", "3;x;-40;2,5;3300;77;0;0,3");

        assertThat(in.gathered().steps()).hasSize(1);
        assertThat(in.remarks()).extracting(Remark::words).containsExactly("line 5: a step \"x\" begins, which the map does not name");
    }

    @Test
    void one_line_only_is_a_step_whose_charge_is_not_told() throws IOException {
        BroughtIn in = log("0;d;-6;3,2;3300;77;0;0");

        assertThat(in.gathered().steps().getFirst().continuity().firstScan()).isEqualTo(in.gathered().steps().getFirst().continuity().lastScan());
    }
}
