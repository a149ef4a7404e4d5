package rigwarden.command;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import rigwarden.logbook.RunAbout;
import rigwarden.run.Outage;

/**
 * How long a real run has been broken off. In the same boot the monotonic clock tells it. After another boot only the clock
 * on the wall can, and it is believed only where a time service has set it: many boards keep no time without power.
 */
final class WallOutage {
    private static final Path SET = Path.of("/run/systemd/timesync/synchronized");

    private WallOutage() {}

    /**
     * The outage until now.
     *
     * @param about of the run
     * @param setSeconds by how much the clock on the wall was set while the run went on, s, forward positive: its beginning was told by the clock before
     * @param brokenNanos its last scan, on the clock of its own boot
     * @param boot identity of this boot
     * @param nowNanos the monotonic clock
     * @param now the clock on the wall
     */
    static Outage of(RunAbout about, double setSeconds, long brokenNanos, String boot, long nowNanos, LocalDateTime now, ZoneId zone) {
        return of(about, setSeconds, brokenNanos, boot, nowNanos, now, zone, Files.exists(SET));
    }

    static Outage of(RunAbout about, double setSeconds, long brokenNanos, String boot, long nowNanos, LocalDateTime now, ZoneId zone, boolean set) {
        if (about.boot().equals(boot)) {
            return new Outage.Known(brokenNanos, nowNanos);
        }
        if (!set) {
            return new Outage.Unknown("the computer started anew, and no time service has set its clock");
        }
        LocalDateTime started;
        try {
            started = LocalDateTime.parse(about.started());
        } catch (DateTimeException _) {
            return new Outage.Unknown("the run's file does not say when it began");
        }
        LocalDateTime broken = started.plusNanos(brokenNanos - about.originNanos() + Math.round(setSeconds * 1e9));
        List<ZoneOffset> then = zone.getRules().getValidOffsets(broken);
        boolean same = then.equals(zone.getRules().getValidOffsets(now)) && then.equals(zone.getRules().getValidOffsets(started));
        if (then.size() != 1 || !same) {
            return new Outage.Unknown("summer time began or ended meanwhile");
        }
        return new Outage.Known(nowNanos - Duration.between(broken, now).toNanos(), nowNanos);
    }
}
