package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import rigwarden.emulated.BoardFault;
import rigwarden.pack.Fault;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/** What goes wrong in a rehearsal, as a person writes it. */
class MishapReaderTest {
    private final MishapReader reader = new MishapReader(((Read.Sound<Rig>) RigFile.read(Path.of("..", "hardware", "rigs", "eight-cells.toml"))).value());

    private BoardFault read(String words) {
        return reader.read(words).fault();
    }

    @Test
    void a_joint_is_its_cells_positive_one_unless_it_is_said_otherwise() {
        assertThat(read("joint 4 loosens 0.3 mohm at 2:00")).isEqualTo(new BoardFault.InWorld(new Fault.LooseJoint(3, true, 0.3e-3)))
                .isEqualTo(read("joint 4p loosens 0.3 mohm at 2:00"));
        assertThat(read("joint 4n loosens 0.3 mohm at 2:00")).isEqualTo(new BoardFault.InWorld(new Fault.LooseJoint(3, false, 0.3e-3)));
    }

    @Test
    void what_it_does_not_know_is_refused_with_what_it_knows() {
        assertThatThrownBy(() -> reader.read("joint 4x loosens at 2:00")).isInstanceOf(Refused.class).hasMessageContaining("joint 1p loosens 2 mohm");
    }
}
