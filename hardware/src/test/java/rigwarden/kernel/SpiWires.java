package rigwarden.kernel;

import java.util.ArrayList;
import java.util.List;

/**
 * A chip on a select that is served to the kernel: it answers each byte with its complement and keeps what it heard. It can
 * fail; clock and mode belong to the select, not to an opening of the node (Linux, drivers/spi/spidev.c).
 */
final class SpiWires {
    private final List<byte[]> heard = new ArrayList<>();
    private boolean fails;
    private int mode;
    private int hertz = 500_000;

    synchronized void fails(boolean now) {
        fails = now;
    }

    synchronized boolean fails() {
        return fails;
    }

    synchronized byte[] exchanged(byte[] sent) {
        heard.add(sent);
        byte[] answer = new byte[sent.length];
        for (int i = 0; i < sent.length; i++) {
            answer[i] = (byte) ~sent[i];
        }
        return answer;
    }

    synchronized byte[] lastHeard() {
        return heard.getLast();
    }

    synchronized int mode() {
        return mode;
    }

    synchronized void mode(int bits) {
        mode = bits;
    }

    synchronized int hertz() {
        return hertz;
    }

    synchronized void hertz(int clock) {
        hertz = clock;
    }
}
