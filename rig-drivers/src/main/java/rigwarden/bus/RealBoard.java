package rigwarden.bus;

import com.pi4j.Pi4J;
import com.pi4j.boardinfo.definition.BoardModel;
import com.pi4j.boardinfo.util.BoardInfoHelper;
import com.pi4j.context.Context;
import com.pi4j.event.ShutdownEvent;
import com.pi4j.event.ShutdownListener;
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
import java.util.OptionalInt;
import java.util.stream.Stream;
import rigwarden.warden.Failure;

/**
 * This machine's own header. The context is built from the official gpiod and linuxfs providers by name: nothing is
 * detected, so that no emulated one can slip in and outrank them.
 */
public final class RealBoard {
    private static final int FIRST = 0;

    private RealBoard() {}

    /**
     * Opens a header that the library knows; no line is claimed and no chip is touched.
     *
     * @param nodes device nodes that the rig file needs, for example {@code i2c-1} or {@code spidev0.1}
     * @param devices folder of the device nodes, {@code /dev}
     * @throws BusFailure naming what this machine lacks, or the node that another process has
     */
    public static Context open(Collection<String> nodes, Path devices) throws BusFailure {
        return open(nodes, devices, OptionalInt.empty());
    }

    /**
     * Opens a header; no line is claimed and no chip is touched. The nodes are this process' own until the context is
     * shut down or the process ends.
     *
     * @param nodes device nodes that the rig file needs
     * @param devices folder of the device nodes, {@code /dev}
     * @param controller number N of the lines' controller, gpiochipN, if the rig file names it: any board will do then;
     *     empty: the library must know the board, and finds its controller itself
     * @throws BusFailure naming what this machine lacks, or the node that another process has
     */
    public static Context open(Collection<String> nodes, Path devices, OptionalInt controller) throws BusFailure {
        String lines = "gpiochip" + controller.orElse(FIRST);
        List<Path> paths = nodes.stream().sorted().map(devices::resolve).toList();
        refuseMissing(Stream.concat(Stream.of(devices.resolve(lines)), paths.stream()).toList());
        if (controller.isEmpty() && !BoardInfoHelper.runningOnRaspberryPi()) {
            throw new BusFailure(Failure.NO_ANSWER, "this board is none that the library for its lines knows; it knows the"
                    + " Raspberry Pi's. Name the lines' controller in the rig file: panel.controller = 0 for /dev/gpiochip0");
        }
        List<NodeLock> locks = locked(paths);
        try {
            if (controller.isPresent()) {
                BoardInfoHelper.current().setBoardModel(BoardModel.GENERIC);
                GpioDContext.getInstance().setChip(lines);
            }
            GpioDContext.getInstance().initialize();
            Context context = context();
            context.addListener(new Unlocking(locks));
            return context;
        } catch (RuntimeException | LinkageError e) {
            locks.forEach(NodeLock::close);
            throw new BusFailure(Failure.NO_ANSWER, "the board's lines cannot be opened: " + e.getMessage());
        }
    }

    private static void refuseMissing(List<Path> nodes) throws BusFailure {
        List<String> missing = nodes.stream().filter(node -> !Files.exists(node)).map(Path::toString).toList();
        if (!missing.isEmpty()) {
            throw new BusFailure(Failure.NO_ANSWER, "this machine has no " + String.join(", no ", missing)
                    + ": run this on the rig's own board, with its buses switched on");
        }
    }

    private static List<NodeLock> locked(List<Path> nodes) throws BusFailure {
        List<NodeLock> locks = new ArrayList<>();
        for (Path node : nodes) {
            try {
                locks.add(NodeLock.of(node));
            } catch (BusFailure e) {
                locks.forEach(NodeLock::close);
                throw e;
            }
        }
        return locks;
    }

    /** Lets the nodes go with the context. */
    private record Unlocking(List<NodeLock> locks) implements ShutdownListener {
        @Override
        public void onShutdown(ShutdownEvent event) {
            locks.forEach(NodeLock::close);
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
