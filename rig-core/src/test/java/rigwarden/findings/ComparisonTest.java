package rigwarden.findings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;
import rigwarden.program.Ended;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Doubt;
import rigwarden.rig.Rig;
import rigwarden.rig.TestRigs;

/** One pack with itself: what errs alike falls out, what is not alike is not compared, and no difference is made of chance. */
class ComparisonTest {
    private static final Rig CELL = TestRigs.oneCell();
    private static final Rig PACK = TestRigs.eightCells();

    /** What a discharge is like in a written run: its charge in Ah at 52.5 A as the instruments show it, and its conditions. */
    private record Night(double ampHours, double amps, double celsius, double cutOffVolts, Ended charged) {
        static Night of(double ampHours) {
            return new Night(ampHours, 52.5, 25, 2.50, Ended.TAPER);
        }

        Night at(double degrees) {
            return new Night(ampHours, amps, degrees, cutOffVolts, charged);
        }

        Measured on(Rig rig) {
            double seconds = 5 * Math.round(ampHours / amps * 3600 / 5);
            double exact = ampHours * 3600 / seconds;
            DoubleUnaryOperator volts = t -> 3.25 - (3.25 - cutOffVolts) * Math.pow(t / seconds, 40);
            return Measured.of(rig, WrittenRun.gathered(rig, new WrittenRun(rig, 5)
                    .step(1, "charge", 3600, charged, _ -> 21, _ -> celsius, _ -> 3.5)
                    .step(2, "discharge", seconds, Ended.CUT_OFF, _ -> -exact, _ -> celsius, volts).rows()));
        }
    }

    private static Change.Held capacity(Measured then, Measured later) {
        return (Change.Held) Comparison.of(then, later).stream().filter(c -> c instanceof Change.Held h && h.kind() == Kind.CAPACITY).findFirst()
                .orElseThrow();
    }

    private static String notHeld(Night then, Night later) {
        return Comparison.of(then.on(CELL), later.on(CELL)).stream().filter(c -> c.what().startsWith("capacity"))
                .map(c -> c instanceof Change.NotHeld n ? n.because() : "it was held").findFirst().orElseThrow();
    }

    @Test
    @Mark(of = "capacity", standing = Standing.WORKED, source = "two written runs, 104.0 and 102.0 Ah: ± 0.25 % of the shunt is ± 0.26 Ah in each and ± 5 mAh in 2 Ah")
    void what_the_same_shunt_errs_by_is_the_same_in_both_runs_and_falls_out_of_their_difference() {
        Measured then = Night.of(104.0).on(CELL);

        Change.Held held = capacity(then, Night.of(102.0).on(CELL));

        double alone = then.discharges().getFirst().capacity().budget().expanded();
        assertThat(held.difference()).isCloseTo(-2.0, within(0.02));
        assertThat(held.alike()).contains("shunt tolerance", "amplifier gain");
        assertThat(held.least()).isLessThan(alone / 2);
        assertThat(held.seen()).isTrue();
    }

    @Test
    void what_is_within_what_two_runs_can_measure_is_no_difference() {
        Change.Held held = capacity(Night.of(104.0).on(CELL), Night.of(103.99).on(CELL));

        assertThat(held.seen()).isFalse();
        assertThat(held.least()).isGreaterThan(0.02);
    }

    @Test
    void another_calibration_errs_for_itself_and_nothing_of_the_shunt_falls_out() {
        Rig later = CELL.calibrated(List.of(calibration(1.001)));
        Rig again = CELL.calibrated(List.of(calibration(1.001)));
        Rig other = CELL.calibrated(List.of(calibration(1.002)));

        Change.Held mixed = capacity(Night.of(104.0).on(CELL), Night.of(104.0).on(later));
        Change.Held same = capacity(Night.of(104.0).on(later), Night.of(104.0).on(again));
        Change.Held two = capacity(Night.of(104.0).on(later), Night.of(104.0).on(other));

        assertThat(mixed.alike()).doesNotContain("shunt tolerance", "reference meter's scale");
        assertThat(mixed.least()).isGreaterThan(Night.of(104.0).on(CELL).discharges().getFirst().capacity().budget().expanded() * 0.95);
        assertThat(same.alike()).contains("reference meter's scale", "the calibration's line");
        assertThat(two.alike()).doesNotContain("reference meter's scale");
        assertThat(two.least()).isGreaterThan(same.least());
    }

