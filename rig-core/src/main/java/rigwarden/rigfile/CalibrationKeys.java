package rigwarden.rigfile;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import org.tomlj.TomlParseResult;
import rigwarden.rig.Calibratable;
import rigwarden.rig.ChannelCalibration;
import rigwarden.rig.Doubt;
import rigwarden.rig.Rig;

/** Reads the calibrations that lie beside a rig file, and refuses each that is not of this rig, this channel and this chip. */
final class CalibrationKeys {
    private static final double MOST = 1e6;
    private static final String WRITTEN = "`rigwarden calibrate` wrote it";
    private static final String ANEW = "Calibrate the channel anew, or move this file away: the channel is then as uncertain as its chip.";

    private static final List<String> DOUBT = List.of("pivot", "height_u", "slope_u", "scale_limits", "zero_limits", "certificate_u",
            "lowest", "highest", "beyond_limits");

    private final Page page;
    private final Rig rig;
    private final Optional<LocalDate> today;
    private final Map<String, String> known;
    private final Map<String, ChannelCalibration> found = new HashMap<>();

    /**
     * For one rig.
     *
     * @param page of the rig file, which takes the refusals of the others
     * @param rig whose parts are read
     * @param today on which each must hold; empty for those of a run, which held when it began
     */
    CalibrationKeys(Page page, Rig rig, Optional<LocalDate> today) {
        this.page = page;
        this.rig = rig;
        this.today = today;
        known = Calibratable.of(rig);
    }

    /** All of them, in the order of their channels. */
    List<ChannelCalibration> read(List<CalibrationFile> files) {
        for (CalibrationFile file : files) {
            Page own = new Page(file.name());
            Optional<TomlParseResult> table = Source.table(file.text(), own);
            if (table.isPresent()) {
                read(file, new Keys(own, table.get()), own);
            }
            page.carry(own.refusals());
        }
        List<ChannelCalibration> all = new ArrayList<>();
        known.keySet().stream().filter(found::containsKey).forEach(channel -> all.add(found.get(channel)));
        return List.copyOf(all);
    }

    private void read(CalibrationFile file, Keys keys, Page own) {
        keys.text("sha256", "it seals the rest of the file");
        String channel = keys.word("channel", known.keySet(), "a calibration is of one channel");
        String of = keys.text("rig", "a calibration is of one rig");
        String chip = keys.text("chip", 200, "a calibration is of one chip, as it is wired");
        LocalDate made = day(keys, "made", own);
        LocalDate expires = day(keys, "expires", own);
        double gain = keys.number("gain", "", 0.9, 1.1, "more is a wrong divider or shunt");
        double offset = keys.number("offset", "", -MOST, MOST, WRITTEN);
        OptionalDouble celsius = keys.has("shunt_c")
                ? OptionalDouble.of(keys.number("shunt_c", "°C", -40, 125, "the shunt's resistance hangs on it"))
                : OptionalDouble.empty();
        OptionalLong seed = keys.has("emulated_seed")
                ? OptionalLong.of(keys.whole("emulated_seed", "", 0, Integer.MAX_VALUE, "a rehearsal is of one specimen"))
                : OptionalLong.empty();
        Keys doubt = keys.table("doubt", WRITTEN).orElseGet(keys::none);
        double[] of9 = new double[DOUBT.size()];
        for (int i = 0; i < of9.length; i++) {
            String key = DOUBT.get(i);
            boolean signed = key.equals("pivot") || key.equals("lowest") || key.equals("highest");
            of9[i] = doubt.number(key, "", signed ? -MOST : 0, MOST, WRITTEN);
        }
        doubt.noOthers();
        keys.table("meter", "what it was calibrated against is part of the result");
        if (keys.has("certificate")) {
            keys.table("certificate", WRITTEN);
        }
        keys.tables("point", RefusalKind.MISSING_KEY, "the points can be looked at again");
        keys.noOthers();
        if (!own.sound()) {
            return;
        }
        if (!file.whole()) {
            own.refuse(RefusalKind.CALIBRATION_ALTERED, "sha256", "the seal of what follows",
                    "the file is not as `rigwarden calibrate` wrote it, and nobody knows which figure was changed", ANEW);
        } else if (!(of9[7] > of9[6])) {
            own.refuse(RefusalKind.CALIBRATION_ALTERED, "doubt.highest", "above doubt.lowest", "a line needs two points apart", ANEW);
        } else if (fits(own, channel, of, chip) && holds(own, made, expires)) {
            found.put(channel, new ChannelCalibration(channel, gain, offset, new Doubt(of9[0], of9[1], of9[2], of9[3], of9[4], of9[5],
                    of9[6], of9[7], of9[8]), made, expires, celsius, seed, file.text()));
        }
    }

    private boolean fits(Page own, String channel, String of, String chip) {
        if (!of.equals(rig.name())) {
            own.refuse(RefusalKind.CALIBRATION_STRANGE, "rig", "\"" + rig.name() + "\"", "it was made on another rig", ANEW);
        } else if (!chip.equals(known.get(channel))) {
            own.refuse(RefusalKind.CALIBRATION_STRANGE, "chip", "\"" + known.get(channel) + "\"",
                    "the channel's chip, or what its readings are computed from, is another one now", ANEW);
        } else if (Calibratable.written(rig, channel)) {
            own.refuse(RefusalKind.CALIBRATION_TWICE, "channel", "one calibration of a channel",
                    "the rig file itself has one of " + channel + ", and nobody could tell which holds", "Remove one of the two.");
        } else if (found.containsKey(channel)) {
            own.refuse(RefusalKind.CALIBRATION_TWICE, "channel", "one calibration of a channel", "another file beside this one has it too",
                    "Remove one of the two.");
        } else {
            return true;
        }
        return false;
    }

    private boolean holds(Page own, LocalDate made, LocalDate expires) {
        if (today.isPresent() && made.isAfter(today.get())) {
            own.refuse(RefusalKind.CALIBRATION_EXPIRED, "made", "a day that has been, up to " + today.get(),
                    "it was made in the future, or this computer's clock is behind", "Set the clock, or calibrate anew.");
            return false;
        }
        if (today.isPresent() && !today.get().isBefore(expires)) {
            own.refuse(RefusalKind.CALIBRATION_EXPIRED, "expires", "a day after today, which is " + today.get(),
                    "chip, shunt and joints age, and the stated uncertainty was for so long", ANEW);
            return false;
        }
        return true;
    }

    private static LocalDate day(Keys keys, String key, Page own) {
        String text = keys.text(key, "a calibration holds for some time");
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException _) {
            if (keys.good(key)) {
                own.refuse(RefusalKind.CALIBRATION_ALTERED, key, "a day, as 2026-11-26", WRITTEN, ANEW);
            }
            return LocalDate.EPOCH;
        }
    }
}
