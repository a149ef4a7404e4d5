package rigwarden.circuit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import rigwarden.logbook.RunAbout;
import rigwarden.paper.Connection;
import rigwarden.paper.Wiring;
import rigwarden.paper.WiringDrawing;
import rigwarden.paper.WiringTable;
import rigwarden.rig.Rig;

/** The tables and drawings that are kept beside the reference rigs. */
class KeptWiringTest {
    @Test
    void they_are_what_the_rig_files_give_today() throws IOException {
        for (String name : List.of("one-cell", "eight-cells")) {
            Rig rig = PrechargeTest.rig(name);
            List<Connection> connections = Wiring.of(rig);
            String mark = RunAbout.hashOf(Files.readString(Path.of("rigs", name + ".toml"))).substring(0, 12);

            same(name, "-wiring.csv", WiringTable.text(connections));
            same(name, "-wiring-power.svg", WiringDrawing.power(rig, connections, mark));
            same(name, "-wiring-stop.svg", WiringDrawing.stop(rig, connections, mark));
        }
    }

    private static void same(String name, String kind, String today) throws IOException {
        assertThat(Files.readString(Path.of("rigs", name + kind)))
                .as("rigs/%1$s%2$s is stale; renew it by `rigwarden wiring hardware/rigs/%1$s.toml --to hardware/rigs`", name, kind)
                .isEqualTo(today);
    }
}
