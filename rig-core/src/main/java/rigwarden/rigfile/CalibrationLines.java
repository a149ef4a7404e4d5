package rigwarden.rigfile;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rigwarden.rig.Calibratable;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;

/** What calibrations gave, and what one of the current would give back; of a tap {@link TapLimit} tells. */
final class CalibrationLines {
    /** A meter of this accuracy is within reach of a workshop, expanded, relative: common practice (no source). */
    private static final double WITHIN_REACH = 0.001;

    private CalibrationLines() {}

    static List<String> of(Rig rig) {
        List<String> lines = new ArrayList<>();
        Rig bare = rig.calibrated(List.of());
        rig.calibrations().forEach(found -> {
            Channel now = rig.column(found.channel()).orElseThrow();
            double at = found.doubt().highest();
            String unit = " " + now.quantity().symbol();
            lines.add(say("%s is calibrated, from %s to %s: U = %s at %s, %s without.", found.channel(), found.made(), found.expires(),
                    figure(now.uncertainty(at), unit), figure(at, unit), figure(bare.column(found.channel()).orElseThrow().uncertainty(at), unit)));
            lines.add(say("  Its points reach from %s to %s; from %s to %s it needs no more, beyond that U grows by %s %% of the way.",
                    figure(found.doubt().lowest(), unit), figure(found.doubt().highest(), unit), figure(found.doubt().reachLow(), unit),
                    figure(found.doubt().reachHigh(), unit), Figures.of(100 * found.doubt().beyondLimits())));
        });
        if (rig.calibration(Calibratable.CURRENT).isEmpty()) {
            double amps = rig.cells().ratedAmpHours() / 2;
            double u = rig.column(Calibratable.CURRENT).orElseThrow().uncertainty(amps);
            double back = u - WITHIN_REACH * amps;
            lines.add(say("current_a: U = %s at %s", figure(u, " A"), figure(amps, " A")) + (back > 0
                    ? say("; calibrating it with a meter good for 0.1 %% gives back %s, and as much of every capacity: %s %%.",
                            figure(back, " A"), Figures.of(Math.round(1e4 * back / amps) / 100.0))
                    : "."));
        }
        return List.copyOf(lines);
    }

    private static String figure(double value, String unit) {
        return Figures.of(Math.round(value * 1e4) / 1e4) + unit;
    }

    private static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
