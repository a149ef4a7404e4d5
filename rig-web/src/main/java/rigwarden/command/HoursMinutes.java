package rigwarden.command;

import java.util.Optional;
import java.util.OptionalLong;

/** A time from the start of a run, in hours and minutes. */
final class HoursMinutes {
    private HoursMinutes() {}

    /** Nanoseconds of an option's {@code h:mm}, if it is given; another form is refused. */
    static OptionalLong nanos(String option, Optional<String> words) {
        if (words.isEmpty()) {
            return OptionalLong.empty();
        }
        if (!words.get().matches("\\d{1,3}:[0-5]\\d")) {
            throw new Refused(option + " " + words.get() + ": it is hours and minutes from the start, for example 3:00.");
        }
        String[] parts = words.get().split(":", -1);
        return OptionalLong.of((Long.parseLong(parts[0]) * 60 + Long.parseLong(parts[1])) * 60_000_000_000L);
    }
}
