package rigwarden.live;

import java.util.List;
import java.util.TreeMap;
import rigwarden.loop.Recorder;
import rigwarden.program.Program;
import rigwarden.rig.Rig;
import rigwarden.run.Event;
import rigwarden.warden.Inbox;
import rigwarden.warden.Orders;
import rigwarden.warden.Scan;

/** Follows a rehearsal and keeps, every five minutes of it, what is done then and how the cells stand. */
public final class Foresight implements Recorder {
    private static final long EVERY_NANOS = 300_000_000_000L;

    /** What is done at one time, and how the cells stand. */
    private record Mark(Doing doing, Left cells) {}

    private final Course course;
    private final TreeMap<Long, Mark> marks = new TreeMap<>();
    private long originNanos = Long.MIN_VALUE;
    private long dueNanos = Long.MIN_VALUE;

    public Foresight(Rig rig, Program program) {
        course = new Course(rig, program);
    }

    @Override
    public void offer(Scan scan, Inbox inbox, Orders orders, List<Event> events) {
        course.take(scan, orders, events);
        if (originNanos == Long.MIN_VALUE) {
            originNanos = scan.nanos();
        }
        if (scan.nanos() >= dueNanos) {
            dueNanos = scan.nanos() + EVERY_NANOS;
            marks.put(scan.nanos() - originNanos, new Mark(course.doing(), Outlook.stands(course.level())));
        }
    }

    /** What will be so long after the beginning, in one sentence. */
    public String at(long nanos) {
        if (marks.isEmpty() || nanos > marks.lastKey() + EVERY_NANOS) {
            return "the programme will be over; the cells stand " + left().brief() + ".";
        }
        Mark mark = marks.floorEntry(Math.max(marks.firstKey(), nanos)).getValue();
        String step = mark.doing().step() == 0 ? "it will be about to begin"
                : "step " + mark.doing().step() + ", " + mark.doing().kind().replace('_', ' ');
        return step + "; the cells stand " + mark.cells().brief() + ".";
    }

    /** How the cells are left at its end. */
    public Left left() {
        return course.left();
    }
}
