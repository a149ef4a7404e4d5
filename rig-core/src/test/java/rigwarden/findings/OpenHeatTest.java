package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.elsewhere.BroughtIn;
import rigwarden.elsewhere.OpenData;
import rigwarden.elsewhere.Rewritten;
import rigwarden.findings.trace.Warmth;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.rig.Role;

/**
 * Resistance and heat of open measured data against what its authors identified for that very cell. What rows a second apart
 * and a probe on the skin cannot give is not asked: the inside's own resistance to the skin, and each heat capacity.
 */
class OpenHeatTest {
    private static final String AUTHORS = "Kawakita de Souza, electro-thermal parameters of the same cell at 25 °C: ";
    private static final double R0_MILLIOHMS = 9.94712;
    private static final double R1_MILLIOHMS = 8.45251;
    private static final double SKIN_TO_AIR = 2.0732;

    @TempDir
    private Path folder;

    private static Answer.Value value(List<Finding> found, String about) {
        return found.stream().filter(f -> f.about().endsWith(about) && f.answer() instanceof Answer.Value).map(f -> (Answer.Value) f.answer())
                .findFirst().orElseThrow();
    }

    /** Slow time constant of two heat capacities, 43.8533 J/K inside and 4.5 J/K at the skin, with 7.3731 K/W between and 2.0732 K/W to the air. */
    private static double slowSeconds() {
        double inside = 1 / (7.3731 * 43.8533);
        double skin = 1 / (7.3731 * 4.5) + 1 / (SKIN_TO_AIR * 4.5);
        double product = 1 / (7.3731 * 43.8533 * SKIN_TO_AIR * 4.5);
        double sum = inside + skin;
        return 2 / (sum - Math.sqrt(sum * sum - 4 * product));
    }

    @Test
    @Mark(of = "resistance", standing = Standing.PUBLISHED, source = AUTHORS + "R0 9.947 mΩ, R1 8.453 mΩ")
    @Mark(of = "heat", standing = Standing.PUBLISHED, source = AUTHORS + "skin to air 2.0732 K/W, slow time constant 416.3 s worked from the four thermal figures")
    void resistance_at_the_instant_the_cooling_and_the_rise_for_each_watt_are_the_authors_within_their_uncertainties() {
        BroughtIn in = OpenDataTest.pulses();

        List<Finding> found = Findings.of(in.log(), in.gathered(), Rating.usual(2.5));

        Answer.Value instant = value(found, "cell 1, at the instant");
        assertThat(instant.value()).isCloseTo(R0_MILLIOHMS, within(instant.budget().expanded()));
        assertThat(instant.budget().expanded()).isLessThan(0.8);
        assertThat(found.stream().filter(f -> f.kind() == Kind.RESISTANCE && f.about().equals("cell 1") && f.answer() instanceof Answer.Value)
                .map(f -> ((Answer.Value) f.answer()).value())).hasSize(2).allSatisfy(ohms -> assertThat(ohms).isBetween(R0_MILLIOHMS, R0_MILLIOHMS + R1_MILLIOHMS));
        assertThat(slowSeconds()).isCloseTo(416.3, within(0.1));
        Answer.Value clock = value(found, "time constant");
        assertThat(clock.value()).isCloseTo(slowSeconds(), within(clock.budget().expanded()));
        assertThat(clock.budget().expanded()).isLessThan(0.08 * clock.value());
        Answer.Value perWatt = value(found, "rise for each watt");
        assertThat(perWatt.value()).isCloseTo(SKIN_TO_AIR, within(perWatt.budget().expanded()));
        assertThat(perWatt.budget().expanded()).isLessThan(0.05 * perWatt.value());
    }

