package rigwarden.bus;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.pi4j.context.Context;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RealBoardTest {
    @TempDir
    Path devices;

    @Test
    void the_context_has_the_official_providers_and_no_emulated_one() {
        Context context = RealBoard.context();

        assertThat(context.providers().all().values()).extracting(p -> p.getClass().getPackageName())
                .containsExactlyInAnyOrder("com.pi4j.plugin.gpiod.provider.gpio.digital",
                        "com.pi4j.plugin.gpiod.provider.gpio.digital", "com.pi4j.plugin.linuxfs.provider.i2c",
                        "com.pi4j.plugin.linuxfs.provider.spi");

        context.shutdown();
    }

    @Test
    void a_machine_without_the_rigs_buses_is_refused_by_what_it_lacks() throws Exception {
        Files.createFile(devices.resolve("i2c-1"));

        assertThatThrownBy(() -> RealBoard.open(List.of("i2c-1", "i2c-3", "spidev0.1"), devices))
                .isInstanceOf(BusFailure.class)
                .hasMessageContaining("gpiochip0")
                .hasMessageContaining("i2c-3")
                .hasMessageContaining("spidev0.1")
                .hasMessageNotContaining("no " + devices.resolve("i2c-1") + ",");
    }

    @Test
    void the_controller_that_the_rig_file_names_must_be_there() throws Exception {
        Files.createFile(devices.resolve("gpiochip0"));

        assertThatThrownBy(() -> RealBoard.open(List.of(), devices, OptionalInt.of(4)))
                .isInstanceOf(BusFailure.class)
                .hasMessageContaining("gpiochip4");
    }

    @Test
    void a_bus_that_another_has_is_refused_by_name() throws Exception {
        Files.createFile(devices.resolve("gpiochip0"));
        Files.createFile(devices.resolve("i2c-1"));
        Files.createFile(devices.resolve("i2c-3"));

        try (NodeLock other = NodeLock.of(devices.resolve("i2c-3"))) {
            assertThat(other).isNotNull();
            assertThatThrownBy(() -> RealBoard.open(List.of("i2c-1", "i2c-3"), devices, OptionalInt.of(0)))
                    .isInstanceOf(BusFailure.class)
                    .hasMessageContaining("i2c-3 is in use by another process");
        }
        NodeLock.of(devices.resolve("i2c-1")).close();
    }
}
