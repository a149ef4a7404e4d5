package rigwarden.command;

import java.util.ArrayList;
import java.util.List;
import rigwarden.paper.Spots;
import rigwarden.rig.Channel;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Doubt;
import rigwarden.rig.Rig;

/** What a calibration found, for the person who made it. */
final class CalibrationWords {
    private CalibrationWords() {}

    /** Lines; {@code rig} is the one without it. */
    static List<String> of(Rig rig, ChannelCalibration found) {
        Channel before = rig.column(found.channel()).orElseThrow();
        Doubt doubt = found.doubt();
        String unit = before.quantity().symbol();
        List<String> lines = new ArrayList<>();
        lines.add(Spots.say("%s: truth = %.6f × reading %+.6f %s, until %s.", found.channel(), found.gain(), found.offset(), unit, found.expires()));
        lines.add(Spots.say("%14s %16s %16s", "at", "U (k = 2)", "U before"));
        for (double at : List.of(doubt.lowest(), doubt.highest(), doubt.reachHigh(), before.highest())) {
            lines.add(Spots.say("%12.4f %s %14.5f %s %14.5f %s%s", at, unit, doubt.expanded(at), unit, before.uncertainty(at), unit,
                    doubt.beyond(at) > 0 ? "   beyond three spans: a term of its own" : ""));
        }
        if (doubt.expanded(doubt.highest()) >= before.uncertainty(doubt.highest())) {
            lines.add("This meter gives nothing back: the chip's own limits are tighter. It is now known, and not better. A better meter, or points"
                    + " higher up in its range, would help.");
        }
        return List.copyOf(lines);
    }
}
