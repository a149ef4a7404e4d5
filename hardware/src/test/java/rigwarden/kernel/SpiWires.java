package rigwarden.kernel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.emulated.SpiTarget;

/**
 * A chip on a select that is served to the kernel: it answers each byte with its complement, or as an emulated chip does, and
 * keeps what it heard. It can fail; clock and mode belong to the select, not to an opening of the node (Linux, drivers/spi/spidev.c).
 */
final class SpiWires {
    private final List<byte[]> heard = new ArrayList<>();
    private Optional<SpiTarget> chip = Optional.empty();
    private boolean fails;
    private int mode;
    private int hertz = 500_000;

    synchronized void fails(boolean now) {
        fails = now;
    }

    synchronized boolean fails() {
        return fails;
    }

    /** From now on this chip answers. */
    synchronized void chip(SpiTarget answering) {
        chip = Optional.of(answering);
    }

    synchronized byte[] exchanged(byte[] sent) {
        heard.add(sent);
        byte[] answer = new byte[sent.length];
        if (chip.isPresent()) {
            chip.get().selected(true);
            chip.get().exchanged(sent, answer, sent.length);
            chip.get().selected(false);
            return answer;
        }
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
