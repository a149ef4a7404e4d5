package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.Test;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.run.Account;

/** The project's integer account against a laboratory's own counter, on open measured data. */
class OpenDataTest {
    private static final Path DATA = Path.of("..", "..", "shared", "data", "lfp-26650-25C",
            "ocv_25C_script1_discharge_C30.csv.gz");

    /** The step's own first to its own last row; across the boundary into the rest it would be 0.027 % more. */
    @Test
    @Mark(of = "charge", standing = Standing.PUBLISHED, source = "Kawakita de Souza 2021, doi:10.17632/p8kf893yv3.1, counter disAh of C/30: 2.57756 Ah")
    @Mark(of = "energy", standing = Standing.WORKED, source = "the same data's volts over its own counter: 8.362391 Wh")
    void the_discharge_at_c_over_30_gives_the_counters_charge_within_a_hundredth_of_a_percent() throws IOException {
        Assumptions.assumeTrue(Files.isReadable(DATA), "SKIPPED: needs ../shared/data, which is not here");
        Account account = Account.EMPTY;
        double counter = 0;
        try (BufferedReader lines = new BufferedReader(new InputStreamReader(
                new GZIPInputStream(Files.newInputStream(DATA)), StandardCharsets.US_ASCII))) {
            lines.readLine();
            double lastSeconds = Double.NaN;
            double lastAmps = 0;
            double lastVolts = 0;
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String[] cells = line.split(",", -1);
                double seconds = Double.parseDouble(cells[0]);
                double amps = Double.parseDouble(cells[2]);
                double volts = Double.parseDouble(cells[3]);
                if (!cells[1].equals("2")) {
                    continue;
                }
                if (!Double.isNaN(lastSeconds)) {
                    account = account.plus(Math.round((seconds - lastSeconds) * 1e9), (amps + lastAmps) / 2,
                            (amps * volts + lastAmps * lastVolts) / 2, (volts + lastVolts) / 2);
                }
                counter = Double.parseDouble(cells[5]);
                lastSeconds = seconds;
                lastAmps = amps;
                lastVolts = volts;
            }
        }

        assertThat(counter).as("the counter itself").isCloseTo(2.57756, within(0.000005));
        assertThat(-account.ampHours()).isCloseTo(2.57756, within(2.57756e-4));
        assertThat(-account.wattHours()).as("energy, counter and volts: 8.362391 Wh").isCloseTo(8.362391, within(0.001));
    }
}
