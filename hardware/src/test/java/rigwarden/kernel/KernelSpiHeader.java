package rigwarden.kernel;

import com.pi4j.context.Context;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.function.BooleanSupplier;
import rigwarden.bus.BusFailure;
import rigwarden.bus.RealBoard;

/**
 * The SPI nodes of the emulated arm64 board, served by {@link CuseDevice}, opened by the code that opens a rig's board. Nothing within
 * the board can drive one of its inputs: its power key, pressed from the monitor, stands in for a converter's ready pin.
 */
final class KernelSpiHeader implements SpiHeader {
    private static final Path DEVICES = Path.of("/dev");
    private static final Path NODE = DEVICES.resolve("spidev0.0");

    private final SpiWires wires;

    private KernelSpiHeader(SpiWires wires) {
        this.wires = wires;
    }

    /** One that is only asked for its sentences. */
    static KernelSpiHeader notServed() {
        return new KernelSpiHeader(new SpiWires());
    }

    /** Serves bus 0's first select, and bus 1's, and waits for their nodes. */
    static KernelSpiHeader served() throws IOException, InterruptedException {
        SpiWires wires = new SpiWires();
        for (String name : List.of("spidev0.0", "spidev1.0")) {
            CuseDevice.serve(name, () -> new SpiDevNode(wires));
            while (!Files.exists(DEVICES.resolve(name))) {
                Thread.sleep(10);
            }
        }
        return new KernelSpiHeader(wires);
    }

    @Override
    public Context open() throws BusFailure {
        return RealBoard.open(List.of(), DEVICES, OptionalInt.of(0));
    }

    @Override
    public SpiSocket socket() {
        return wires.socket();
    }

    @Override
    public void fails(boolean now) {
        wires.fails(now);
    }

    @Override
    public OptionalInt hertz() {
        return OptionalInt.of(wires.hertz());
    }

    @Override
    public OptionalLong openings() throws IOException {
        long count = 0;
        try (DirectoryStream<Path> descriptors = Files.newDirectoryStream(Path.of("/proc/self/fd"))) {
            for (Path descriptor : descriptors) {
                count += Files.readSymbolicLink(descriptor).equals(NODE) ? 1 : 0;
            }
        }
        return OptionalLong.of(count);
    }

    @Override
    public int readyLine() {
        return ContractRig.LOOP;
    }

    @Override
    public boolean ready(BooleanSupplier pinHigh) {
        return false;
    }

    @Override
    public void raise() {
        System.out.println(GuestBoard.ASK + "system_powerdown");
    }
}
