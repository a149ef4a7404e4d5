package rigwarden.emulated;

import java.nio.ByteBuffer;
import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rigwarden.pack.Chance;

/**
 * One kind of communication error on one SPI bus, for a share of its messages. An old answer is one to a message of the same
 * bytes to the same select; without any, the line rests.
 */
final class SpiErrors implements SpiWire {
    private static final int STRANGE_BYTES = 3;
    private static final int MOST_QUESTIONS = 1024;

    /** What was asked, where. */
    private record Question(int select, ByteBuffer bytes) {}

    private record Answer(long nanos, byte[] bytes) {}

    private record Late(long nanos, SpiMessage message) {}

    private final SpiWire inner;
    private final VirtualClock clock;
    private final List<Integer> selects;
    private final WireError error;
    private final double share;
    private final long delayNanos;
    private final Chance chance;
    private final Map<Question, Deque<Answer>> past = new HashMap<>();
    private final Deque<Late> waiting = new ArrayDeque<>();

    /**
     * None before the first message.
     *
     * @param selects at which chips are on this bus
     * @param share of messages, 0…1
     * @param delayNanos by which a late message is late; nothing for other errors
     */
    SpiErrors(SpiWire inner, VirtualClock clock, List<Integer> selects, WireError error, double share, long delayNanos,
            Chance chance) {
        this.inner = inner;
        this.clock = clock;
        this.selects = selects;
        this.error = error;
        this.share = share;
        this.delayNanos = delayNanos;
        this.chance = chance;
    }

    @Override
    public SpiWire onto(SpiWire base, VirtualClock newClock) {
        SpiErrors copy = new SpiErrors(inner.onto(base, newClock), newClock, selects, error, share, delayNanos, chance.copy());
        past.forEach((question, answers) -> copy.past.put(question, new ArrayDeque<>(answers)));
        copy.waiting.addAll(waiting);
        return copy;
    }

    @Override
    public int carried(SpiMessage message, byte[] got) {
        deliver(error == WireError.DELAY ? clock.nanos() : Long.MIN_VALUE);
        if (chance.nextDouble() >= share) {
            int count = inner.carried(message, got);
            remember(message, got);
            return count;
        }
        return switch (error) {
            case CORRUPTION -> corrupted(message, got);
            case REPETITION -> repeated(message, got);
            case WRONG_SEQUENCE -> {
                waiting.add(new Late(clock.nanos(), message));
                int count = old(message, got, 0);
                if (waiting.size() > 1) {
                    deliver(Long.MAX_VALUE);
                }
                yield count;
            }
            case LOSS -> {
                Arrays.fill(got, (byte) (chance.nextBoolean() ? 0xFF : 0));
                yield chance.nextBoolean() ? -1 : message.length();
            }
            case DELAY -> {
                waiting.add(new Late(clock.nanos() + delayNanos, message));
                yield old(message, got, delayNanos);
            }
            case INSERTION -> {
                byte[] strange = {(byte) chance.nextInt(), (byte) chance.nextInt(), (byte) chance.nextInt()};
                inner.carried(message.with(strange), new byte[STRANGE_BYTES]);
                yield inner.carried(message, got);
            }
            case MASQUERADE -> masked(message, got);
            case ADDRESSING -> inner.carried(message.to(other(message.select())), got);
        };
    }

    /** The chip hears, and what it said first is heard once more. */
    private int repeated(SpiMessage message, byte[] got) {
        int count = inner.carried(message, got);
        if (past.containsKey(question(message))) {
            return old(message, got, 0);
        }
        remember(message, got);
        return count;
    }

    /** Either what is sent, or what comes back. */
    private int corrupted(SpiMessage message, byte[] got) {
        if (chance.nextBoolean()) {
            byte[] sent = message.bytes().clone();
            Garbling.bits(sent, 0, sent.length, chance);
            return inner.carried(message.with(sent), got);
        }
        int count = inner.carried(message, got);
        Garbling.bits(got, 0, count, chance);
        return count;
    }

    /** The chip hears; another one's answer is taken for its own. A chip that is alone answers as another register of it. */
    private int masked(SpiMessage message, byte[] got) {
        inner.carried(message, got);
        int other = other(message.select());
        byte[] asked = message.bytes().clone();
        if (other == message.select() && asked.length > 0) {
            asked[0]++;
        }
        return inner.carried(message.to(other).with(asked), got);
    }

    private int other(int select) {
        int place = selects.indexOf(select);
        return selects.isEmpty() ? select
                : selects.get((place + 1 + chance.nextInt(Math.max(1, selects.size() - 1))) % selects.size());
    }

    /** Messages that the host was told had passed pass now, the newest first. */
    private void deliver(long until) {
        while (!waiting.isEmpty() && waiting.getFirst().nanos() <= until) {
            SpiMessage late = (until == Long.MAX_VALUE ? waiting.removeLast() : waiting.removeFirst()).message();
            byte[] got = new byte[late.length()];
            inner.carried(late, got);
            remember(late, got);
        }
    }

    private static Question question(SpiMessage message) {
        return new Question(message.select(), ByteBuffer.wrap(message.bytes()));
    }

    private void remember(SpiMessage message, byte[] got) {
        if (past.size() >= MOST_QUESTIONS) {
            past.clear();
        }
        Deque<Answer> answers = past.computeIfAbsent(question(message), _ -> new ArrayDeque<>());
        answers.add(new Answer(clock.nanos(), got.clone()));
        while (answers.size() > 1 && second(answers).nanos() <= clock.nanos() - delayNanos) {
            answers.removeFirst();
        }
    }

    private static Answer second(Deque<Answer> answers) {
        var all = answers.iterator();
        all.next();
        return all.next();
    }

    /** What the same message was answered so long ago, or the oldest that is known. */
    private int old(SpiMessage message, byte[] got, long nanos) {
        Deque<Answer> answers = past.get(question(message));
        if (answers == null) {
            Arrays.fill(got, (byte) 0);
            return message.length();
        }
        Answer found = answers.getFirst();
        for (Answer answer : answers) {
            found = answer.nanos() <= clock.nanos() - nanos ? answer : found;
        }
        System.arraycopy(found.bytes(), 0, got, 0, message.length());
        return message.length();
    }
}
