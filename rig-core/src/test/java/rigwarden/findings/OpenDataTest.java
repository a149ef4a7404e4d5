package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.elsewhere.BroughtIn;
import rigwarden.elsewhere.OpenData;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.program.Ended;

/**
 * Charge and energy of open measured data, brought in as any log from elsewhere, against the laboratory's own counter: between a
 * step's own first and last row. Across the boundary into the rest the trapezoid would be 0.027 % more.
 */
class OpenDataTest {
    private static final String SET = "lfp-26650-25C";
    private static final String COUNTER = "Kawakita de Souza 2021, doi:10.17632/p8kf893yv3.1, the files' own counters chgAh and disAh";

    static BroughtIn discharge() {
        return BroughtIn.by("open-lfp-26650-discharge", OpenData.file(SET, "ocv_25C_script1_discharge_C30.csv.gz"));
    }

    static BroughtIn charge() {
        return BroughtIn.by("open-lfp-26650-charge", OpenData.file(SET, "ocv_25C_script3_charge_C30.csv.gz"));
    }

    static BroughtIn pulses() {
        return BroughtIn.by("open-lfp-26650-pulses", OpenData.file(SET, "periodic_pulse_20A_25C.csv.gz"));
    }

    private static List<StepFinding> steps(BroughtIn in, String kind) {
        return in.gathered().steps().stream().map(StepNotes::sums).filter(sums -> sums.kind().equals(kind)).toList();
    }

    private static void agrees(StepFinding step) {
        double counted = step.chargeAmpHours().value();
        assertThat(step.trapezoidAmpHours()).as(step.index() + " " + step.kind()).isCloseTo(counted, within(Math.max(30e-6, 1e-4 * Math.abs(counted))));
    }

    @Test
    @Mark(of = "charge", standing = Standing.PUBLISHED, source = COUNTER + ", C/30 discharge: 2.57756 Ah")
    @Mark(of = "energy", standing = Standing.WORKED, source = "the same data's volts over its own counter: 8.362391 Wh")
    void the_discharge_at_c_over_30_gives_the_counters_charge_within_a_hundredth_of_a_percent() {
        BroughtIn in = discharge();

        StepFinding step = steps(in, "discharge").getFirst();
        agrees(step);
        // the counter had 23 µAh before the step's own first row
        assertThat(step.chargeAmpHours().value()).isCloseTo(-(2.57756467 - 2.33187219e-05), within(1e-9));
        assertThat(step.energyWattHours().value()).as("8.362391 Wh, of which the first second is not between its own rows").isCloseTo(-8.362391, within(2e-4));
        assertThat(step.by()).isEqualTo(Ended.CUT_OFF);
        assertThat(in.survey().rows()).isEqualTo(110_906);
    }

    @Test
    @Mark(of = "charge", standing = Standing.PUBLISHED, source = COUNTER + ", C/30 charge: 2.58263 Ah")
    @Mark(of = "efficiency", standing = Standing.PUBLISHED, source = "Kawakita de Souza, parameters at 25 °C: coulombic efficiency 0.9979037445")
    void the_charge_at_c_over_30_too_and_what_came_out_of_what_went_in_is_the_authors_efficiency_within_its_uncertainty() {
        StepFinding in = steps(charge(), "charge").getFirst();
        StepFinding out = steps(discharge(), "discharge").getFirst();

        agrees(in);
        assertThat(in.chargeAmpHours().value()).isCloseTo(2.58263013 - 2.35596832e-05, within(1e-9));
        double share = -out.chargeAmpHours().value() / in.chargeAmpHours().value();
        double expanded = Budgets.net(List.of(in, out)).expanded() / in.chargeAmpHours().value();
        // the authors' own counts the quick charges at both ends too, which are not in these files: 1.4 parts in 10,000
        assertThat(share).isCloseTo(0.998039, within(2e-6)).isCloseTo(0.9979037445, within(expanded)).isCloseTo(0.9979037445, within(2e-4));
        assertThat(expanded).isLessThan(0.02);
    }

    @Test
    @Mark(of = "charge", standing = Standing.PUBLISHED, source = COUNTER + ", 1 C charge held at 3.6 V")
    void a_charge_that_is_held_at_its_ceiling_agrees_in_each_of_its_steps_and_ends_by_its_taper() {
        BroughtIn in = BroughtIn.by("open-lfp-26650-held-charge", OpenData.file(SET, "cccv_charge_25C_1C.csv.gz"));

        List<StepFinding> charges = steps(in, "charge");
        assertThat(charges).hasSize(3).allSatisfy(OpenDataTest::agrees);
        assertThat(charges).extracting(StepFinding::by).containsExactly(Ended.CEILING, Ended.TAPER, Ended.TAPER);
        assertThat(charges.getFirst().meanBodyCelsius()).isBetween(25.8, 26.4);
    }

    @Test
    @Mark(of = "charge", standing = Standing.PUBLISHED, source = COUNTER + ", 540 pulses of 20 A, in and out")
    void five_hundred_and_forty_pulses_agree_in_sum_each_way() {
        List<StepFinding> pulses = steps(pulses(), "pulse");

        assertThat(pulses).hasSize(540);
        for (double way : new double[] {1, -1}) {
            List<StepFinding> one = pulses.stream().filter(p -> p.chargeAmpHours().value() * way > 0).toList();
            double counted = one.stream().mapToDouble(p -> p.chargeAmpHours().value()).sum();
            double summed = one.stream().mapToDouble(StepFinding::trapezoidAmpHours).sum();
            assertThat(one).hasSize(270);
            assertThat(summed).isCloseTo(counted, within(1e-4 * Math.abs(counted)));
            assertThat(Math.abs(counted)).isBetween(13.4, 13.6);
        }
    }

    @Test
    @Mark(of = "charge", standing = Standing.PUBLISHED, source = COUNTER + ", C/30 discharge, not mapped")
    void without_the_counter_the_sum_of_the_rows_is_the_charge_and_it_says_so() {
        BroughtIn in = BroughtIn.uncounted("open-lfp-26650-discharge", OpenData.file(SET, "ocv_25C_script1_discharge_C30.csv.gz"));

        StepNotes step = in.gathered().steps().get(1);
        assertThat(step.sums().chargeAmpHours().value()).isCloseTo(-(2.57756467 - 2.33187219e-05), within(2.6e-4));
        assertThat(step.sums().chargeBudget().terms()).extracting(Budget.Term::name).contains("current between the readings", "rows missing");
        assertThat(Charge.charge(step).notes()).first().asString().contains("nothing counted the charge");
    }
}
