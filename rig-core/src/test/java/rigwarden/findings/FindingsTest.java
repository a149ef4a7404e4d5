package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.program.Ended;
import rigwarden.quantity.Uncertain;
import rigwarden.rig.Rig;
import rigwarden.rig.TestRigs;

/** The findings that are arithmetic on a few numbers, against numbers worked elsewhere. */
class FindingsTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.eightCells();

    private static Capacity capacity(double rateC, double ampHours, double expanded, double celsius, Capacity.Start start,
            boolean lowerBound, boolean interrupted) {
        Budget budget = new Budget(List.of(Budget.standard("tap at the cut-off", expanded / 2)));
        Budget energy = new Budget(List.of(Budget.standard("tap at the cut-off", 3.2 * expanded / 2)));
        return new Capacity(3, rateC, new Uncertain(ampHours, expanded), new Uncertain(3.2 * ampHours, 3.2 * expanded), budget, energy, celsius,
                0, 2.5, 0.005, start, 0, 0, lowerBound, interrupted);
    }

    private static Capacity full(double rateC, double ampHours, double expanded, double celsius) {
        return capacity(rateC, ampHours, expanded, celsius, Capacity.Start.FULL, false, false);
    }

    @ParameterizedTest
    @Mark(of = "resistance", standing = Standing.FROM_MEMORY, source = "IEC 61960-3:2017, 7.7.3: (U1 − U2)/(I2 − I1); the numbers are worked")
    @CsvSource({"3.2800,3.2400,20,100,0.000500", "3.3050,3.2590,46,230,0.000250"})
    void two_currents_give_the_resistance_of_the_standards_formula(double u1, double u2, double i1, double i2, double ohms) {
        assertThat(Resistance.twoCurrents(u1, u2, i1, i2)).isCloseTo(ohms, within(5e-10));
    }

    @Test
    @Mark(of = "resistance", standing = Standing.WORKED, source = "written run: 0.25 mΩ, 21 A for 10 s and 105 A for 1 s")
    void a_pulse_of_two_currents_is_found_in_a_run_and_carries_its_budget() {
        List<Finding> found = WrittenRun.findings(CELL, new WrittenRun(CELL, 0.1)
                .step(1, "rest", 60, Ended.TIME, _ -> 0, _ -> 22, _ -> 3.30)
                .step(2, "pulse", 11, Ended.TIME, t -> t < 10 ? -21 : -105, _ -> 22, t -> 3.30 - 0.25e-3 * (t < 10 ? 21 : 105))
                .step(3, "rest", 30, Ended.TIME, _ -> 0, _ -> 22, _ -> 3.30).rows());

        Finding pulse = found.stream().filter(f -> f.kind() == Kind.RESISTANCE).findFirst().orElseThrow();
        Answer.Value value = (Answer.Value) pulse.answer();
        assertThat(pulse.conditions().getFirst()).contains("−21.00 A and −105.00 A");
        assertThat(value.value()).isCloseTo(0.25, within(value.budget().expanded()));
        assertThat(value.budget().expanded()).isLessThan(0.01);
        assertThat(value.budget().terms()).extracting(Budget.Term::name).contains("noise and rounding of the taps", "shunt and amplifier gain");
    }

    @ParameterizedTest
    @Mark(of = "rate", standing = Standing.WORKED, source = "Peukert's form t = H (C/(I H))^k, check-values 8.6")
    @CsvSource({"10,1.2,8.7055", "10,1,10", "5,1.2,20", "20,1.2,3.7893"})
    void hours_at_a_current_follow_peukerts_form(double amps, double exponent, double hours) {
        assertThat(RateEffect.hours(100, 20, amps, exponent)).isCloseTo(hours, within(0.00005));
    }

    @Test
    @Mark(of = "rate", standing = Standing.WORKED, source = "(5 A, 20 h) and (10 A, 8.7055 h) give 1.2000, check-values 8.6")
    void two_tests_give_their_exponent_and_odd_ones_are_refused() {
        Capacity slow = full(0.05, 100, 0.2, 25);
        Capacity fast = full(0.10, 87.055, 0.2, 25);

        assertThat(((Answer.Value) RateEffect.exponent(slow, fast)).value()).isCloseTo(1.2, within(0.00005));
        assertThat(RateEffect.exponent(slow, full(0.10, 87, 0.2, 28.1))).isInstanceOf(Answer.Refused.class);
        assertThat(RateEffect.exponent(slow, capacity(0.10, 87, 0.2, 25, Capacity.Start.NOT_FULL, false, false)))
                .isInstanceOf(Answer.Refused.class);
        assertThatThrownBy(() -> RateEffect.ampHoursAt(0.2, slow, fast, 1.2)).hasMessageContaining("outside the tested rates");
    }

    @Test
    @Mark(of = "rate", standing = Standing.WORKED, source = "2 K at 0…0.8 %/K are 0…1.6 % of the faster: ln 2 = 0.693 makes 0.0115 ± 0.0115 of it")
    void what_the_warmth_of_the_faster_test_may_have_given_is_in_the_exponent_and_in_its_budget() {
        Answer.Value alike = (Answer.Value) RateEffect.exponent(full(0.05, 100, 0.2, 25), full(0.10, 87.055, 0.2, 25));
        Answer.Value warmer = (Answer.Value) RateEffect.exponent(full(0.05, 100, 0.2, 25), full(0.10, 87.055, 0.2, 27));

        assertThat(warmer.value() - alike.value()).isCloseTo(0.0115, within(0.0001));
        assertThat(warmer.budget().terms()).filteredOn(t -> t.name().equals("temperature between the two")).singleElement()
                .satisfies(t -> assertThat(t.halfWidth()).isCloseTo(0.0115, within(0.0001)));
        assertThat(alike.budget().terms()).filteredOn(t -> t.name().equals("temperature between the two")).allSatisfy(t -> assertThat(t.standard()).isZero());
    }

    @Test
    @Mark(of = "account", standing = Standing.WORKED, source = "written run: 50 Ah out, 50.1 Ah in; gains cancel, offsets add up with time")
    @Mark(of = "efficiency", standing = Standing.WORKED, source = "written run: 50 Ah out of 50.1 Ah in, 99.8 %")
    void between_full_and_full_the_gains_fall_out_of_what_does_not_close() {
        List<Finding> found = WrittenRun.findings(CELL, new WrittenRun(CELL, 5)
                .step(1, "charge", 3600, Ended.TAPER, t -> t < 3595 ? 21 : 0.6, _ -> 25, _ -> 3.5)
                .step(2, "discharge", 18_000, Ended.CUT_OFF, _ -> -10, _ -> 25, t -> 3.25 - 0.75 * Math.pow(t / 18_000, 8))
                .step(3, "charge", 18_000, Ended.TAPER, t -> t < 17_995 ? 10.02 : 0.6, _ -> 25, _ -> 3.5).rows());

        Answer.Value account = (Answer.Value) one(found, Kind.ACCOUNT);
        Answer.Value efficiency = (Answer.Value) one(found, Kind.EFFICIENCY);
        double oneWay = ((Answer.Value) found.stream().filter(f -> f.kind() == Kind.CHARGE && f.about().startsWith("step 2")).findFirst()
                .orElseThrow().answer()).budget().expanded();
        assertThat(account.value()).isCloseTo(0.1, within(0.02));
        assertThat(account.budget().expanded()).as("0.25 % of 50 Ah fall out; the offsets of ten hours stay").isLessThan(oneWay / 3);
        assertThat(account.budget().largest().name()).isIn("amplifier offset", "thermo-electric voltage", "two full ends alike");
        assertThat(account.budget().terms()).filteredOn(t -> t.name().equals("two full ends alike")).singleElement()
                .satisfies(t -> assertThat(t.standard()).as("2.4 minutes at a taper of 0.6 A").isCloseTo(0.04 * 0.6 / Math.sqrt(3), within(1e-9)));
        assertThat(efficiency.value()).isCloseTo(99.8, within(0.05));
    }

    @Test
    void more_out_than_in_is_called_a_fault_of_the_measurement() {
        List<Finding> found = WrittenRun.findings(CELL, new WrittenRun(CELL, 5)
                .step(1, "charge", 3600, Ended.TAPER, _ -> 21, _ -> 25, _ -> 3.5)
                .step(2, "discharge", 7200, Ended.CUT_OFF, _ -> -10.1, _ -> 25, _ -> 3.2)
                .step(3, "charge", 7200, Ended.TAPER, _ -> 10, _ -> 25, _ -> 3.5).rows());

        assertThat(found).filteredOn(f -> f.kind() == Kind.EFFICIENCY && f.about().endsWith("charge")).singleElement()
                .satisfies(f -> assertThat(f.notes()).anySatisfy(n -> assertThat(n).contains("fault of the measurement")));
    }

    private static Answer one(List<Finding> found, Kind kind) {
        return found.stream().filter(f -> f.kind() == kind).findFirst().orElseThrow().answer();
    }

    @Test
    @Mark(of = "limiting cell", standing = Standing.WORKED, source = "written knees, the same shape 1.0 Ah apart; cell 8 on the flat")
    void the_cell_at_the_cut_off_is_named_and_the_others_have_what_its_knee_says() {
        // each cell falls along the same knee, later ones 1.0 Ah (at 10 A: 360 s) behind the one before; the last never leaves the flat
        List<Finding> found = WrittenRun.findings(PACK, new WrittenRun(PACK, 1)
                .step(1, "discharge", 3600, Ended.CUT_OFF, _ -> -10, _ -> 25, knees()).rows());

        List<Finding> limiting = found.stream().filter(f -> f.kind() == Kind.LIMITING_CELL).toList();
        assertThat(limiting).hasSize(8);
        assertThat(limiting.getFirst().answer()).isInstanceOfSatisfying(Answer.Named.class, n -> assertThat(n.who()).isEqualTo("cell 1"));
        assertThat(limiting.get(1).answer()).isInstanceOfSatisfying(Answer.Between.class, b -> {
            assertThat(b.low()).isLessThan(1.0);
            assertThat(b.high()).isGreaterThan(1.0).isLessThan(1.6);
        });
        assertThat(limiting.getLast().answer()).isInstanceOf(Answer.AtLeast.class);
    }

    private static DoubleUnaryOperator[] knees() {
        DoubleUnaryOperator[] volts = new DoubleUnaryOperator[8];
        for (int cell = 0; cell < 8; cell++) {
            double behind = cell == 7 ? 1e6 : cell * 360.0;
            volts[cell] = t -> 3.20 - 0.70 * Math.exp((t - 3600 - behind) / 900);
        }
        return volts;
    }

    @Test
    void two_cells_at_the_cut_off_together_cannot_be_told_apart() {
        List<Finding> found = WrittenRun.findings(PACK, new WrittenRun(PACK, 1)
                .step(1, "discharge", 600, Ended.CUT_OFF, _ -> -10, _ -> 25, t -> 3.2 - 0.7 * t / 600, t -> 3.2 - 0.6995 * t / 600,
                        _ -> 3.2, _ -> 3.2, _ -> 3.2, _ -> 3.2, _ -> 3.2, _ -> 3.2).rows());

        assertThat(one(found, Kind.LIMITING_CELL)).isInstanceOfSatisfying(Answer.CannotTell.class,
                c -> assertThat(c.between()).isEqualTo("cell 1 or cell 2"));
    }

    @Test
    @Mark(of = "balance", standing = Standing.WORKED, source = "written knees 0.5 Ah apart at 0.05 C; one cell never leaves the flat")
    void cells_that_left_the_flat_get_a_charge_to_add_and_the_others_at_least() {
        DoubleUnaryOperator[] volts = new DoubleUnaryOperator[8];
        for (int cell = 0; cell < 8; cell++) {
            double behind = cell == 7 ? 1e6 : cell * 360.0;
            volts[cell] = t -> 3.36 + 0.24 * Math.exp((t - 3600 - behind) / 1500);
        }
        List<Finding> gentle = WrittenRun.findings(PACK, new WrittenRun(PACK, 1)
                .step(1, "balance", 3600, Ended.CEILING, _ -> 5, _ -> 25, volts).rows());
        List<Finding> quick = WrittenRun.findings(PACK, new WrittenRun(PACK, 1)
                .step(1, "charge", 3600, Ended.CEILING, _ -> 20, _ -> 25, volts).rows());

        List<Finding> toAdd = gentle.stream().filter(f -> f.kind() == Kind.BALANCE).toList();
        assertThat(toAdd).hasSize(7);
        assertThat(toAdd.getFirst().answer()).isInstanceOfSatisfying(Answer.Between.class, b -> {
            assertThat(b.low()).isLessThan(0.5);
            assertThat(b.high()).isGreaterThan(0.5).isLessThan(0.8);
        });
        assertThat(toAdd.getLast().answer()).isInstanceOf(Answer.AtLeast.class);
        assertThat(one(quick, Kind.BALANCE)).isInstanceOfSatisfying(Answer.Refused.class, r -> assertThat(r.because()).contains("0.1 C"));
    }
}
