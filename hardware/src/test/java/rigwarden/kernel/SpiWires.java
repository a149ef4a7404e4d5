package rigwarden.kernel;

import java.util.Arrays;

/**
 * A select that is served to the kernel, and the chip on it. It can fail; clock and mode belong to the select, not to an opening
 * of the node (Linux, drivers/spi/spidev.c).
 */
final class SpiWires {
    private final SpiSocket socket = new SpiSocket();
    private boolean fails;
    private int mode;
    private int hertz = 500_000;

    SpiSocket socket() {
        return socket;
    }

    synchronized void fails(boolean now) {
        fails = now;
    }

    synchronized boolean fails() {
        return fails;
    }

    /**
     * One message. The bits of a chip that is spoken to in another mode than its own are not put one late here, as the emulated provider
     * does: it answers nothing.
     */
    synchronized byte[] exchanged(byte[] sent) {
        byte[] answer = new byte[sent.length];
        Arrays.fill(answer, (byte) 0xFF);
        if (socket.understands(mode)) {
            socket.selected(true);
            socket.exchanged(sent, answer, sent.length);
            socket.selected(false);
        }
        return answer;
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
