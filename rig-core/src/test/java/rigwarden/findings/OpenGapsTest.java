package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.elsewhere.BroughtIn;
import rigwarden.elsewhere.OpenData;
import rigwarden.elsewhere.Rewritten;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/** Open measured data with rows knocked out of it: the uncertainty covers what was lost with them. */
class OpenGapsTest {
    @TempDir
    private Path folder;

    /** Takes out all lines in so many spans of 1 to 60 s, laid at random. */
    private Path knockedOut(Path csv, long seed, int gaps, double fromSeconds, double toSeconds) throws IOException {
        Random random = new Random(seed);
        double[] begins = random.doubles(gaps, fromSeconds, toSeconds).toArray();
        double[] lasts = random.doubles(gaps, 1, 60).toArray();
        return Rewritten.file(csv, folder.resolve(seed + ".csv"), line -> {
            double seconds = Double.parseDouble(line.substring(0, line.indexOf(',')));
            for (int i = 0; i < gaps; i++) {
                if (seconds >= begins[i] && seconds <= begins[i] + lasts[i]) {
                    return Optional.empty();
                }
            }
            return Optional.of(line);
        });
    }

    /** The ten rows of one pulse differ from the counter by up to 210 µAh even where none is missing; in sum they agree. */
    @ParameterizedTest
    @CsvSource({
        "open-lfp-26650-discharge, ocv_25C_script1_discharge_C30.csv.gz, 1, 40, 7300, 119000, 30e-6",
        "open-lfp-26650-held-charge, cccv_charge_25C_1C.csv.gz, 3, 12, 60, 6100, 30e-6",
        "open-lfp-26650-pulses, periodic_pulse_20A_25C.csv.gz, 2, 40, 3700, 18000, 250e-6",
    })
    @Mark(of = "charge", standing = Standing.PUBLISHED, source = "Kawakita de Souza 2021, doi:10.17632/p8kf893yv3.1, the files' own counters beside rows of which gaps of 1 to 60 s are knocked out")
    void what_flowed_while_rows_were_missing_is_within_what_the_gaps_add(String map, String file, int seeds, int gaps, double from, double to,
            double single) throws IOException {
        Path whole = OpenData.file("lfp-26650-25C", file);
        for (long seed = 1; seed <= seeds; seed++) {
            Path less = knockedOut(whole, seed, gaps, from, to);
            BroughtIn counted = BroughtIn.by(map, less);
            BroughtIn summed = BroughtIn.uncounted(map, less);

            int wider = 0;
            for (int i = 0; i < summed.gathered().steps().size(); i++) {
                StepFinding rows = summed.gathered().steps().get(i).sums();
                double counter = counted.gathered().steps().get(i).continuity().rawCoulombs() / 3600;
                double missing = rows.chargeBudget().terms().stream().filter(t -> t.name().equals("rows missing")).mapToDouble(t -> Math.sqrt(3) * t.standard())
                        .sum();
                wider += missing > 0 ? 1 : 0;
                assertThat(Math.abs(rows.chargeAmpHours().value() - counter)).as("seed %d, step %d, %s", seed, rows.index(), rows.kind())
                        .isLessThanOrEqualTo(missing + Math.max(single, 1e-4 * Math.abs(counter)));
            }
            assertThat(wider).as("steps that are wider for it, seed %d", seed).isPositive();
            assertThat(summed.remarks()).as("gaps that are named, seed %d", seed).hasSizeGreaterThan(gaps / 4);
        }
    }
}
