package rigwarden.paper;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.findings.Joints;
import rigwarden.joint.JointOhms;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** What was walked with a hand meter, as the findings take it. */
class WalkedBarsTest {
    private static final Rig PACK = ((Read.Sound<Rig>) RigFile.read(Path.of("..", "hardware", "rigs", "eight-cells.toml"))).value();

    private static List<JointOhms> walked(String odd, double ohms) {
        return JointPath.of(PACK).stream().map(joint -> new JointOhms(joint.name(), joint.family(),
                joint.name().endsWith(odd) ? ohms : 20e-6, 2e-6)).toList();
    }

    @Test
    void each_bar_is_handed_over_once_with_the_worse_of_its_ends_and_lugs_are_left_out() {
        for (String end : List.of("at cell 3, + stud", "at cell 4, − stud")) {
            List<Joints.Walked> bars = WalkedBars.of(PACK, walked(end, 150e-6));

            assertThat(bars).extracting(Joints.Walked::lowerCell).containsExactly(1, 2, 3, 4, 5, 6, 7);
            assertThat(bars.get(2).volts() / bars.get(2).amps()).as(end).isCloseTo(150e-6, within(1e-12));
            assertThat(bars.get(1).volts() / bars.get(1).amps()).isCloseTo(20e-6, within(1e-12));
        }
    }

    @Test
    void a_bad_lug_is_no_bars() {
        List<Joints.Walked> bars = WalkedBars.of(PACK, walked("which is cell 8, + stud", 150e-6));

        assertThat(bars).allSatisfy(bar -> assertThat(bar.volts()).isCloseTo(20e-6, within(1e-12)));
        assertThat(WalkedBars.of(PACK, List.of())).isEmpty();
    }
}
