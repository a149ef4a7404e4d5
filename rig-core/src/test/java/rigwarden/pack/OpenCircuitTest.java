package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class OpenCircuitTest {
    /** published (the data set cited in open-circuit-lfp.csv, all 1001 rows, column for 25 °C). */
    @Test
    void the_thinned_table_misses_no_row_of_the_full_one_by_more_than_half_a_millivolt() throws IOException {
        Path table = shared().resolve("data/lfp-26650-parameters/ocv_table.csv");
        assumeTrue(Files.exists(table), "SKIPPED: needs ../shared/data, the full open-circuit table, which is not here; name the folder"
                + " that holds data/ with -Drigwarden.shared=FOLDER");
        List<String> rows = Files.readAllLines(table);
        double worst = 0;
        for (String row : rows.subList(1, rows.size())) {
            double charge = Double.parseDouble(row.substring(0, row.indexOf(',')));
            double volts = Double.parseDouble(row.substring(row.lastIndexOf(',') + 1));
            worst = Math.max(worst, Math.abs(OpenCircuit.lfp().volts(charge) - volts));
        }
        assertThat(rows).hasSize(1002);
        assertThat(worst).isLessThan(0.49e-3);
    }

    /** published (same data set: rows 0.500 and 1.000; entropy rows 0.0, 0.1, 1.0). */
    @Test
    void known_rows_come_out() {
        OpenCircuit lfp = OpenCircuit.lfp();
        assertThat(lfp.volts(0.5)).isCloseTo(3.29762119, within(0.49e-3));
        assertThat(lfp.volts(1.0)).isCloseTo(3.55095067, within(1e-12));
        assertThat(lfp.voltsPerKelvin(0.05)).isCloseTo((-3.64340207e-04 - 4.65029975e-04) / 2, within(1e-12));
        assertThat(lfp.voltsPerKelvin(1.2)).isCloseTo(2.24149592e-04, within(1e-12));
    }

    @Test
    void the_curve_rises_everywhere_and_runs_straight_beyond_its_ends() {
        OpenCircuit lfp = OpenCircuit.lfp();
        assertThat(lfp.volts(-0.04)).isCloseTo(0, within(1e-12));
        assertThat(lfp.volts(-0.0073)).isCloseTo(2, within(1e-12));
        assertThat(lfp.volts(1.0066)).isCloseTo(3.65, within(1e-12));
        assertThat(lfp.volts(1.0795)).isCloseTo(4.75, within(0.01));
        for (int i = -60; i < 1100; i++) {
            assertThat(lfp.volts((i + 1) / 1000.0)).isGreaterThan(lfp.volts(i / 1000.0));
        }
    }

    private static Path shared() {
        String named = System.getProperty("rigwarden.shared");
        if (named != null) {
            return Path.of(named);
        }
        Path folder = Path.of("").toAbsolutePath();
        while (folder.getParent() != null && !Files.isDirectory(folder.resolve("shared"))) {
            folder = folder.getParent();
        }
        return folder.resolve("shared");
    }
}
