package rigwarden.emulated;

import java.util.Arrays;
import rigwarden.pack.Chance;

/** Changes bytes in both directions and knows nothing of what they mean. */
record MangledPort(Port inner, double share, Chance chance) implements Port {
    @Override
    public void send(byte[] bytes, int length) {
        byte[] sent = Arrays.copyOf(bytes, length);
        Garbling.bytes(sent, 0, length, share, chance);
        inner.send(sent, length);
    }

    @Override
    public int pending() {
        return inner.pending();
    }

    @Override
    public int take(byte[] into) {
        int count = inner.take(into);
        Garbling.bytes(into, 0, count, share, chance);
        return count;
    }

    @Override
    public Port onto(Port base, VirtualClock clock) {
        return new MangledPort(inner.onto(base, clock), share, chance.copy());
    }
}