    private static ChannelCalibration calibration(double gain) {
        return calibration(gain, 0);
    }

    static ChannelCalibration calibration(double gain, double offsetAmps) {
        Doubt doubt = new Doubt(25, 0.004, 1e-4, 5e-4, 0.002, 0, 5, 50, 1e-3);
        return new ChannelCalibration("current_a", gain, offsetAmps, doubt, LocalDate.EPOCH, LocalDate.EPOCH.plusDays(365), OptionalDouble.of(25),
                OptionalLong.empty(), "gain " + gain);
    }

    @Test
    void unlike_conditions_are_not_compared_and_each_is_said() {
        Night night = Night.of(104.0);

        assertThat(notHeld(night, new Night(104, 60, 25, 2.5, Ended.TAPER))).contains("C then and", "are two rates");
        assertThat(notHeld(night, night.at(28.5))).contains("25.0 °C then and 28.5 °C later");
        assertThat(notHeld(night, new Night(104, 52.5, 25, 2.6, Ended.TAPER))).contains("one ended at 2.5", "the other at 2.6");
        assertThat(notHeld(night, new Night(104, 52.5, 25, 2.5, Ended.TIME))).contains("lower bound");
        assertThat(notHeld(night, new Night(104, 52.5, 25, 2.5, Ended.CEILING))).contains("did not start alike");
    }

    @Test
    void where_every_body_probe_was_lost_nothing_is_held_against_it_and_that_is_said() {
        Night night = Night.of(104.0);
        Measured blind = night.at(Double.NaN).on(CELL);

        for (List<Change> changes : List.of(Comparison.of(night.on(CELL), blind), Comparison.of(blind, night.on(CELL)),
                Comparison.of(blind, blind))) {
            assertThat(changes).filteredOn(c -> c.what().startsWith("capacity")).singleElement().isInstanceOfSatisfying(Change.NotHeld.class,
                    n -> assertThat(n.because()).contains("nobody knows how warm the cells were"));
        }
        Measured warm = stops(PACK, 22, 3.30, cells(0.38, 0, 0));
        assertThat(Comparison.of(warm, stops(PACK, Double.NaN, 3.30, cells(0.38, 0, 0)))).filteredOn(c -> c.what().startsWith("resistance"))
                .isNotEmpty().allSatisfy(c -> assertThat(((Change.NotHeld) c).because()).contains("how warm the cells were later"));
    }

    /** Full, so many days of rest, and 104 Ah less a loss. */
    private static Measured stood(double days, double ampHours) {
        double seconds = 60 * Math.round(ampHours / 10.5 * 60);
        double exact = ampHours * 3600 / (seconds - 60);
        return Measured.of(CELL, WrittenRun.gathered(CELL, new WrittenRun(CELL, 60)
                .step(1, "charge", 3600, Ended.TAPER, _ -> 21, _ -> 25, _ -> 3.5)
                .step(2, "rest", days * 86_400, Ended.TIME, _ -> 0, _ -> 25, _ -> 3.4)
                .step(3, "discharge", seconds, Ended.CUT_OFF, _ -> -exact, _ -> 25, t -> 3.25 - 0.75 * Math.pow(t / seconds, 40)).rows()));
    }

