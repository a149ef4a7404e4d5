package rigwarden.proof;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Two pseudo-terminals that are joined, as a cable with an adapter at either end. */
final class PtyPair implements AutoCloseable {
    private static final long PATIENCE_NANOS = 20_000_000_000L;

    final Path near;
    final Path far;
    private final Process socat;

    PtyPair(Path folder, String name) throws IOException {
        near = folder.resolve(name + "-near");
        far = folder.resolve(name + "-far");
        socat = new ProcessBuilder("socat", "pty,raw,echo=0,link=" + near, "pty,raw,echo=0,link=" + far)
                .redirectErrorStream(true).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
        long end = System.nanoTime() + PATIENCE_NANOS;
        while (!Files.exists(near) || !Files.exists(far)) {
            if (System.nanoTime() > end || !socat.isAlive()) {
                throw new IOException("socat made no pair of pseudo-terminals");
            }
            LockSupport.parkNanos(5_000_000);
        }
    }

    /** Pulls the adapter. */
    void pull() {
        socat.destroyForcibly();
    }

    @Override
    public void close() throws IOException {
        try {
            socat.destroyForcibly().waitFor(10, TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        socat.getOutputStream().close();
        socat.getInputStream().close();
    }
}
