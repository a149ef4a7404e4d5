package rigwarden.findings;

import java.util.Locale;
import rigwarden.rig.ForeignLog;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;
import rigwarden.rig.Traced;

/** What can be found from a run. */
public enum Kind {
    CHARGE("the sensor's own accumulator times the learnt clock ratio; the trapezoid of the host's samples is a check"),
    ENERGY("charge times voltage, once at the cells' studs and once at the bus"),
    CAPACITY("IEC 62620:2014, 6.3.1 (from memory): from full to the first cell at its cut-off"),
    VERDICT("JCGM 106:2012, 8.3 (from memory), with the whole expanded uncertainty as guard band on either side: decided where met, or not met, is"
            + " 97.7 % sure or more, by the distribution that the ± comes from"),
    RESISTANCE("two currents by IEC 61960-3:2017, 7.7.3 (from memory), or the step at opening after 0.1, 1 and 10 s"),
    JOINT("voltage per current of each tap beside its likes, and warmth over the cell's own body"),
    SPOT("rise of each spot over its own cell by the loose probe, its settling left out, at one current; beside the likes"),
    HEAT("what the probe read at the end of the step, its rise by the same probe; of a body that cools at rest, one exponential over the room"),
    SQUARE("rise of each watched joint over its cell, scaled by the current's square from an earlier run, beside what was measured"),
    RATE("exponent of capacity against current between two tests (Peukert's form)"),
    INCREMENTAL("charge per voltage, with voltage per charge beside it, at 0.1 C or less, resolution 0.1 mV or better"),
    LIMITING_CELL("which cell met its cut-off first; the others by the knee that they share with it"),
    BALANCE("charge by which each cell lags, read on the knee of the first that was full"),
    PROTECTION("bracket of the highest cell around the moment at which the battery's protection opened"),
    SELF_DISCHARGE("charge retained over 14 days or more (IEC 61960-3, 7.4, from memory), or fall of the rest voltage on a steep end"),
    ACCOUNT("charge in and out between two equal states"),
    EFFICIENCY("charge and energy out over those in, from full to full");

    private final String method;

    Kind(String method) {
        this.method = method;
    }

    /** How it is found on this rig, or of this log, with its source. */
    public String method(Traced of) {
        boolean counts = of.possible(Role.ACCUMULATED).isPresent();
        return switch (of) {
            case Rig _ when this == CHARGE && !counts -> "the host's own samples of the current, since the sensor does not count";
            case ForeignLog _ when this == CHARGE -> counts ? "the count of the instrument that wrote the log, as its map names it; the rows' currents are a check"
                    : "the sum of the log's rows, since its map names no count";
            case ForeignLog _ when this == RESISTANCE -> method + "; rows that are far apart are followed back to the instant";
            case ForeignLog _ when this == ENERGY -> "charge times voltage, as the log's rows have them";
            case Rig _, ForeignLog _ -> method;
        };
    }

    /** Word for files, marks and tables. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }
}
