package rigwarden.kernel;

import com.pi4j.context.Context;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import rigwarden.bus.BusFailure;
import rigwarden.bus.RealBoard;
import rigwarden.emulated.I2cTarget;

/**
 * The header of the emulated arm64 board: the kernel's own gpiochip0, and I2C nodes served by {@link CuseDevice}. It is
 * opened by the very code that opens a rig's board. A level is what the kernel's debugfs reads from the controller's
 * register for a line that is claimed, and what Debian's {@code gpioget --as-is} says of one that is not.
 */
final class KernelHeader implements Header {
    private static final Path LINES = Path.of("/sys/kernel/debug/gpio");
    private static final Pattern FIRST = Pattern.compile("gpiochip0: GPIOs (\\d+)-");

    private final I2cWires wires;
    private final int first;

    private KernelHeader(I2cWires wires, int first) {
        this.wires = wires;
        this.first = first;
    }

    /** One that is only asked for its sentences. */
    static KernelHeader notServed() {
        return new KernelHeader(new I2cWires(), 0);
    }

    /** Serves the bus and waits until its node is there. */
    static KernelHeader served() throws IOException, InterruptedException {
        I2cWires wires = new I2cWires();
        CuseDevice.serve("i2c-" + BUS, () -> new I2cNode(wires));
        Path node = Path.of("/dev/i2c-" + BUS);
        while (!Files.exists(node)) {
            Thread.sleep(10);
        }
        Matcher matcher = FIRST.matcher(Files.readString(LINES));
        if (!matcher.find()) {
            throw new IOException("no gpiochip0 in " + Files.readString(LINES));
        }
        return new KernelHeader(wires, Integer.parseInt(matcher.group(1)));
    }

    @Override
    public Context open() throws BusFailure {
        return RealBoard.open(List.of("i2c-" + BUS), Path.of("/dev"), OptionalInt.of(0));
    }

    @Override
    public boolean claimed(int line) throws IOException {
        return listed(line).filter(text -> text.contains(" out ")).isPresent();
    }

    @Override
    public boolean high(int line) throws Exception {
        Optional<String> listed = listed(line);
        return listed.isPresent() ? listed.get().contains(" hi") : asIs(line);
    }

    /** The kernel's own line about a claimed line. */
    Optional<String> listed(int line) throws IOException {
        String start = " gpio-" + (first + line) + " ";
        return Files.readString(LINES).lines().filter(text -> text.startsWith(start)).findFirst();
    }

    private static boolean asIs(int line) throws Exception {
        Process gpioget = new ProcessBuilder("gpioget", "--as-is", "--numeric", "--chip", "gpiochip0", Integer.toString(line))
                .redirectErrorStream(true).start();
        String said = new String(gpioget.getInputStream().readAllBytes(), StandardCharsets.US_ASCII).strip();
        if (gpioget.waitFor() != 0) {
            throw new IOException("gpioget: " + said);
        }
        return said.equals("1");
    }

    @Override
    public void pulse() {
        System.out.println(GuestBoard.ASK + "system_powerdown");
    }

    @Override
    public void put(int address, I2cTarget chip) {
        wires.put(address, chip);
    }

    @Override
    public void held(int address, boolean holds) {
        wires.held(address, holds);
    }

    @Override
    public long combined() {
        return wires.combined();
    }
}
