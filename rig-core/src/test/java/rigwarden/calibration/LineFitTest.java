package rigwarden.calibration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Published: JCGM 100:2008, H.3, table H.6 (the printed figures) and the same computed further. */
class LineFitTest {
    private static final double[] CELSIUS = {21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511};
    private static final double[] CORRECTION =
            {-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160};

    private static LineFit thermometer() {
        double[] alike = new double[CELSIUS.length];
        Arrays.fill(alike, 1);
        LineFit line = LineFit.through(CELSIUS, CORRECTION, alike);
        return line.widened(line.scatter());
    }

    @Test
    void the_thermometer_of_the_guide_gets_its_line() {
        LineFit line = thermometer();

        assertThat(line.at(20)).isEqualTo(-0.171204, within(1e-6));
        assertThat(line.slope()).isEqualTo(0.00218270, within(1e-8));
        assertThat(line.scatter()).isEqualTo(0.00349756, within(1e-8));
        assertThat(line.standardAt(20)).isEqualTo(0.002878, within(1e-6));
        assertThat(line.slopeU()).isEqualTo(0.000667939, within(1e-9));
        assertThat(line.correlationAt(20)).isEqualTo(-0.930430, within(1e-6));
    }

    @Test
    void its_correction_at_thirty_degrees_needs_the_correlation() {
        LineFit line = thermometer();
        double blind = Math.hypot(line.standardAt(20), 10 * line.slopeU());

        assertThat(line.at(30)).isEqualTo(-0.149377, within(1e-6));
        assertThat(line.standardAt(30)).isEqualTo(0.0041386, within(1e-7));
        assertThat(blind).as("without it").isEqualTo(0.00727, within(1e-5));
    }

    @Test
    void a_point_that_is_known_better_pulls_harder() {
        LineFit line = LineFit.through(new double[] {0, 1, 2}, new double[] {0, 1.3, 2}, new double[] {0.001, 1, 0.001});

        assertThat(line.at(1)).isEqualTo(1, within(1e-5));
        assertThat(line.chiSquare()).isEqualTo(0.09, within(1e-3));
    }

    @Test
    void two_points_give_a_line_and_say_nothing_about_scatter_one_gives_none() {
        LineFit line = LineFit.through(new double[] {1, 3}, new double[] {10, 30}, new double[] {0.1, 0.1});

        assertThat(line.slope()).isEqualTo(10, within(1e-12));
        assertThat(line.scatter()).isEqualTo(1);
        assertThatThrownBy(() -> LineFit.through(new double[] {1, 1}, new double[] {1, 2}, new double[] {1, 1}))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> LineFit.through(new double[] {1}, new double[] {1}, new double[] {1}))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
