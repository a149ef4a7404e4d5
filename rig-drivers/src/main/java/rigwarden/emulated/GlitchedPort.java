package rigwarden.emulated;

import java.util.Arrays;
import java.util.concurrent.atomic.AtomicLong;
import rigwarden.pack.Chance;

/** Turns one to four bits of one message in every so many, in either direction; two that follow each other never. */
final class GlitchedPort implements Port {
    private final Port inner;
    private final int every;
    private final AtomicLong glitches;
    private final Chance chance;
    private int left;
    private byte[] arrived = {};

    GlitchedPort(Port inner, int every, AtomicLong glitches, Chance chance) {
        this.inner = inner;
        this.every = every;
        this.glitches = glitches;
        this.chance = chance;
        left = every;
    }

    private boolean hit() {
        left--;
        if (left > 0) {
            return false;
        }
        left = every / 2 + chance.nextInt(every);
        glitches.incrementAndGet();
        return true;
    }

    @Override
    public void send(byte[] bytes, int length) {
        byte[] sent = Arrays.copyOf(bytes, length);
        if (hit()) {
            Garbling.bits(sent, 0, length, chance);
        }
        inner.send(sent, length);
    }

    @Override
    public int pending() {
        int count = inner.pending();
        if (count > 0) {
            byte[] said = new byte[count];
            inner.take(said);
            if (hit()) {
                Garbling.bits(said, 0, count, chance);
            }
            int before = arrived.length;
            arrived = Arrays.copyOf(arrived, before + count);
            System.arraycopy(said, 0, arrived, before, count);
        }
        return arrived.length;
    }

    @Override
    public int take(byte[] into) {
        int count = Math.min(into.length, pending());
        System.arraycopy(arrived, 0, into, 0, count);
        arrived = Arrays.copyOfRange(arrived, count, arrived.length);
        return count;
    }

    @Override
    public Port onto(Port base, VirtualClock clock) {
        GlitchedPort copy = new GlitchedPort(inner.onto(base, clock), every, new AtomicLong(glitches.get()), chance.copy());
        copy.left = left;
        copy.arrived = arrived.clone();
        return copy;
    }
}
