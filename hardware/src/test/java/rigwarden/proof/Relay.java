package rigwarden.proof;

import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Random;
import java.util.concurrent.locks.LockSupport;

/** Carries bytes between two pseudo-terminals in both directions, and garbles them when told to. */
final class Relay implements AutoCloseable {
    private static final double GARBLED_SHARE = 0.4;

    private final Thread thread;
    private final Random random;
    private volatile boolean garbles;
    private volatile boolean ending;

    Relay(Path near, Path far, long seed) {
        random = new Random(seed);
        thread = Thread.ofPlatform().daemon().name("relay").start(() -> run(near, far));
    }

    void garble() {
        garbles = true;
    }

    private void run(Path near, Path far) {
        try (FileInputStream fromNear = new FileInputStream(near.toFile());
                FileOutputStream toNear = new FileOutputStream(near.toFile());
                FileInputStream fromFar = new FileInputStream(far.toFile());
                FileOutputStream toFar = new FileOutputStream(far.toFile())) {
            while (!ending) {
                boolean forth = carry(fromNear, toFar);
                boolean back = carry(fromFar, toNear);
                if (!forth && !back) {
                    LockSupport.parkNanos(500_000);
                }
            }
        } catch (IOException e) {
            ending = true;
        }
    }

    private boolean carry(FileInputStream from, FileOutputStream to) throws IOException {
        int count = from.available();
        if (count == 0) {
            return false;
        }
        byte[] bytes = from.readNBytes(count);
        for (int i = 0; garbles && i < bytes.length; i++) {
            if (random.nextDouble() < GARBLED_SHARE) {
                bytes[i] = (byte) random.nextInt();
            }
        }
        to.write(bytes);
        return true;
    }

    @Override
    public void close() {
        ending = true;
        try {
            thread.join(10_000);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
