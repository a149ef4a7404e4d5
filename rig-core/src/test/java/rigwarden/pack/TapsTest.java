package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class TapsTest {
    private static final double BAR = 0.03e-3 + 2 * 0.05e-3;

    @Test
    void without_current_the_difference_of_two_taps_is_the_cell() {
        World world = discharging(0);

        assertThat(world.tapVolts(0)).isZero();
        for (int k = 1; k <= 8; k++) {
            assertThat(world.tapVolts(k) - world.tapVolts(k - 1)).isCloseTo(3.3, within(1e-12));
        }
    }

    /** By hand: the bar of 0.03 mΩ and two joints of 0.05 mΩ below each cell but the first. */
    @Test
    void with_current_it_holds_the_bar_below_the_cell_too() {
        World world = discharging(50);

        double amps = world.amps();
        assertThat(amps).isLessThan(-50);
        assertThat(world.tapVolts(1)).isCloseTo(world.cellVolts(0), within(1e-12));
        for (int k = 2; k <= 8; k++) {
            double pair = world.tapVolts(k) - world.tapVolts(k - 1);
            assertThat(pair).isCloseTo(world.cellVolts(k - 1) + amps * BAR, within(1e-12));
        }
        assertThat(world.tapVolts(8)).isCloseTo(world.packVolts(), within(1e-9));
    }

    @Test
    void a_loose_joint_shows_in_the_cell_above_its_bar_alone() {
        World world = discharging(50);
        world.inflict(new Fault.LooseJoint(3, true, 1e-3));

        Rigs.advance(world, 0.1);

        double amps = world.amps();
        assertThat(world.tapVolts(4) - world.tapVolts(3)).isCloseTo(world.cellVolts(3) + amps * BAR, within(1e-12));
        assertThat(world.tapVolts(5) - world.tapVolts(4))
                .isCloseTo(world.cellVolts(4) + amps * (BAR + 1e-3), within(1e-12));
    }

    @Test
    void an_offset_of_an_inner_tap_moves_two_cells_against_each_other() {
        World world = discharging(0);

        world.inflict(new Fault.TapOffset(3, -0.05));

        assertThat(world.tapVolts(3) - world.tapVolts(2)).isCloseTo(3.25, within(1e-12));
        assertThat(world.tapVolts(4) - world.tapVolts(3)).isCloseTo(3.35, within(1e-12));
        assertThat(world.tapVolts(8)).isCloseTo(26.4, within(1e-12));
    }

    @Test
    void a_cut_wire_says_so_and_leaves_the_others() {
        World world = discharging(0);

        world.inflict(new Fault.BrokenTap(3));

        assertThat(world.tapCut(3)).isTrue();
        assertThat(world.tapVolts(3)).isZero();
        assertThat(world.tapCut(4)).isFalse();
        assertThat(world.tapVolts(4)).isCloseTo(13.2, within(1e-12));
        assertThatThrownBy(() -> world.inflict(new Fault.BrokenTap(9))).isInstanceOf(IllegalArgumentException.class);
    }

    private static World discharging(double amps) {
        World world = Rigs.eight(3.3, Rigs.dry(new Supply.Programmable(), new Load.Electronic(0.1)), Protection.NONE);
        Rigs.join(world, Line.sink(0));
        world.sink(0, amps > 0, amps + 1);
        Rigs.advance(world, 0.1);
        return world;
    }
}
