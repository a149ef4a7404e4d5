package rigwarden.emulated;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rigwarden.pack.Chance;

/** One kind of communication error on one I2C bus, for a share of its transfers. */
final class BusErrors implements Wire {
    private static final int WIDEST = 8;
    private static final int REGISTERS = 256;

    /** One transfer that is under way, or was. */
    private record Message(long nanos, int address, byte[] bytes) {}

    private final Wire inner;
    private final VirtualClock clock;
    private final List<Integer> addresses;
    private final WireError error;
    private final double share;
    private final long delayNanos;
    private final Chance chance;
    private final int[] pointers = new int[0x80];
    private final Map<Integer, Deque<Message>> past = new HashMap<>();
    private final Deque<Message> waiting = new ArrayDeque<>();

    /**
     * None before the first transfer.
     *
     * @param addresses where chips are on this bus
     * @param share of transfers, 0…1
     * @param delayNanos by which a late message is late; nothing for other errors
     */
    BusErrors(Wire inner, VirtualClock clock, List<Integer> addresses, WireError error, double share, long delayNanos,
            Chance chance) {
        this.inner = inner;
        this.clock = clock;
        this.addresses = addresses;
        this.error = error;
        this.share = share;
        this.delayNanos = delayNanos;
        this.chance = chance;
    }

    @Override
    public Wire onto(Wire base, VirtualClock newClock) {
        BusErrors copy = new BusErrors(inner.onto(base, newClock), newClock, addresses, error, share, delayNanos, chance.copy());
        System.arraycopy(pointers, 0, copy.pointers, 0, pointers.length);
        past.forEach((key, messages) -> copy.past.put(key, new ArrayDeque<>(messages)));
        copy.waiting.addAll(waiting);
        return copy;
    }

    private boolean hit() {
        return chance.nextDouble() < share;
    }

    @Override
    public int written(int address, byte[] bytes, int offset, int length) {
        if (length > 0) {
            pointers[address] = bytes[offset] & 0xFF;
        }
        deliver(false);
        if (!hit()) {
            return inner.written(address, bytes, offset, length);
        }
        byte[] sent = Arrays.copyOfRange(bytes, offset, offset + length);
        boolean order = length > 1;
        return switch (error) {
            case CORRUPTION -> {
                Garbling.bits(sent, 0, length, chance);
                yield inner.written(address, sent, 0, length);
            }
            case REPETITION -> {
                inner.written(address, sent, 0, length);
                yield inner.written(address, sent, 0, length);
            }
            case WRONG_SEQUENCE, DELAY -> order ? held(address, sent) : inner.written(address, sent, 0, length);
            case LOSS -> chance.nextBoolean() ? -1 : length;
            case INSERTION -> {
                int answered = inner.written(address, sent, 0, length);
                byte[] strange = {(byte) chance.nextInt(), (byte) chance.nextInt(), (byte) chance.nextInt()};
                inner.written(address, strange, 0, strange.length);
                inner.written(address, sent, 0, 1);
                yield answered;
            }
            case MASQUERADE -> inner.written(address, sent, 0, length);
            case ADDRESSING -> inner.written(other(address), sent, 0, length);
        };
    }

    /** An order that is acknowledged now and carried out later. */
    private int held(int address, byte[] sent) {
        waiting.add(new Message(clock.nanos() + delayNanos, address, sent));
        if (error == WireError.WRONG_SEQUENCE && waiting.size() > 1) {
            deliver(true);
        }
        return sent.length;
    }

    private void deliver(boolean all) {
        while (!waiting.isEmpty() && (all || error == WireError.DELAY && waiting.getFirst().nanos() <= clock.nanos())) {
            Message late = all ? waiting.removeLast() : waiting.removeFirst();
            inner.written(late.address(), late.bytes(), 0, late.bytes().length);
        }
    }

    @Override
    public int read(int address, byte[] into, int offset, int length) {
        if (!hit()) {
            int count = inner.read(address, into, offset, length);
            remember(address, into, offset, count);
            return count;
        }
        return switch (error) {
            case CORRUPTION -> {
                int count = inner.read(address, into, offset, length);
                Garbling.bits(into, offset, count, chance);
                yield count;
            }
            case REPETITION -> old(address, into, offset, length, 0);
            case WRONG_SEQUENCE -> {
                byte[] now = new byte[length];
                int count = inner.read(address, now, 0, length);
                if (!past.containsKey(register(address))) {
                    remember(address, now, 0, count);
                }
                int given = count < 0 ? count : old(address, into, offset, length, 0);
                remember(address, now, 0, count);
                yield given;
            }
            case LOSS -> {
                Arrays.fill(into, offset, offset + length, (byte) 0xFF);
                yield chance.nextBoolean() ? -1 : length;
            }
            case DELAY -> {
                byte[] now = new byte[length];
                remember(address, now, 0, inner.read(address, now, 0, length));
                yield old(address, into, offset, length, delayNanos);
            }
            case INSERTION -> {
                byte[] now = new byte[Math.max(length, WIDEST)];
                int count = inner.read(address, now, 0, length);
                into[offset] = (byte) chance.nextInt();
                System.arraycopy(now, 0, into, offset + 1, length - 1);
                yield count;
            }
            case MASQUERADE -> {
                int other = other(address);
                byte[] asked = {(byte) (other == address ? pointers[address] + 1 : pointers[address])};
                inner.written(other, asked, 0, 1);
                int count = inner.read(other, into, offset, length);
                asked[0] = (byte) pointers[address];
                inner.written(address, asked, 0, 1);
                yield count;
            }
            case ADDRESSING -> inner.read(other(address), into, offset, length);
        };
    }

    /** Another chip of this bus; the same where it is alone. */
    private int other(int address) {
        int place = addresses.indexOf(address);
        return addresses.isEmpty() ? address : addresses.get((place + 1 + chance.nextInt(Math.max(1, addresses.size() - 1))) % addresses.size());
    }

    private int register(int address) {
        return address * REGISTERS + pointers[address];
    }

    private void remember(int address, byte[] bytes, int offset, int count) {
        if (count > 0) {
            Deque<Message> messages = past.computeIfAbsent(register(address), _ -> new ArrayDeque<>());
            messages.add(new Message(clock.nanos(), address, Arrays.copyOfRange(bytes, offset, offset + count)));
            while (messages.size() > 1 && second(messages).nanos() <= clock.nanos() - delayNanos) {
                messages.removeFirst();
            }
        }
    }

    private static Message second(Deque<Message> messages) {
        var all = messages.iterator();
        all.next();
        return all.next();
    }

    /** What the same register answered so long ago, or the oldest that is known; without any, what it answers now. */
    private int old(int address, byte[] into, int offset, int length, long nanos) {
        Deque<Message> messages = past.get(register(address));
        if (messages == null) {
            int count = inner.read(address, into, offset, length);
            remember(address, into, offset, count);
            return count;
        }
        Message found = messages.getFirst();
        for (Message message : messages) {
            found = message.nanos() <= clock.nanos() - nanos ? message : found;
        }
        int count = Math.min(length, found.bytes().length);
        System.arraycopy(found.bytes(), 0, into, offset, count);
        return count;
    }
}
