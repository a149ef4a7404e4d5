package rigwarden.proof;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import rigwarden.emulated.Terminals;

/** One instrument in a process of its own, its cable, and its power leads into the emulated rig of this process. */
final class OutsideInstrument implements AutoCloseable {
    private final PtyPair near;
    private final PtyPair far;
    private final Relay relay;
    private final Process process;
    private final Writer feels;
    private final Thread orders;
    private final AtomicReference<String> ordered = new AtomicReference<>("");
    private String carried = "";

    OutsideInstrument(Path folder, Path rigFile, int device, long seed) throws IOException {
        near = new PtyPair(folder, "near" + device);
        far = new PtyPair(folder, "far" + device);
        relay = new Relay(/* near= */ near.far, /* far= */ far.near, seed);
        process = new ProcessBuilder(InstrumentProcess.command(rigFile, device, far.far))
                .redirectError(ProcessBuilder.Redirect.INHERIT).start();
        feels = process.outputWriter(StandardCharsets.US_ASCII);
        orders = Thread.ofPlatform().daemon().name("leads").start(this::listen);
    }

    Path port() {
        return near.near;
    }

    /** Whether it has said its first order, which is none. */
    boolean ready() {
        return !ordered.get().isEmpty();
    }

    private void listen() {
        try (BufferedReader said = new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.US_ASCII))) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                ordered.set(line);
            }
        } catch (IOException e) {
            ordered.get();
        }
    }

    /** Carries over what it was ordered and what it feels, on the control thread. */
    void carry(Terminals terminals) {
        String now = ordered.get();
        if (!now.equals(carried)) {
            carried = now;
            String[] words = now.split(" ", -1);
            terminals.order(words[0].equals("1"), Double.parseDouble(words[1]), Double.parseDouble(words[2]));
        }
        try {
            feels.write(String.format(Locale.ROOT, "%.5f %.5f%n", terminals.volts(), terminals.amps()));
            feels.flush();
        } catch (IOException e) {
            carried = now;
        }
    }

    /** Something is done to it from outside. */
    void suffer(Suffering how) throws IOException {
        switch (how) {
            case STOPPED -> signal("STOP");
            case KILLED -> process.destroyForcibly();
            case GARBLED -> relay.garble();
            case UNPLUGGED -> near.pull();
        }
    }

    private void signal(String name) throws IOException {
        try {
            new ProcessBuilder("kill", "-" + name, Long.toString(process.pid())).inheritIO().start().waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() throws IOException {
        relay.close();
        try {
            process.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
            orders.join(10_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        try {
            feels.close();
        } catch (IOException e) {
            process.getOutputStream().close();
        }
        process.getErrorStream().close();
        near.close();
        far.close();
    }
}
