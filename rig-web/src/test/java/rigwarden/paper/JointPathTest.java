package rigwarden.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** The way of a hand meter along a rig. */
class JointPathTest {
    private static List<JointPath.Joint> of(String name) {
        return JointPath.of(((Read.Sound<Rig>) RigFile.read(Path.of("..", "hardware", "rigs", name))).value());
    }

    @Test
    void it_begins_at_the_positive_end_and_comes_back_over_the_bars() {
        List<JointPath.Joint> joints = of("eight-cells.toml");

        assertThat(joints).extracting(JointPath.Joint::place).startsWith(1, 2, 3).isSorted().doesNotHaveDuplicates();
        assertThat(joints.getFirst().name()).isEqualTo("P8 at B+, which is cell 8, + stud");
        assertThat(joints.getLast().name()).isEqualTo("P7 at cell 8, − stud");
        assertThat(joints).filteredOn(joint -> joint.family().equals("bar on a stud")).hasSize(14);
        assertThat(joints).extracting(JointPath.Joint::name).doesNotHaveDuplicates();
    }

    @Test
    void what_one_device_alone_carries_is_known_and_pre_charge_and_bleed_are_left_out() {
        List<JointPath.Joint> joints = of("one-cell.toml");

        assertThat(joints).filteredOn(joint -> joint.device().map(Device::name).stream().anyMatch("sink"::equals))
                .extracting(JointPath.Joint::name).hasSize(6).anyMatch(name -> name.endsWith("at sink, plus"))
                .anyMatch(name -> name.endsWith("at sink_relay")).anyMatch(name -> name.endsWith("at sink, minus"));
        assertThat(joints).extracting(JointPath.Joint::name).noneMatch(name -> name.contains("Kp"));
    }

    @Test
    void every_name_is_a_connection_and_an_end_of_the_wiring_table() {
        for (String rig : List.of("one-cell.toml", "eight-cells.toml")) {
            List<String> ends = Wiring.of(((Read.Sound<Rig>) RigFile.read(Path.of("..", "hardware", "rigs", rig))).value()).stream()
                    .flatMap(one -> List.of(one.label() + " at " + one.from(), one.label() + " at " + one.to()).stream()).toList();

            assertThat(of(rig)).extracting(JointPath.Joint::name).isSubsetOf(ends);
        }
    }
}
