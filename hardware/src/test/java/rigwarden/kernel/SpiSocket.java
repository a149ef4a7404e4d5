package rigwarden.kernel;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rigwarden.emulated.SpiTarget;

/** A chip that answers each byte with its complement, or as the chip does that was put in; it keeps what it heard, and in which mode. */
final class SpiSocket implements SpiTarget {
    private final List<byte[]> heard = new ArrayList<>();
    private Optional<SpiTarget> chip = Optional.empty();
    private int mode;

    /** From now on this chip answers. */
    synchronized void put(SpiTarget answering) {
        chip = Optional.of(answering);
    }

    synchronized void empty() {
        chip = Optional.empty();
    }

    synchronized byte[] lastHeard() {
        return heard.getLast();
    }

    /** Mode of the last message. */
    synchronized int mode() {
        return mode;
    }

    @Override
    public synchronized boolean understands(int asked) {
        mode = asked;
        return chip.isEmpty() || chip.get().understands(asked);
    }

    @Override
    public synchronized void selected(boolean active) {
        chip.ifPresent(one -> one.selected(active));
    }

    @Override
    public synchronized int exchanged(byte[] sent, byte[] driven, int length) {
        heard.add(sent.clone());
        if (chip.isPresent()) {
            return chip.get().exchanged(sent, driven, length);
        }
        for (int i = 0; i < length; i++) {
            driven[i] = (byte) ~sent[i];
        }
        return length;
    }
}
