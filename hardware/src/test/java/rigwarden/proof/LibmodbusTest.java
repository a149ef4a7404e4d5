package rigwarden.proof;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rigwarden.loop.RealClock;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;
import rigwarden.serial.AgentState;
import rigwarden.serial.AgentThread;
import rigwarden.serial.Characters;
import rigwarden.serial.Heard;
import rigwarden.serial.InstrumentAgent;
import rigwarden.serial.JSerialLine;
import rigwarden.serial.Order;
import rigwarden.warden.Setpoint;

/** The agent against a slave that none of us wrote: Debian's libmodbus, over a pseudo-terminal. */
class LibmodbusTest {
    private static final Path SOURCE = Path.of("src", "test", "c", "station.c");
    private static final long PATIENCE_NANOS = 30_000_000_000L;

    @TempDir
    private Path folder;

    private String compiled() throws IOException, InterruptedException {
        Path program = folder.resolve("station");
        String words = "cc -Wall -Werror -o " + program + " " + SOURCE.toAbsolutePath() + " $(pkg-config --cflags --libs libmodbus)";
        Process compiler = new ProcessBuilder("sh", "-c", words).inheritIO().start();
        assertThat(compiler.waitFor()).as("`hardware/prepare tests` installs what this needs").isZero();
        return program.toString();
    }

    private static boolean comes(BooleanSupplier what) {
        long end = System.nanoTime() + PATIENCE_NANOS;
        while (!what.getAsBoolean() && System.nanoTime() < end) {
            LockSupport.parkNanos(10_000_000);
        }
        return what.getAsBoolean();
    }

    private static boolean says(InstrumentAgent agent, boolean on, double amps) {
        return agent.heard() instanceof Heard.Answer answer && answer.on() == on && Math.abs(answer.amps() - amps) < 0.001;
    }

    @Test
    void orders_limits_and_polls_are_understood_by_another_implementation() throws Exception {
        Rig rig = ((Read.Sound<Rig>) RigFile.read(Bench.RIGS.resolve("one-cell-modbus.toml"))).value();
        Device.Programmed source = (Device.Programmed) rig.devices().getFirst();
        RealClock clock = new RealClock();
        try (PtyPair cable = new PtyPair(folder, "cable")) {
            Process station = new ProcessBuilder(compiled(), cable.far.toString()).redirectError(ProcessBuilder.Redirect.INHERIT).start();
            JSerialLine line = new JSerialLine(cable.near.toString(), Characters.of(source.instrument()));
            InstrumentAgent agent = InstrumentAgent.of(rig, source, line, AgentState.at(clock.nanos()));
            try (BufferedReader said = station.inputReader()) {
                assertThat(said.readLine()).isEqualTo("ready");
                List<String> complaints = new CopyOnWriteArrayList<>();
                boolean idle;
                boolean flowing;
                boolean off;
                try (AgentThread thread = AgentThread.start(agent, clock, "source",
                        complaint -> complaints.add(complaint.words()))) {
                    assertThat(thread).isNotNull();
                    idle = comes(() -> says(agent, false, 0));
                    agent.order(new Order.On(new Setpoint(10.25, 3.5)));
                    flowing = comes(() -> says(agent, true, 10.25));
                    agent.order(Order.OFF);
                    off = comes(() -> says(agent, false, 0));
                }
                station.toHandle().destroy();
                List<String> seen = said.lines().toList();

                assertThat(List.of(idle, flowing, off)).containsOnly(true);
                assertThat(seen).contains("1 3500 1025 3650 20").first().isEqualTo("0 0 0 0 0");
                assertThat(seen.indexOf("0 0 0 3650 20")).isBetween(0, seen.indexOf("1 3500 1025 3650 20"));
                assertThat(seen.getLast()).startsWith("0 ");
                assertThat(complaints).isEmpty();
            } finally {
                station.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
            }
        }
    }
}
