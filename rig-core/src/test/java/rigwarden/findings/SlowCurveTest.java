package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import rigwarden.elsewhere.BroughtIn;
import rigwarden.elsewhere.OpenData;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** dQ/dV and dV/dQ of a whole step, as the trace gathers them. */
class SlowCurveTest {
    private static final String SET = "lfp-26650-25C";

    private static List<Finding> found(BroughtIn in) {
        return Findings.of(in.log(), in.gathered(), Rating.usual(2.5)).stream().filter(f -> f.kind() == Kind.INCREMENTAL).toList();
    }

    /** The shipped map, but for what it says of the channel's steps: a third finer than they are. */
    private static BroughtIn asIfFiner(String map, Path csv) {
        return BroughtIn.edited(map, csv, text -> text.replaceFirst("step_v = [0-9.]+", "step_v = 0.0001"));
    }

    @Test
    @Mark(of = "incremental", standing = Standing.WORKED, source = "analytic: V = 3.3 − 0.2 (q − ½)³ − 0.01 tanh((q − 0.6)/0.02) is steepest at q = 0.6 with 0.502 V per unit of charge")
    void the_steepest_place_in_the_middle_of_an_analytic_curve_is_where_and_as_steep_as_its_derivative() {
        VoltsPerCharge bins = new VoltsPerCharge(0.01, 150);
        for (double q = 0; q <= 1; q += 1e-4) {
            bins.take(3.3 - 0.2 * Math.pow(q - 0.5, 3) - 0.01 * Math.tanh((q - 0.6) / 0.02), -q);
        }

        int steepest = bins.steepest().getFirst();

        assertThat(bins.steepest()).hasSize(1);
        assertThat(bins.ampHours(steepest)).isCloseTo(0.6, within(1e-9));
        assertThat(bins.perAmpHour()[steepest]).as("the mean over two bins of a peak as wide as four").isBetween(0.43, 0.51);
    }

    @Test
    void the_open_log_is_refused_since_its_voltage_moves_in_steps_of_0_16_millivolts() {
        List<Finding> found = found(BroughtIn.by("open-lfp-26650-discharge", OpenData.file(SET, "ocv_25C_script1_discharge_C30.csv.gz")));

        assertThat(found).singleElement().satisfies(f -> assertThat(((Answer.Refused) f.answer()).because()).contains("0.162 mV"));
    }

    @Test
    @Mark(of = "incremental", standing = Standing.WORKED, source = "Kawakita de Souza 2021, doi:10.17632/p8kf893yv3.1, C/30 discharge: the file's own counter between its crossings of two voltages")
    void as_if_it_were_finer_the_open_discharge_has_its_plateaus_where_the_files_own_counter_has_them() throws IOException {
        Path csv = OpenData.file(SET, "ocv_25C_script1_discharge_C30.csv.gz");
        BroughtIn in = asIfFiner("open-lfp-26650-discharge", csv);

        Finding finding = found(in).getFirst();
        CellCurve curve = in.gathered().steps().stream().filter(s -> s.sums().kind().equals("discharge")).findFirst().orElseThrow().curves().getFirst();

        assertThat(((Answer.Value) finding.answer()).value()).isBetween(3.27, 3.28);
        assertThat(finding.notes().getFirst()).contains("at 3.277 V").contains("then at 3.319 V");
        for (double[] between : new double[][] {{3.32, 3.30}, {3.30, 3.26}, {3.26, 3.18}, {3.18, 2.50}}) {
            double counted = counter(csv, between[1]) - counter(csv, between[0]);
            assertThat(charge(curve.perVolt(), between[1], between[0])).as("from %.2f to %.2f V", between[0], between[1])
                    .isCloseTo(-counted, within(0.01 * 2.5));
        }
    }

    @Test
    @Mark(of = "incremental", standing = Standing.WORKED, source = "Kawakita de Souza 2021, doi:10.17632/p8kf893yv3.1, C/30 both ways: 2.578 Ah out, 2.583 Ah in")
    void as_if_they_were_finer_both_ways_go_over_from_plateau_to_plateau_at_the_same_two_charges() {
        VoltsPerCharge out = slope(asIfFiner("open-lfp-26650-discharge", OpenData.file(SET, "ocv_25C_script1_discharge_C30.csv.gz")), "discharge");
        VoltsPerCharge in = slope(asIfFiner("open-lfp-26650-charge", OpenData.file(SET, "ocv_25C_script3_charge_C30.csv.gz")), "charge");

        double[] emptying = out.steepest().stream().mapToDouble(bin -> 2.578 - out.ampHours(bin)).sorted().toArray();
        double[] filling = in.steepest().stream().mapToDouble(in::ampHours).sorted().toArray();
        assertThat(emptying).containsExactly(filling, within(0.1));
        assertThat(filling[0]).isBetween(0.4, 0.5);
        assertThat(filling[1]).isBetween(1.7, 1.9);
    }

    private static VoltsPerCharge slope(BroughtIn in, String kind) {
        return in.gathered().steps().stream().filter(s -> s.sums().kind().equals(kind)).findFirst().orElseThrow().curves().getFirst().perCharge();
    }

    private static double charge(ChargePerVolt bins, double low, double high) {
        double sum = 0;
        double[] perVolt = bins.perVolt();
        for (int bin = 0; bin < perVolt.length; bin++) {
            sum += bins.volts(bin) > low && bins.volts(bin) < high ? perVolt[bin] * CellCurve.BIN_VOLTS : 0;
        }
        return sum;
    }

    /** The file's own count at its first row of the discharge that is at or below a voltage, Ah. */
    private static double counter(Path csv, double volts) throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(new GZIPInputStream(Files.newInputStream(csv)), StandardCharsets.UTF_8))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                List<String> fields = List.of(line.split(",", -1));
                if (fields.get(1).equals("2") && Double.parseDouble(fields.get(3)) <= volts) {
                    return Double.parseDouble(fields.get(5));
                }
            }
        }
        throw new AssertionError("never at " + volts);
    }
}
