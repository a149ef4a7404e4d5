package rigwarden.kernel;

import static org.assertj.core.api.Assertions.assertThat;

import com.pi4j.Pi4J;
import com.pi4j.library.gpiod.internal.GpioD;
import com.pi4j.library.linuxfs.LinuxFile;
import com.pi4j.plugin.gpiod.provider.gpio.digital.GpioDDigitalOutputProvider;
import com.pi4j.plugin.linuxfs.provider.i2c.LinuxFsI2CProvider;
import com.sun.jna.Native;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.assertj.core.api.Assertions;
import org.slf4j.Logger;
import rigwarden.bus.RealBoard;
import rigwarden.rig.Rig;

/** Makes the emulated board's disks: Debian's packages once, the program under test each time. */
final class BoardDisks {
    private static final List<String> TOOLS =
            List.of("qemu-system-aarch64", "mmdebstrap", "mke2fs", "cpio", "xz", "sha256sum");
    /** One class of each place on the class path that the board's program needs. */
    private static final List<Class<?>> NEEDED = List.of(ContractMain.class, RealBoard.class, Rig.class, Pi4J.class,
            GpioD.class, LinuxFile.class, GpioDDigitalOutputProvider.class, LinuxFsI2CProvider.class, Native.class,
            Logger.class, Assertions.class);

    private BoardDisks() {}

    /** Programs that this machine lacks. */
    static List<String> missing() {
        List<Path> places = Stream.concat(Stream.of(System.getenv("PATH").split(":")), Stream.of("/usr/sbin", "/sbin")).map(Path::of).toList();
        return TOOLS.stream().filter(tool -> places.stream().noneMatch(place -> Files.isExecutable(place.resolve(tool)))).toList();
    }

    /** Makes kernel, initrd.gz and root.img in a folder, unless they are there. */
    static void image(Path folder) throws IOException, InterruptedException {
        run("sh", "qemu/image", folder.toString());
    }

    /** Makes the disk with classes and libraries; the old one goes. */
    static Path program(Path folder) throws IOException, InterruptedException, URISyntaxException {
        Path root = folder.resolve("program");
        Path disk = folder.resolve("program.img");
        run("rm", "-rf", root.toString(), disk.toString());
        Files.createDirectories(root.resolve("lib"));
        Files.copy(Path.of("qemu/start"), root.resolve("start"));
        int number = 10;
        for (Path place : (Iterable<Path>) places()::iterator) {
            String name = place.getFileName().toString();
            run("cp", "-r", place.toString(), root.resolve("lib/" + number++ + (name.endsWith(".jar") ? "-" + name : "")).toString());
        }
        run("mke2fs", "-q", "-t", "ext4", "-O", "^has_journal", "-L", "program", "-d", root.toString(), disk.toString(), "48M");
        return disk;
    }

    private static Stream<Path> places() throws URISyntaxException {
        List<Path> places = new ArrayList<>();
        for (Class<?> type : NEEDED) {
            places.add(Path.of(type.getProtectionDomain().getCodeSource().getLocation().toURI()));
        }
        Optional<Path> silent = Stream.of(System.getProperty("java.class.path").split(":")).map(Path::of)
                .filter(path -> path.toString().contains("slf4j-nop")).findFirst();
        silent.ifPresent(places::add);
        return places.stream().distinct();
    }

    private static void run(String... words) throws IOException, InterruptedException {
        ProcessBuilder builder = new ProcessBuilder(words).redirectErrorStream(true);
        builder.environment().merge("PATH", ":/usr/sbin:/sbin", String::concat);
        Process process = builder.start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as("%s said: %s", String.join(" ", words), said).isZero();
        said.lines().filter(line -> words[0].equals("sh")).forEach(System.out::println);
    }
}
