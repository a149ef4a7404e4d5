package rigwarden.emulated;

import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import rigwarden.pack.Chance;

/** One kind of communication error on one instrument's port, for a share of its messages in either direction. */
final class PortErrors implements Port {
    private static final int KEPT = 32;
    private static final int LONGEST = 4096;
    /** Lines such as another instrument on such a port would hear, or say. */
    private static final List<byte[]> STRANGE_ORDERS = lines("OUTP ON", "SYST:ERR?", "VOLT 5", "*RST", "CURR 100");
    private static final List<byte[]> STRANGE_ANSWERS = lines("12.00;1.500;1;0", "0;0;0;0", "READY", "9.91E37;9.91E37;1;0");

    private record Message(long nanos, byte[] bytes) {}

    private final Port inner;
    private final VirtualClock clock;
    private final WireError error;
    private final double share;
    private final long delayNanos;
    private final Chance chance;
    private final List<byte[]> orders = new ArrayList<>();
    private final List<byte[]> answers = new ArrayList<>();
    private final Deque<Message> lateOrders = new ArrayDeque<>();
    private final Deque<Message> lateAnswers = new ArrayDeque<>();
    private final Deque<byte[]> arrived = new ArrayDeque<>();

    PortErrors(Port inner, VirtualClock clock, WireError error, double share, long delayNanos, Chance chance) {
        this.inner = inner;
        this.clock = clock;
        this.error = error;
        this.share = share;
        this.delayNanos = delayNanos;
        this.chance = chance;
    }

    private static List<byte[]> lines(String... words) {
        return Arrays.stream(words).map(w -> (w + '\n').getBytes(StandardCharsets.US_ASCII)).toList();
    }

    @Override
    public Port onto(Port base, VirtualClock newClock) {
        PortErrors copy = new PortErrors(inner.onto(base, newClock), newClock, error, share, delayNanos, chance.copy());
        copy.orders.addAll(orders);
        copy.answers.addAll(answers);
        copy.lateOrders.addAll(lateOrders);
        copy.lateAnswers.addAll(lateAnswers);
        copy.arrived.addAll(arrived);
        return copy;
    }

    @Override
    public void send(byte[] bytes, int length) {
        byte[] sent = Arrays.copyOf(bytes, length);
        deliver();
        if (chance.nextDouble() < share) {
            meddle(sent);
        } else {
            pass(sent);
        }
        keep(orders, sent);
    }

    private void pass(byte[] sent) {
        inner.send(sent, sent.length);
    }

    private void meddle(byte[] sent) {
        switch (error) {
            case CORRUPTION -> {
                Garbling.bits(sent, 0, sent.length, chance);
                pass(sent);
            }
            case REPETITION -> {
                pass(sent);
                pass(any(orders, sent));
            }
            case WRONG_SEQUENCE -> {
                lateOrders.add(new Message(Long.MAX_VALUE, sent));
                if (lateOrders.size() > 1) {
                    pass(lateOrders.removeLast().bytes());
                    pass(lateOrders.removeLast().bytes());
                }
            }
            case LOSS -> { }
            case DELAY -> lateOrders.add(new Message(clock.nanos() + delayNanos, sent));
            case INSERTION -> {
                pass(any(STRANGE_ORDERS, sent));
                pass(sent);
            }
            case MASQUERADE, ADDRESSING -> pass(any(STRANGE_ORDERS, sent));
        }
    }

    private byte[] any(List<byte[]> list, byte[] otherwise) {
        return list.isEmpty() ? otherwise : list.get(chance.nextInt(list.size()));
    }

    private static void keep(List<byte[]> list, byte[] one) {
        list.add(one);
        if (list.size() > KEPT) {
            list.removeFirst();
        }
    }

    private void deliver() {
        while (!lateOrders.isEmpty() && lateOrders.getFirst().nanos() <= clock.nanos()) {
            pass(lateOrders.removeFirst().bytes());
        }
    }

    /** Takes what the instrument has said, and lets each answer arrive as it may. */
    private void hear() {
        deliver();
        while (inner.pending() > 0) {
            byte[] room = new byte[LONGEST];
            byte[] said = Arrays.copyOf(room, inner.take(room));
            if (chance.nextDouble() < share) {
                twist(said);
            } else {
                arrived.add(said);
            }
            keep(answers, said);
        }
        while (!lateAnswers.isEmpty() && lateAnswers.getFirst().nanos() <= clock.nanos()) {
            arrived.add(lateAnswers.removeFirst().bytes());
        }
    }

    private void twist(byte[] said) {
        switch (error) {
            case CORRUPTION -> {
                Garbling.bits(said, 0, said.length, chance);
                arrived.add(said);
            }
            case REPETITION -> arrived.add(answers.isEmpty() ? said : answers.getLast());
            case WRONG_SEQUENCE -> {
                arrived.add(answers.isEmpty() ? said : answers.getFirst());
                answers.clear();
            }
            case LOSS -> { }
            case DELAY -> lateAnswers.add(new Message(clock.nanos() + delayNanos, said));
            case INSERTION -> {
                arrived.add(any(STRANGE_ANSWERS, said));
                arrived.add(said);
            }
            case MASQUERADE, ADDRESSING -> arrived.add(any(STRANGE_ANSWERS, said));
        }
    }

    @Override
    public int pending() {
        hear();
        return arrived.stream().mapToInt(bytes -> bytes.length).sum();
    }

    @Override
    public int take(byte[] into) {
        hear();
        int count = 0;
        while (!arrived.isEmpty() && count < into.length) {
            byte[] next = arrived.removeFirst();
            int part = Math.min(next.length, into.length - count);
            System.arraycopy(next, 0, into, count, part);
            count += part;
            if (part < next.length) {
                arrived.addFirst(Arrays.copyOfRange(next, part, next.length));
            }
        }
        return count;
    }
}
