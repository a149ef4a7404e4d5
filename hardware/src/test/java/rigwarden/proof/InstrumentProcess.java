package rigwarden.proof;

import java.io.BufferedReader;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;
import rigwarden.emulated.FarEnd;
import rigwarden.emulated.ScpiInstrument;
import rigwarden.emulated.Terminals;
import rigwarden.loop.RealClock;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;
import rigwarden.rigfile.Read;
import rigwarden.rigfile.RigFile;

/**
 * An emulated instrument as a process of its own on a pseudo-terminal. Its power leads are its standard input (volts and
 * amperes) and output (on, volts, amperes): what it was last told stays in force when this process stands still or dies.
 */
final class InstrumentProcess {
    private static final long STILL_NANOS = 3_000_000;

    /** The power leads. */
    private static final class Leads implements Terminals {
        private volatile double volts;
        private volatile double amps;
        private String said = "";

        @Override
        public void order(boolean on, double newVolts, double newAmps) {
            String now = String.format(Locale.ROOT, "%d %.6f %.6f", on ? 1 : 0, newVolts, newAmps);
            if (!now.equals(said)) {
                said = now;
                System.out.println(now);
                System.out.flush();
            }
        }

        @Override
        public double volts() {
            return volts;
        }

        @Override
        public double amps() {
            return amps;
        }

        void feel() {
            try (BufferedReader in = new BufferedReader(new InputStreamReader(System.in, StandardCharsets.US_ASCII))) {
                for (String line = in.readLine(); line != null; line = in.readLine()) {
                    String[] words = line.split(" ", -1);
                    volts = Double.parseDouble(words[0]);
                    amps = Double.parseDouble(words[1]);
                }
                System.exit(0);
            } catch (IOException e) {
                System.exit(1);
            }
        }
    }

    private InstrumentProcess() {}

    /** Words that start such a process. */
    static List<String> command(Path rigFile, int device, Path port) {
        return List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx64m", "-XX:+UseSerialGC",
                "-XX:TieredStopAtLevel=1", "-XX:-UsePerfData", "-cp", System.getProperty("java.class.path"),
                InstrumentProcess.class.getName(), rigFile.toString(), Integer.toString(device), port.toString());
    }

    public static void main(String[] arguments) throws Exception {
        Rig rig = ((Read.Sound<Rig>) RigFile.read(Path.of(arguments[0]))).value();
        Device.Programmed device = (Device.Programmed) rig.devices().get(Integer.parseInt(arguments[1]));
        Leads leads = new Leads();
        FarEnd end = FarEnd.of(device, leads, ScpiInstrument.Errors.NONE, new RealClock());
        Thread.ofPlatform().daemon().start(leads::feel);
        leads.order(false, 0, 0);
        try (FileInputStream in = new FileInputStream(arguments[2]);
                FileOutputStream out = new FileOutputStream(arguments[2])) {
            serve(end, in, out);
        } catch (IOException e) {
            LockSupport.park();
        }
    }

    private static void serve(FarEnd end, FileInputStream in, FileOutputStream out) throws IOException {
        byte[] answer = new byte[4096];
        long last = System.nanoTime();
        for (boolean open = false; ; ) {
            int count = in.available();
            long now = System.nanoTime();
            if (count > 0) {
                byte[] bytes = in.readNBytes(count);
                end.receive(bytes, bytes.length);
                last = now;
                open = true;
            } else if (open && now - last > STILL_NANOS) {
                end.still();
                open = false;
            } else {
                LockSupport.parkNanos(500_000);
            }
            end.protect();
            if (end.pending() > 0) {
                out.write(answer, 0, end.take(answer));
            }
        }
    }
}