    @Test
    @Mark(of = "self discharge", standing = Standing.WORKED, source = "two written runs: 104.00 Ah soon after the charge, 101.92 Ah after 28 days: 98.0 %")
    void a_discharge_after_weeks_in_full_is_a_share_of_the_earlier_one_and_no_loss_of_capacity() {
        List<Change> changes = Comparison.of(stood(0.05, 104.0), stood(28, 101.92));

        assertThat(changes).filteredOn(c -> c instanceof Change.Held h && h.kind() == Kind.SELF_DISCHARGE).singleElement()
                .isInstanceOfSatisfying(Change.Held.class, held -> {
                    assertThat(held.what()).isEqualTo("charge retained over 28.0 days");
                    assertThat(held.later()).isCloseTo(98.0, within(0.1));
                    assertThat(held.budget().terms()).filteredOn(t -> t.nature() == Nature.GAIN).isNotEmpty()
                            .allSatisfy(t -> assertThat(t.standard()).as(t.name()).isLessThan(1e-9));
                    assertThat(held.least()).isLessThan(0.5);
                    assertThat(held.seen()).isTrue();
                });
        assertThat(changes).filteredOn(c -> c.what().startsWith("capacity")).singleElement().isInstanceOfSatisfying(Change.NotHeld.class,
                n -> assertThat(n.because()).contains("stood full for 0.1 days before it then and for 28.0 days later"));
        assertThat(Comparison.of(stood(0.05, 104.0), stood(5, 103.9))).filteredOn(c -> c.what().startsWith("charge retained")).singleElement()
                .isInstanceOfSatisfying(Change.NotHeld.class, n -> assertThat(n.because()).contains("too few"));
    }

    @Test
    @Mark(of = "capacity", standing = Standing.WORKED, source = "2 K at 0…0.8 %/K: 0.83 Ah ± 0.83 Ah of 104 Ah")
    void a_warmer_night_explains_a_part_and_makes_the_rest_less_sure() {
        Change.Held held = capacity(Night.of(104.0).on(CELL), Night.of(104.9).at(27).on(CELL));

        assertThat(held.difference()).isCloseTo(0.9 - 0.839, within(0.03));
        assertThat(held.seen()).isFalse();
        assertThat(held.budget().largest().name()).isEqualTo("temperature between the runs");
    }

    @Test
    void another_pack_is_not_compared() {
        assertThat(Comparison.strangers(CELL, CELL)).isEmpty();
        assertThat(Comparison.strangers(CELL, PACK).orElseThrow()).contains("a pack is compared with itself");
    }

    /** The shunt errs alike in both runs of a rig, what warms it in each for itself; both are drawn from their limits. */
    @Test
    @Mark(of = "capacity", standing = Standing.WORKED, source = "60 rigs drawn from the stated limits, seed 20261126: binomial at 1 %, at least 52 of 60 inside")
    void the_true_difference_lies_inside_as_often_as_is_said() {
        Random random = new Random(20261126);
        int inside = 0;
        double limitOhms = CELL.shunt().thermoVolts() / CELL.shunt().ohms();
        for (int rig = 0; rig < 60; rig++) {
            double gain = 1 + CELL.shunt().toleranceRelative() * (2 * random.nextDouble() - 1);
            Change.Held held = capacity(Night.of(104.0 * gain + 2 * limitOhms * (2 * random.nextDouble() - 1)).on(CELL),
                    Night.of(102.5 * gain + 2 * limitOhms * (2 * random.nextDouble() - 1)).on(CELL));
            inside += Math.abs(held.difference() + 1.5) <= held.budget().expanded() ? 1 : 0;
        }

        assertThat(inside).isGreaterThanOrEqualTo(52);
    }

    /** Stops of a current of 50 A on the flat: resistance by cell in mΩ, at a temperature. */
    private static Measured stops(Rig rig, double celsius, double restVolts, double... milliohms) {
        DoubleUnaryOperator[] volts = Arrays.stream(milliohms).<DoubleUnaryOperator>mapToObj(r -> _ -> restVolts - 0.05 * r)
                .toArray(DoubleUnaryOperator[]::new);
        DoubleUnaryOperator[] rest = Arrays.stream(milliohms).<DoubleUnaryOperator>mapToObj(_ -> _ -> restVolts).toArray(DoubleUnaryOperator[]::new);
        return Measured.of(rig, WrittenRun.gathered(rig, stopped(new WrittenRun(rig, 0.1)
                .step(1, "rest", 5, Ended.TIME, _ -> 0, _ -> celsius, rest), celsius, volts, rest).rows()));
    }

