package rigwarden.bus;

import com.pi4j.Pi4J;
import com.pi4j.boardinfo.util.BoardInfoHelper;
import com.pi4j.context.Context;
import com.pi4j.library.gpiod.internal.GpioDContext;
import com.pi4j.plugin.gpiod.provider.gpio.digital.GpioDDigitalInputProvider;
import com.pi4j.plugin.gpiod.provider.gpio.digital.GpioDDigitalOutputProvider;
import com.pi4j.plugin.linuxfs.provider.i2c.LinuxFsI2CProvider;
import com.pi4j.plugin.linuxfs.provider.spi.LinuxFsSpiProvider;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import rigwarden.warden.Failure;

/**
 * This machine's own header. The context is built from the official gpiod and linuxfs providers by name: nothing is
 * detected, so that no emulated one can slip in and outrank them.
 */
public final class RealBoard {
    private static final String LINES = "gpiochip0";

    private RealBoard() {}

    /**
     * Opens the header; no line is claimed and no chip is touched.
     *
     * @param nodes device nodes that the rig file needs, for example {@code i2c-1} or {@code spidev0.1}
     * @param devices folder of the device nodes, {@code /dev}
     * @throws BusFailure naming what this machine lacks
     */
    public static Context open(Collection<String> nodes, Path devices) throws BusFailure {
        List<String> missing = new ArrayList<>();
        if (!Files.exists(devices.resolve(LINES))) {
            missing.add(devices.resolve(LINES).toString());
        }
        for (String node : nodes) {
            if (!Files.exists(devices.resolve(node))) {
                missing.add(devices.resolve(node).toString());
            }
        }
        if (!missing.isEmpty()) {
            throw new BusFailure(Failure.NO_ANSWER, "this machine has no " + String.join(", no ", missing)
                    + ": run this on the rig's own board, with its buses switched on");
        }
        if (!BoardInfoHelper.runningOnRaspberryPi()) {
            throw new BusFailure(Failure.NO_ANSWER,
                    "this board is none that the library for its lines knows; it knows the Raspberry Pi's");
        }
        try {
            GpioDContext.getInstance().initialize();
            return context();
        } catch (RuntimeException | LinkageError e) {
            throw new BusFailure(Failure.NO_ANSWER, "the board's lines cannot be opened: " + e.getMessage());
        }
    }

    /** The context by itself, with four providers and no other. */
    static Context context() {
        return Pi4J.newContextBuilder()
                .noAutoDetect()
                .noAutoInject()
                .disableShutdownHook()
                .add(GpioDDigitalOutputProvider.newInstance(), GpioDDigitalInputProvider.newInstance(),
                        LinuxFsI2CProvider.newInstance(), LinuxFsSpiProvider.newInstance())
                .build();
    }
}
