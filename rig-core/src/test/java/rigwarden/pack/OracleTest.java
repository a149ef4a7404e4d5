package rigwarden.pack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;

class OracleTest {
    /** By hand: 3 K/min from 22 °C reaches 23.333 °C after 26.66 s, inside a step. */
    @Test
    void a_crossing_is_found_inside_its_step() {
        WarmthParameters shut = new WarmthParameters(0, 0, 40, 0, 0, 30, 0, 0, 60, 0, 150, 0);
        World world = new World(WorldParameters.oneCell().withWarmth(shut)
                .withCells(List.of(CellParameters.plain(100, 3.3, 1e-3))), new double[] {0.5});
        Threshold warm = new Threshold.NodeAbove(23.333);
        world.watch(warm);
        world.inflict(new Fault.HeatRate(0, 3));
        Rigs.advance(world, 26.6);
        assertThat(world.oracle().crossedNanos(warm)).isEmpty();
        Rigs.advance(world, 10);
        assertThat(world.oracle().crossedNanos(warm).orElseThrow()).isBetween(26_659_900_000L, 26_660_100_000L);
        assertThat(world.oracle().hottestNode()).isEqualTo(Node.body(0));
    }

    @Test
    void extremes_and_the_last_current_are_kept_until_reset() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        Rigs.join(world, Line.SINK_RELAY);
        assertThat(world.oracle().lastAmpsNanos()).isEmpty();
        world.sink(0, true, 50);
        Rigs.advance(world, 10);
        world.sink(0, false, 0);
        Rigs.advance(world, 10);
        assertThat(world.oracle().lastAmpsNanos()).hasValue(10 * Rigs.SECOND);
        assertThat(world.oracle().lowestCellVolts()).isBetween(3.2499, 3.2501);
        assertThat(world.oracle().greatestAmps()).isBetween(50.0, 50.1);
        world.resetOracle();
        assertThat(world.oracle().lowestCellVolts()).isGreaterThan(3.29);
        assertThat(world.oracle().lastAmpsNanos()).isEmpty();
    }

    @Test
    void what_nobody_watches_cannot_be_asked() {
        World world = Rigs.plain(100, 3.3, 1e-3);
        assertThatThrownBy(() -> world.oracle().crossedNanos(new Threshold.CellAbove(3.75)))
                .isInstanceOf(IllegalArgumentException.class).hasMessageContaining("not watched");
    }
}
