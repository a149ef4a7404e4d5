package rigwarden.notice;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.Optional;

/**
 * How one way stands.
 *
 * @param route its name
 * @param delivered when a notice was taken last
 * @param failures attempts in a row that failed
 * @param why of the last failure; empty while none failed
 * @param waiting notices that are not delivered yet
 * @param dropped notices that never will be
 */
public record Standing(String route, Optional<Instant> delivered, int failures, String why, int waiting, long dropped) {
    /** Whether a person should know. */
    public boolean troubled() {
        return failures > 0 || dropped > 0;
    }

    /** In words. */
    public String words() {
        String last = delivered.map(at -> "last delivered at " + clock(at)).orElse("nothing delivered yet");
        String lost = dropped > 0 ? ", " + dropped + " lost" : "";
        return failures == 0
                ? route + ": " + last + lost
                : route + ": NOT delivered, " + failures + (failures == 1 ? " attempt: " : " attempts: ") + why + "; " + waiting
                        + " waiting" + lost + "; " + last;
    }

    private static LocalTime clock(Instant at) {
        return LocalTime.ofInstant(at, ZoneId.systemDefault()).truncatedTo(ChronoUnit.SECONDS);
    }
}
