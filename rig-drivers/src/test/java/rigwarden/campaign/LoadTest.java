package rigwarden.campaign;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.pack.Fault;
import rigwarden.pack.Line;
import rigwarden.pack.World;
import rigwarden.pack.WorldParameters;
import rigwarden.rig.TestRigs;

/** The test rig: cells 105 A out and 52.5 A in, fuse 125 A, shunt 150 A, contactor 200 A. */
class LoadTest {
    private static final double SCAN_S = 0.1;

    private final World world = new World(WorldParameters.oneCell(), new double[] {0.5});
    private final List<Load> loads = Load.of(TestRigs.oneCell());

    private void takes(double amps) {
        world.inflict(new Fault.Weld(Line.CONTACTOR));
        world.inflict(new Fault.Weld(Line.SINK_RELAY));
        world.sink(0, true, amps);
    }

    /** Looks once a scan for so long; the parts that are over then. */
    private List<String> over(double seconds) {
        List<String> over = List.of();
        long scans = Math.round(seconds / SCAN_S);
        for (long i = 0; i < scans; i++) {
            world.advanceTo(world.nanos() + Math.round(SCAN_S * 1e9));
            over = loads.stream().filter(load -> load.over(world, world.nanos())).map(Load::part).toList();
        }
        return over;
    }

    @Test
    void a_part_above_125_percent_is_over_after_ten_seconds_and_not_before() {
        takes(140);

        assertThat(over(9.9)).isEmpty();
        assertThat(over(0.4)).containsExactly("cells, discharged");
    }

    @Test
    void a_part_above_150_percent_is_over_after_one_second() {
        takes(190);

        assertThat(over(0.9)).isEmpty();
        assertThat(over(0.4)).containsExactly("fuse", "cells, discharged");
    }

    @Test
    void a_pause_begins_the_time_anew_and_120_percent_is_borne_for_ever() {
        takes(140);
        over(9);
        world.sink(0, true, 126);
        assertThat(over(60)).isEmpty();
        world.sink(0, true, 140);
        assertThat(over(9)).isEmpty();
    }
}
