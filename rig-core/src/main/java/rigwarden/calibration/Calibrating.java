package rigwarden.calibration;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.hipparchus.special.Gamma;
import rigwarden.rig.Calibratable;
import rigwarden.rig.Channel;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Doubt;
import rigwarden.rig.Rig;

/**
 * From points to a calibration. What a meter states in % of its reading, in counts and in % of its range errs alike in all points of
 * one range, and no number of points makes it smaller; it goes into the result whole. Only a count either way, the scatter and
 * the channel's own steps are each point's own.
 *
 * @param rig without any calibration of the channel
 * @param channel column of it
 * @param meter the reference
 * @param certificate of the shunt, where the meter shows its volts instead of amperes
 */
public record Calibrating(Rig rig, String channel, MeterStatement meter, Optional<ShuntCertificate> certificate) {
    /** What no chip keeps from day to day, limits ±, relative: this project's assumption, as for a calibration in the rig file. */
    private static final double DRIFT = 20e-6;
    private static final double GAIN_APART = 0.05;
    private static final double OFFSET_SHARE = 0.02;
    /** So many of their own uncertainties two points must be apart. */
    private static final double APART = 10;
    /** Points that scatter more than by one chance in so many are not believed. */
    private static final double CHANCE = 0.001;
    private static final double STEP = Math.sqrt(12);

    /**
     * What belongs to all points.
     *
     * @param shuntCelsius the shunt's mean temperature, where a probe saw it
     * @param emulatedSeed of the emulated copy that was looked at; empty for the real rig
     */
    public record Seen(OptionalDouble shuntCelsius, OptionalLong emulatedSeed) {
        /** Points of the real rig; nobody looked at the shunt. */
        public static final Seen NOTHING = new Seen(OptionalDouble.empty(), OptionalLong.empty());
    }

    /**
     * Draws the line.
     *
     * @param points at least two
     * @param made today
     * @param days for which it shall hold
     * @param seen what belongs to all points
     */
    public Result of(List<Point> points, LocalDate made, int days, Seen seen) {
        double volts = certificate.isPresent() ? rig.shunt().ohms() : 1;
        double step = column().scale() * volts;
        double[] x = points.stream().mapToDouble(point -> point.reads() * volts).toArray();
        double[] y = points.stream().mapToDouble(Point::shown).toArray();
        double[] u = points.stream().mapToDouble(point -> Math.hypot(meter.eachU(),
                Math.hypot(point.scatter() * volts / Math.sqrt(point.scans()), step / STEP))).toArray();
        Optional<String> refused = meter.refusedOn(made).or(() -> range(y)).or(() -> apart(x, u));
        if (refused.isPresent()) {
            return new Result.Refused(refused.get());
        }
        LineFit line = LineFit.through(x, y, u);
        Optional<String> bent = bent(line, x, y, u).or(() -> far(line, volts));
        return bent.<Result>map(Result.Refused::new).orElseGet(() -> {
            LineFit believed = line.widened(Math.max(1, line.scatter()));
            return new Result.Found(found(believed, volts, points, made, days, seen), believed);
        });
    }

    private Channel column() {
        return rig.column(channel).orElseThrow();
    }

    private Optional<String> range(double[] shown) {
        for (int i = 0; i < shown.length; i++) {
            if (Math.abs(shown[i]) > meter.range()) {
                return said("Point %d shows %.6g: allowed is up to the range's end, %.6g, because the statement is for one range. Take all"
                        + " points in one range.", i + 1, shown[i], meter.range());
            }
        }
        return Optional.empty();
    }

    private static Optional<String> apart(double[] x, double[] u) {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        double widest = 0;
        for (int i = 0; i < x.length; i++) {
            lowest = Math.min(lowest, x[i]);
            highest = Math.max(highest, x[i]);
            widest = Math.max(widest, u[i]);
        }
        return x.length < 2 || highest - lowest < APART * widest
                ? said("The points span %.4g: allowed are two or more at least %.4g apart, because a line needs a length. Set values farther apart.",
                        x.length == 0 ? 0.0 : highest - lowest, APART * widest)
                : Optional.empty();
    }

    private static Optional<String> bent(LineFit line, double[] x, double[] y, double[] u) {
        if (line.freedom() == 0 || Gamma.regularizedGammaQ(line.freedom() / 2.0, line.chiSquare() / 2) > CHANCE) {
            return Optional.empty();
        }
        int worst = 0;
        for (int i = 1; i < x.length; i++) {
            boolean worse = Math.abs(y[i] - line.at(x[i])) / u[i] > Math.abs(y[worst] - line.at(x[worst])) / u[worst];
            worst = worse ? i : worst;
        }
        return said("Point %d shows %.6g and lies %.1f of its uncertainties off the line: allowed is what one time in a thousand does, because"
                + " chip and meter are straight. Take that point again, waiting until it stands; look for a mistyped figure.",
                worst + 1, y[worst], Math.abs(y[worst] - line.at(x[worst])) / u[worst]);
    }

    /** A line so far from the chip's own is a wiring fault, a wrong unit or a wrong figure in the rig file. */
    private Optional<String> far(LineFit line, double volts) {
        double gain = line.slope() * scale(volts);
        double offset = offset(line);
        if (Math.abs(gain - 1) > GAIN_APART) {
            return said("The line's gain is %.4f: allowed is 0.95…1.05, because more is another unit, a wrong divider or a wrong shunt in the"
                    + " rig file. Look at the unit in which the meter's figures were typed.", gain);
        }
        double most = OFFSET_SHARE * column().highest();
        return Math.abs(offset) > most
                ? said("The line's offset is %.4g: allowed is up to %.4g, because more is a wiring fault. Look at the connections and take"
                        + " the points again.", offset, most)
                : Optional.empty();
    }

    /** From the meter's unit over the line's to the channel's own gain. */
    private double scale(double volts) {
        return certificate.map(shunt -> volts / shunt.ohms()).orElse(1.0);
    }

    private double unit() {
        return certificate.map(ShuntCertificate::ohms).orElse(1.0);
    }

    private double offset(LineFit line) {
        return line.at(0) / unit();
    }

    private ChannelCalibration found(LineFit line, double volts, List<Point> points, LocalDate made, int days, Seen seen) {
        double gain = line.slope() * scale(volts);
        double offset = offset(line);
        double[] corrected = points.stream().mapToDouble(point -> gain * point.reads() + offset).sorted().toArray();
        Doubt doubt = new Doubt(line.height() / unit(), line.heightU() / unit(), line.slopeU() / line.slope(),
                Math.hypot(meter.relative(), DRIFT), Math.hypot(meter.zeroLimits() / unit(), Calibratable.driftLimits(rig, channel)),
                certificate.map(ShuntCertificate::relativeU).orElse(0.0), corrected[0], corrected[corrected.length - 1],
                Calibratable.scaleLimits(rig, channel));
        ChannelCalibration bare = new ChannelCalibration(channel, gain, offset, doubt, made, made.plusDays(days), seen.shuntCelsius(),
                seen.emulatedSeed(), "");
        return CalibrationText.with(this, bare, points);
    }

    private static Optional<String> said(String format, Object... values) {
        return Optional.of(String.format(Locale.ROOT, format, values));
    }
}
