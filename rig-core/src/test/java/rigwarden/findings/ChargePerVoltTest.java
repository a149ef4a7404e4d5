package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.elsewhere.OpenData;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** Charge per volt of a slow curve. */
class ChargePerVoltTest {
    @Test
    @Mark(of = "incremental", standing = Standing.WORKED, source = "analytic: Q = 100/(1 + exp(−(U − 3.3)/0.01)) has its peak of 2500 Ah/V at 3.3 V")
    void an_analytic_step_has_its_peak_where_and_as_high_as_its_derivative() {
        ChargePerVolt bins = new ChargePerVolt(3.0, 3.6, 1e-3);
        for (double volts = 3.0; volts <= 3.6; volts += 1e-4) {
            bins.take(volts, 100 / (1 + Math.exp(-(volts - 3.3) / 0.01)));
        }

        double[] perVolt = bins.perVolt();

        assertThat(bins.peakVolts()).isCloseTo(3.3, within(0.0006));
        assertThat(perVolt[300]).isCloseTo(2500, within(5.0));
        for (int bin = 200; bin < 400; bin += 10) {
            double e = Math.exp(-(bins.volts(bin) - 3.3) / 0.01);
            assertThat(perVolt[bin]).isCloseTo(100 * e / 0.01 / (1 + e) / (1 + e), within(10.0));
        }
    }

    @Test
    void a_voltage_that_stands_still_gives_all_its_charge_to_its_bin_and_none_is_lost() {
        ChargePerVolt bins = new ChargePerVolt(3.0, 3.6, 0.01);
        for (int i = 0; i <= 100; i++) {
            bins.take(3.305, i);
        }

        assertThat(bins.perVolt()[30] * 0.01).isCloseTo(100, within(1e-9));
        assertThat(bins.peakVolts()).isCloseTo(3.305, within(1e-9));
    }

    @Test
    void too_quick_or_too_coarse_a_measurement_is_refused_with_its_reason() {
        assertThat(ChargePerVolt.refusal(0.1, 125e-6)).contains("0.125 mV");
        assertThat(ChargePerVolt.refusal(0.2, 50e-6)).contains("0.20 C");
        assertThat(ChargePerVolt.refusal(0.05, 50e-6)).isEmpty();
    }

    @Test
    @Mark(of = "incremental", standing = Standing.WORKED, source = "open data, C/32 curve of 600 points (MIT, soorajsunil): all charge lies between its ends")
    void the_open_curve_of_a_small_cell_gathers_its_whole_charge_in_two_plateaus() throws IOException {
        List<String> lines = Files.readAllLines(OpenData.file("lfp-18650-ocv", "pseudo_ocv_soc.csv"));
        ChargePerVolt bins = new ChargePerVolt(1.9, 3.7, 2e-3);
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            bins.take(Double.parseDouble(cells[1]), Double.parseDouble(cells[0]));
        }

        double sum = 0;
        double plateaus = 0;
        double[] perVolt = bins.perVolt();
        for (int i = 0; i < perVolt.length; i++) {
            sum += perVolt[i] * 2e-3;
            plateaus += bins.volts(i) > 3.25 && bins.volts(i) < 3.36 ? perVolt[i] * 2e-3 : 0;
        }
        assertThat(Math.abs(sum)).isCloseTo(1, within(0.01));
        assertThat(Math.abs(plateaus)).as("a flat curve has most of its charge within 0.11 V").isGreaterThan(0.6);
        assertThat(bins.peakVolts()).isBetween(3.27, 3.36);
    }
}
