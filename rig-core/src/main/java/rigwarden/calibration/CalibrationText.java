package rigwarden.calibration;

import java.util.List;
import rigwarden.rig.Calibratable;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Doubt;
import rigwarden.rigfile.CalibrationFile;

/** A calibration as its file says it: what it is of, the line, what is left of doubt, and all that it was made from. */
final class CalibrationText {
    private final StringBuilder body = new StringBuilder();

    private CalibrationText() {}

    static ChannelCalibration with(Calibrating how, ChannelCalibration found, List<Point> points) {
        String body = new CalibrationText().body(how, found, points);
        return new ChannelCalibration(found.channel(), found.gain(), found.offset(), found.doubt(), found.made(), found.expires(),
                found.shuntCelsius(), found.emulatedSeed(), CalibrationFile.sealed(body));
    }

    private String body(Calibrating how, ChannelCalibration found, List<Point> points) {
        body.append("# Written by `rigwarden calibrate`. The line above seals all others: a file that was edited is refused.\n");
        text("rig", how.rig().name());
        text("channel", found.channel());
        text("chip", Calibratable.of(how.rig()).get(found.channel()));
        text("made", found.made().toString());
        text("expires", found.expires().toString());
        body.append("# truth = gain × reading + offset, in the channel's unit\n");
        number("gain", found.gain());
        number("offset", found.offset());
        found.shuntCelsius().ifPresent(celsius -> number("shunt_c", celsius));
        found.emulatedSeed().ifPresent(seed -> body.append("emulated_seed = ").append(seed).append("   # of a rehearsal: no real run takes it\n"));
        doubt(found.doubt());
        meter(how.meter());
        how.certificate().ifPresent(shunt -> {
            body.append("\n[certificate]\n");
            number("ohms", shunt.ohms());
            number("u_ohms", shunt.expandedOhms());
        });
        for (Point point : points) {
            body.append("\n[[point]]\n");
            number("reads", point.reads());
            number("scatter", point.scatter());
            body.append("scans = ").append(point.scans()).append('\n');
            number("shown", point.shown());
        }
        return body.toString();
    }

    private void doubt(Doubt doubt) {
        body.append("\n[doubt]   # the line is surest at its pivot; limits are ±; u are standard; scale, slope and certificate are relative\n");
        number("pivot", doubt.pivot());
        number("height_u", doubt.heightU());
        number("slope_u", doubt.slopeU());
        number("scale_limits", doubt.scaleLimits());
        number("zero_limits", doubt.zeroLimits());
        number("certificate_u", doubt.certificateU());
        number("lowest", doubt.lowest());
        number("highest", doubt.highest());
        number("beyond_limits", doubt.beyondLimits());
    }

    private void meter(MeterStatement meter) {
        body.append("\n[meter]\n");
        text("name", meter.name());
        number("percent", meter.relative() * 100);
        number("counts", meter.counts());
        number("digit", meter.digit());
        number("range_percent", meter.rangeRelative() * 100);
        number("range", meter.range());
        text("calibrated", meter.calibrated().toString());
        body.append("holds_days = ").append(meter.holdsDays()).append('\n');
    }

    private void text(String key, String value) {
        body.append(key).append(" = \"").append(value.replace("\\", "\\\\").replace("\"", "\\\"")).append("\"\n");
    }

    private void number(String key, double value) {
        body.append(key).append(" = ").append(value).append('\n');
    }
}
