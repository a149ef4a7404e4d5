package rigwarden.paper;

import java.util.ArrayList;
import java.util.List;
import rigwarden.findings.Kind;
import rigwarden.rig.Calibratable;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;
import rigwarden.rig.VoltageInput;

/** Which calibrations a figure rests on. */
final class RestsOn {
    private RestsOn() {}

    /** In words, for example "current_a, calibrated 2026-05-01; cell_01_v, not calibrated". */
    static String words(Traced of, Kind kind) {
        return of instanceof Rig rig ? words(rig, kind) : "what the log's map states";
    }

    private static String words(Rig rig, Kind kind) {
        List<String> words = new ArrayList<>();
        if (current(kind)) {
            words.add(Calibratable.CURRENT + ", " + made(rig, Calibratable.CURRENT));
        }
        if (taps(kind)) {
            List<String> names = rig.inputs().stream().filter(i -> i.role() == Role.CELL_VOLTS || i.role() == Role.TAP_VOLTS)
                    .map(VoltageInput::name).toList();
            List<String> known = names.stream().filter(name -> calibrated(rig, name)).toList();
            known.forEach(name -> words.add(name + ", " + made(rig, name)));
            if (known.size() < names.size()) {
                words.add(names.size() == 1 ? names.getFirst() + ", not calibrated" : names.size() - known.size() + " taps, not calibrated");
            }
        }
        return words.isEmpty() ? "no channel that can be calibrated" : String.join("; ", words);
    }

    private static boolean calibrated(Rig rig, String channel) {
        return rig.calibration(channel).isPresent() || Calibratable.written(rig, channel);
    }

    private static String made(Rig rig, String channel) {
        return rig.calibration(channel).map(ChannelCalibration::made).map(day -> "calibrated " + day)
                .orElse(Calibratable.written(rig, channel) ? "calibrated in the rig file" : "not calibrated");
    }

    private static boolean current(Kind kind) {
        return switch (kind) {
            case CHARGE, ENERGY, CAPACITY, VERDICT, RESISTANCE, JOINT, SPOT, HEAT, SQUARE, RATE, INCREMENTAL, LIMITING_CELL, BALANCE, ACCOUNT, EFFICIENCY -> true;
            case PROTECTION, SELF_DISCHARGE -> false;
        };
    }

    private static boolean taps(Kind kind) {
        return switch (kind) {
            case ENERGY, CAPACITY, VERDICT, RESISTANCE, JOINT, INCREMENTAL, LIMITING_CELL, BALANCE, PROTECTION, SELF_DISCHARGE, EFFICIENCY -> true;
            case CHARGE, SPOT, HEAT, SQUARE, RATE, ACCOUNT -> false;
        };
    }
}
