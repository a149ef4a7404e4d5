package rigwarden.bus;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class NodeLockTest {
    @TempDir
    Path devices;

    @Test
    void a_node_has_one_owner_until_it_is_let_go() throws Exception {
        Path node = Files.createFile(devices.resolve("i2c-1"));
        NodeLock first = NodeLock.of(node);
        assertThatThrownBy(() -> NodeLock.of(node)).isInstanceOf(BusFailure.class).hasMessageContaining("in use by another process");

        first.close();

        NodeLock.of(node).close();
    }

    @Test
    void closing_another_descriptor_of_the_node_does_not_let_it_go() throws Exception {
        Path node = Files.createFile(devices.resolve("i2c-1"));
        try (NodeLock first = NodeLock.of(node)) {
            FileChannel.open(node).close();

            assertThatThrownBy(() -> NodeLock.of(node)).as("%s", first).isInstanceOf(BusFailure.class);
        }
    }

    @Test
    void a_node_that_is_not_there_is_a_failure() {
        assertThatThrownBy(() -> NodeLock.of(devices.resolve("i2c-9"))).isInstanceOf(BusFailure.class)
                .hasMessageContaining("i2c-9 cannot be opened");
    }
}
