package rigwarden.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rigwarden.logbook.RunAbout;
import rigwarden.run.Outage;

/** How long the supply was away, told by the clock on the wall after the computer started anew. */
class WallOutageTest {
    private static final long HOUR = 3600_000_000_000L;
    private static final long MINUTE = 60_000_000_000L;
    /** In this zone the clock goes back from 3:00 to 2:00 on 2026-10-25. */
    private static final ZoneId ZONE = ZoneId.of("Europe/Berlin");

    private static Outage outage(String started, long ranNanos, String now, String boot, boolean set) {
        return outage(started, 0, ranNanos, now, boot, set);
    }

    private static Outage outage(String started, double setSeconds, long ranNanos, String now, String boot, boolean set) {
        RunAbout about = new RunAbout("", "", Map.of(), "boot 1", 0, false, started, 7 * HOUR);
        return WallOutage.of(about, setSeconds, 7 * HOUR + ranNanos, boot, 5 * MINUTE, LocalDateTime.parse(now), ZONE, set);
    }

    @Test
    void in_the_same_boot_the_monotonic_clock_tells_it() {
        assertThat(outage("2026-11-02T23:00:00", HOUR, "2026-11-03T02:00:00", "boot 1", false))
                .isEqualTo(new Outage.Known(8 * HOUR, 5 * MINUTE));
    }

    @Test
    void after_another_boot_a_clock_that_was_set_tells_it() {
        assertThat(outage("2026-11-02T23:00:00", 2 * HOUR, "2026-11-03T01:20:00", "boot 2", true))
                .isEqualTo(new Outage.Known(-15 * MINUTE, 5 * MINUTE));
    }

    /** The board knew nothing of the time when the run began; a time service set its clock by three hours in the middle of it. */
    @Test
    void a_clock_that_was_set_while_the_run_went_on_had_told_its_beginning_by_the_clock_before() {
        assertThat(outage("2026-11-02T20:00:00", 3 * 3600, 2 * HOUR, "2026-11-03T01:20:00", "boot 2", true))
                .isEqualTo(new Outage.Known(-15 * MINUTE, 5 * MINUTE));
    }

    @Test
    void a_clock_that_nobody_set_tells_nothing() {
        assertThat(outage("2026-11-02T23:00:00", 2 * HOUR, "2026-11-03T01:20:00", "boot 2", false)).isInstanceOf(Outage.Unknown.class);
    }

    @Test
    void on_a_night_on_which_summer_time_ends_nothing_is_told_even_when_it_ended_before_the_cut() {
        assertThat(outage("2026-10-24T23:00:00", 6 * HOUR, "2026-10-25T05:20:00", "boot 2", true)).isInstanceOf(Outage.Unknown.class);
    }

    @Test
    void a_file_that_does_not_say_when_the_run_began_tells_nothing() {
        assertThat(outage("rehearsal", HOUR, "2026-11-03T01:20:00", "boot 2", true)).isInstanceOf(Outage.Unknown.class);
    }
}