    /** So small a cell follows its current as fast as a joint of large ones. This warming lasts thirteen time constants, so that its first fifth is no trap: that one is in closed form in ForecastTest. */
    @Test
    @Mark(of = "heat", standing = Standing.PUBLISHED, source = "Kawakita de Souza 2021, doi:10.17632/p8kf893yv3.1, skin and air in 5400 s of 20 A pulses")
    void the_end_of_the_warming_is_inside_what_was_foretold_early_and_late_and_what_was_foretold_early_was_wider() throws IOException {
        Path oneStep = Rewritten.file(OpenData.file("lfp-26650-25C", "periodic_pulse_20A_25C.csv.gz"), folder.resolve("one-step.csv"),
                line -> Optional.of(line.replaceFirst("^([^,]*),6,", "$1,5,")));
        StepNotes train = BroughtIn.by("open-lfp-26650-pulses", oneStep).gathered().steps().stream()
                .filter(step -> step.sums().kind().equals("pulse")).findFirst().orElseThrow();
        Warmth over = overTheRoom(train);
        double end = over.celsius()[over.celsius().length - 1];

        double before = Double.POSITIVE_INFINITY;
        for (double share : new double[] {0.05, 0.1, 0.2, 0.3}) {
            Forecast forecast = Forecast.ofJoint(over.until(share * 1.5), 1.5, 400).orElseThrow();
            assertThat(end).as("from the first %.0f %%", 100 * share).isCloseTo(forecast.celsius(), within(forecast.expandedKelvin()));
            assertThat(forecast.expandedKelvin()).isLessThan(before);
            before = forecast.expandedKelvin();
        }
        assertThat(before).isLessThan(0.5);
    }

    /**
     * Large cells' half an hour to four, a tenth of it: their heat capacity is some 44 times that of this cell's 48 J/K, which alone
     * makes a body 3.5 times as slow, and the laboratory's moving air (2.07 K/W of so small a skin) is taken for three times quicker.
     */
    private static final Clocks SMALL = new Clocks(0.05, 0.4);

    @Test
    @Mark(of = "heat", standing = Standing.PUBLISHED, source = "Kawakita de Souza 2021, doi:10.17632/p8kf893yv3.1, skin and air in 5400 s of 20 A pulses; range of time constants scaled to the cell's size")
    void the_forecast_of_a_body_holds_on_a_measured_cell_whose_data_it_never_saw() throws IOException {
        Path oneStep = Rewritten.file(OpenData.file("lfp-26650-25C", "periodic_pulse_20A_25C.csv.gz"), folder.resolve("one-step.csv"),
                line -> Optional.of(line.replaceFirst("^([^,]*),6,", "$1,5,")));
        StepNotes train = BroughtIn.by("open-lfp-26650-pulses", oneStep).gathered().steps().stream()
                .filter(step -> step.sums().kind().equals("pulse")).findFirst().orElseThrow();
        Warmth over = overTheRoom(train);

        List<Double> widths = new ArrayList<>();
        for (double end : new double[] {0.2, 0.4, 1.49}) {
            double truth = Arrays.stream(over.until(end).celsius()).reduce((_, last) -> last).orElseThrow();
            for (double seen : new double[] {0.08, 0.15, 0.3, 0.6}) {
                if (seen < end) {
                    Forecast forecast = BodyForecast.of(over.until(seen), end, 400, Optional.empty(), SMALL).orElseThrow();
                    assertThat(truth).as("from %.2f h for %.2f h", seen, end).isCloseTo(forecast.celsius(), within(forecast.expandedKelvin()));
                    widths.add(forecast.expandedKelvin());
                }
            }
        }
        assertThat(widths).as("to 0.2 h from 0.08 and 0.15 h, to 0.4 h from there and 0.3 h, to the end from there and 0.6 h").hasSize(9);
        assertThat(widths.subList(5, 9)).as("to the end, ever narrower").isSortedAccordingTo(Comparator.reverseOrder());
        assertThat(widths.getLast()).as("a good half of 6.5 K: nobody says how full the cell is").isLessThan(4);
    }

    private static Warmth overTheRoom(StepNotes step) {
        Warmth body = step.warmth().stream().filter(w -> w.where().role() == Role.BODY).findFirst().orElseThrow();
        Warmth room = step.warmth().stream().filter(w -> w.where().role() == Role.ROOM).findFirst().orElseThrow();
        double[] rise = body.celsius().clone();
        for (int i = 0; i < rise.length; i++) {
            rise[i] -= room.celsius()[i];
        }
        return new Warmth(body.where(), body.atRestCelsius() - room.atRestCelsius(), body.hours(), rise, body.amps(), body.squareAmps());
    }
}