    private static WrittenRun stopped(WrittenRun run, double celsius, DoubleUnaryOperator[] volts, DoubleUnaryOperator[] rest) {
        return run.step(2, "discharge", 60, Ended.TIME, _ -> -50, _ -> celsius, closing(volts, rest))
                .step(3, "rest", 20, Ended.TIME, _ -> 0, _ -> celsius, rest);
    }

    /** In the last row of a step the current has stopped already. */
    private static DoubleUnaryOperator[] closing(DoubleUnaryOperator[] volts, DoubleUnaryOperator[] rest) {
        return IntStream.range(0, volts.length).<DoubleUnaryOperator>mapToObj(i -> t -> t > 59.95 ? rest[i].applyAsDouble(t)
                : volts[i].applyAsDouble(t)).toArray(DoubleUnaryOperator[]::new);
    }

    private static double[] cells(double each, int odd, double more) {
        double[] all = new double[8];
        Arrays.fill(all, each);
        if (odd > 0) {
            all[odd - 1] += more;
        }
        return all;
    }

    @Test
    @Mark(of = "resistance", standing = Standing.WORKED, source = "written stops of 50 A: 0.25 and 0.35 mΩ")
    void a_resistance_that_grew_is_seen_where_the_cell_was_equally_full_and_else_not_compared() {
        Measured then = stops(CELL, 25, 3.30, 0.25);

        List<Change> grown = Comparison.of(then, stops(CELL, 25, 3.30, 0.35));
        List<Change> emptier = Comparison.of(then, stops(CELL, 25, 3.25, 0.35));

        assertThat(grown).filteredOn(c -> c instanceof Change.Held h && h.kind() == Kind.RESISTANCE).singleElement()
                .isInstanceOfSatisfying(Change.Held.class, h -> {
                    assertThat(h.difference()).isCloseTo(0.1, within(h.least()));
                    assertThat(h.least()).isLessThan(0.02);
                    assertThat(h.seen()).isTrue();
                    assertThat(h.alike()).contains("shunt and amplifier gain");
                });
        assertThat(emptier).filteredOn(c -> c.what().startsWith("resistance of cell 1")).singleElement()
                .isInstanceOfSatisfying(Change.NotHeld.class, n -> assertThat(n.because()).contains("not equally full"));
        assertThat(grown).filteredOn(c -> c.what().equals("joints")).singleElement()
                .isInstanceOfSatisfying(Change.NotHeld.class, n -> assertThat(n.because()).contains("four like places"));
    }

    @Test
    @Mark(of = "joint", standing = Standing.WORKED, source = "written stops of 50 A: 0.25 mΩ each, later 0.24 mΩ each and 0.34 mΩ at the fifth place")
    void one_place_that_grew_against_its_likes_is_seen_and_what_moves_all_alike_is_taken_off() {
        List<Change> all = Comparison.of(stops(PACK, 25, 3.30, cells(0.25, 0, 0)), stops(PACK, 27, 3.30, cells(0.24, 5, 0.1)));

        List<Change.Held> joints = all.stream().filter(c -> c instanceof Change.Held h && h.kind() == Kind.JOINT).map(Change.Held.class::cast).toList();
        assertThat(joints).hasSize(8);
        assertThat(joints).filteredOn(Change.Held::seen).singleElement().satisfies(h -> {
            assertThat(h.what()).isEqualTo("cell 5 or the joint between cells 4 and 5");
            assertThat(h.difference()).isCloseTo(0.1, within(h.least()));
        });
        assertThat(joints.getFirst().least()).as("eight places looked at together").isGreaterThan(joints.getFirst().budget().expanded());
    }
}
