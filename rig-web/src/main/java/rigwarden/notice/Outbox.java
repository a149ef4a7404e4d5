package rigwarden.notice;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Iterator;
import java.util.Optional;

/** What waits on one way: bounded, and what is lost is counted. Nobody waits in here. */
final class Outbox {
    static final int MOST = 32;

    private final Deque<Notice> waiting = new ArrayDeque<>();
    private long dropped;

    /**
     * Puts a notice behind the others, a trip before them. A renewed one takes the place of its like; where all is full the oldest warning
     * goes, else the oldest of all.
     */
    synchronized void put(Notice notice) {
        if (notice.what().renewed()) {
            waiting.removeIf(n -> n.what() == notice.what());
        }
        while (waiting.size() >= MOST) {
            dropOne();
            dropped++;
        }
        if (notice.what() == What.TRIPPED) {
            waiting.addFirst(notice);
        } else {
            waiting.addLast(notice);
        }
    }

    private void dropOne() {
        for (Iterator<Notice> it = waiting.iterator(); it.hasNext(); ) {
            if (it.next().what() == What.WARNED) {
                it.remove();
                return;
            }
        }
        waiting.removeFirst();
    }

    synchronized Optional<Notice> first() {
        return Optional.ofNullable(waiting.peekFirst());
    }

    /** Takes this one away, if it has not been replaced meanwhile. */
    synchronized void sent(Notice notice) {
        waiting.remove(notice);
    }

    /** Takes this one away for good, undelivered. */
    synchronized void giveUp(Notice notice) {
        if (waiting.remove(notice)) {
            dropped++;
        }
    }

    /** Lets the others go before this one. */
    synchronized void back(Notice notice) {
        if (waiting.remove(notice)) {
            waiting.addLast(notice);
        }
    }

    synchronized int size() {
        return waiting.size();
    }

    /** Notices that were never delivered. */
    synchronized long dropped() {
        return dropped;
    }
}
