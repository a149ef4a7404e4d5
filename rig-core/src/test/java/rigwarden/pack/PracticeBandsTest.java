package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import rigwarden.marks.Mark;
import rigwarden.marks.Standing;

/**
 * What the trade knows of large cells without a source, as bands that the model pack must land in from its parameters: four sound cells in series, rated 280 Ah,
 * emptied at 30 A and at 160 A.
 */
class PracticeBandsTest {
    private static final int CELLS = 4;
    private static final double RATED_AH = 280;
    private static final double CUT_OFF_V = 2.5;
    private static Emptied slow;
    private static Emptied fast;

    /** What one discharge from full to the cut-off showed. */
    private record Emptied(double ampHours, double hours, double between, double barOverCells, double firstVolts, double lastVolts) {}

    @BeforeAll
    static void empty_the_pack_at_either_rate() {
        slow = emptied(30);
        fast = emptied(160);
        System.out.println("30 A: " + slow + System.lineSeparator() + "160 A: " + fast);
    }

    /** The reference cell in another size, as a rig file that says 280 Ah has it made. */
    private static Emptied emptied(double amps) {
        CellParameters reference = CellParameters.lfp105();
        double size = RATED_AH / reference.nominalAmpHours();
        CellParameters cell = reference.withOhmsTimes(1 / size).withAmpHours(reference.ampHours() * size).withJoulesPerKelvin(reference.joulesPerKelvin() * size);
        WorldParameters pack = WorldParameters.inSeries(CELLS);
        World world = new World(pack.withCells(Collections.nCopies(CELLS, cell)).withRoom(new Room(25, 0))
                .withPath(pack.path().withLoads(new Load.Electronic(0.1))), new double[] {1, 1, 1, 1});
        Rigs.join(world, Line.sink(0));
        world.sink(0, true, amps);
        Rigs.advance(world, 1);
        double first = volts(world);
        double start = world.coulombs();
        double low = start;
        double high = start;
        double bar = 0;
        while (lowest(world) > CUT_OFF_V) {
            Rigs.advance(world, 1);
            high = lowest(world) > 3.3 ? world.coulombs() : high;
            low = lowest(world) > 2.9 ? world.coulombs() : low;
            bar = Math.max(bar, world.celsius(Node.link(2)) - Math.max(world.celsius(Node.body(1)), world.celsius(Node.body(2))));
        }
        double moved = start - world.coulombs();
        return new Emptied(moved / 3600, moved / amps / 3600, (high - low) / moved, bar, first, volts(world));
    }

    private static double lowest(World world) {
        return IntStream.range(0, CELLS).mapToDouble(world::cellVolts).min().orElseThrow();
    }

    private static double volts(World world) {
        return IntStream.range(0, CELLS).mapToDouble(world::cellVolts).sum();
    }

    @Test
    @Mark(of = "capacity", standing = Standing.COMMON_PRACTICE, source = "a sound lot of large cells tests 2…5 % above its rating at a low rate")
    void a_sound_lot_tests_two_to_five_per_cent_above_its_rating_at_a_low_rate() {
        assertThat(slow.ampHours() / RATED_AH).isBetween(1.02, 1.05);
    }

    @Test
    @Mark(of = "capacity", standing = Standing.COMMON_PRACTICE, source = "four cells in series rated 280 Ah give 285…290 Ah at 30 A")
    void four_cells_of_280_Ah_give_285_to_290_at_30_A() {
        assertThat(slow.ampHours()).isBetween(285.0, 290.0);
    }

    @Test
    @Mark(of = "capacity", standing = Standing.COMMON_PRACTICE, source = "four cells in series rated 280 Ah give 280…285 Ah at 160 A, in 1¾ h")
    void four_cells_of_280_Ah_give_280_to_285_at_160_A_in_an_hour_and_three_quarters() {
        assertThat(fast.ampHours()).isBetween(280.0, 285.0);
        assertThat(fast.hours()).isBetween(1.70, 1.80);
    }

    @Test
    @Mark(of = "heat", standing = Standing.COMMON_PRACTICE, source = "a plated copper bar of 38 mm² carries 160 A for two hours with a small rise: over its cells, which warm too, by no more than 10 K")
    void a_bar_carries_160_A_and_is_little_warmer_than_the_cells_that_it_joins() {
        assertThat(fast.barOverCells()).isBetween(0.0, 10.0);
    }

    @Test
    @Mark(of = "capacity", standing = Standing.COMMON_PRACTICE, source = "under load most of the charge comes between 3.3 V and 2.9 V of a cell")
    void under_load_most_of_the_charge_comes_between_3_3_and_2_9_V() {
        assertThat(fast.between()).isGreaterThan(0.5);
    }

    @Test
    @Mark(of = "capacity", standing = Standing.COMMON_PRACTICE, source = "2.5…3.65 V of a cell are 10.0…14.6 V of four")
    void four_cells_under_load_stay_between_10_and_14_6_V() {
        assertThat(slow.firstVolts()).isLessThan(14.6);
        assertThat(fast.lastVolts()).isGreaterThanOrEqualTo(9.9);
    }
}
