package rigwarden.emulated;

/**
 * Error queue, standard event register and status byte (IEEE 488.2-1992, SCPI-1999.0, SYSTem:ERRor; from memory). The
 * queue holds sixteen errors; when it is full, the last one becomes −350.
 */
final class ScpiStatus {
    static final int COMMAND_BIT = 32;
    private static final int COMPLETE = 1;
    private static final int QUERY = 4;
    private static final int DEVICE = 8;
    private static final int EXECUTION = 16;
    private static final int POWER_ON = 128;
    private static final int QUEUE_SUMMARY = 4;
    private static final int EVENT_SUMMARY = 32;
    private static final int MASTER_SUMMARY = 64;
    private static final int OVERFLOW = -350;
    private static final int CAPACITY = 16;

    private final int[] queue = new int[CAPACITY];
    private int first;
    private int count;
    private int events = POWER_ON;
    int eventsEnabled;
    int requestsEnabled;

    ScpiStatus copy() {
        ScpiStatus copy = new ScpiStatus();
        System.arraycopy(queue, 0, copy.queue, 0, CAPACITY);
        copy.first = first;
        copy.count = count;
        copy.events = events;
        copy.eventsEnabled = eventsEnabled;
        copy.requestsEnabled = requestsEnabled;
        return copy;
    }

    void fail(int number) {
        events |= switch (number / 100) {
            case -1 -> COMMAND_BIT;
            case -2 -> EXECUTION;
            case -4 -> QUERY;
            default -> DEVICE;
        };
        if (count < CAPACITY) {
            queue[(first + count++) % CAPACITY] = number;
        } else {
            queue[(first + count - 1) % CAPACITY] = OVERFLOW;
        }
    }

    /** Takes the oldest error; 0 is the standard's number for none. */
    int next() {
        if (count == 0) {
            return 0;
        }
        int number = queue[first];
        first = (first + 1) % CAPACITY;
        count--;
        return number;
    }

    void complete() {
        events |= COMPLETE;
    }

    int takeEvents() {
        int seen = events;
        events = 0;
        return seen;
    }

    int statusByte() {
        int summary = (count > 0 ? QUEUE_SUMMARY : 0) | ((events & eventsEnabled) != 0 ? EVENT_SUMMARY : 0);
        return summary | ((summary & requestsEnabled) != 0 ? MASTER_SUMMARY : 0);
    }

    void clear() {
        count = 0;
        events = 0;
    }

    static String text(int number) {
        return switch (number) {
            case 0 -> "No error";
            case -101 -> "Invalid character";
            case -102 -> "Syntax error";
            case -104 -> "Data type error";
            case -108 -> "Parameter not allowed";
            case -109 -> "Missing parameter";
            case -113 -> "Undefined header";
            case -114 -> "Header suffix out of range";
            case -120 -> "Numeric data error";
            case -131 -> "Invalid suffix";
            case -222 -> "Data out of range";
            case -240 -> "Hardware error";
            case -350 -> "Queue overflow";
            case -363 -> "Input buffer overrun";
            case -430 -> "Query DEADLOCKED";
            default -> "Device-specific error";
        };
    }
}
