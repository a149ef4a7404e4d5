package rigwarden.paper;

import java.util.Locale;
import rigwarden.quantity.Quantity;
import rigwarden.rig.Channel;
import rigwarden.rig.Probe;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/** Names of channels as a person at the bench says them, and their values. */
public final class Spots {
    private Spots() {}

    /** The place that a channel looks at, for example "cell 3, + stud". */
    public static String of(Rig rig, Channel channel) {
        return switch (channel.role()) {
            case CURRENT -> "the current";
            case PACK_VOLTS -> "the pack";
            case BUS_VOLTS -> "the bus";
            case TAP_VOLTS -> "tap " + channel.cell();
            case CELL_VOLTS -> "cell " + channel.cell();
            case BODY -> "cell " + channel.cell() + ", body";
            case STUD -> "cell " + channel.cell() + ", " + (positive(rig, channel) ? "+" : "−") + " stud";
            case BAR -> "the bar from cell " + channel.cell() + " to " + (channel.cell() + 1);
            case SHUNT_BODY -> "the shunt";
            case CONTACTOR_BODY -> "the contactor";
            case ROOM -> "the room";
            case LOOSE -> "the loose probe";
            case RECORDER_LAG -> "the logbook";
            case LOOP -> "the loop of contacts";
            case COIL_FEED -> "the coils' feed";
            case FEEDBACK -> "the contactor's feedback";
            case ARM -> "the arm key";
            case SOURCE_VOLTS, SOURCE_AMPS, SOURCE_ON, SINK_VOLTS, SINK_AMPS, SINK_ON, ACCUMULATED, CLOCK_RATIO, FREE_SPACE,
                    LATENESS -> channel.name();
        };
    }

    /** The same for the margin of a chart, by the channel alone. */
    public static String brief(Channel channel) {
        return switch (channel.role()) {
            case CURRENT -> "current";
            case CELL_VOLTS, BODY -> "cell " + channel.cell();
            case BAR -> "bar " + channel.cell() + "–" + (channel.cell() + 1);
            case SHUNT_BODY -> "shunt";
            case CONTACTOR_BODY -> "contactor";
            case ROOM -> "room";
            case LOOSE -> "loose probe";
            case STUD, PACK_VOLTS, TAP_VOLTS, BUS_VOLTS, RECORDER_LAG, LOOP, COIL_FEED, FEEDBACK, ARM, SOURCE_VOLTS, SOURCE_AMPS,
                    SOURCE_ON, SINK_VOLTS, SINK_AMPS, SINK_ON, ACCUMULATED, CLOCK_RATIO, FREE_SPACE, LATENESS ->
                channel.name();
        };
    }

    /** Whether a stud's channel is on the positive one. */
    public static boolean positive(Rig rig, Channel channel) {
        return channel.role() == Role.STUD
                && rig.probes().stream().filter(p -> p.name().equals(channel.name())).anyMatch(Probe::positive);
    }

    /** A value with its unit, rounded to what a person reads. */
    public static String value(Quantity quantity, double value) {
        String number = switch (quantity) {
            case VOLTAGE -> number(3, value);
            case CURRENT, CHARGE, TIME, RATIO -> number(2, value);
            case TEMPERATURE -> number(1, value);
            case SWITCH, SIZE -> number(0, value);
        };
        return quantity.symbol().isEmpty() ? number : number + " " + quantity.symbol();
    }

    /** A number with a true minus; what rounds to nothing has none. */
    public static String number(int decimals, double value) {
        String plain = say("%." + decimals + "f", Math.abs(value));
        boolean nothing = plain.chars().allMatch(c -> c == '0' || c == '.');
        return value < 0 && !nothing ? "−" + plain : plain;
    }

    /** A change over a minute, for example "+12 mV" or "−0.4 K"; nothing worth saying is "steady". */
    public static String change(Quantity quantity, double change) {
        return switch (quantity) {
            case VOLTAGE -> Math.abs(change) < 0.0005 ? "steady" : signed("%.0f mV", change * 1000);
            case TEMPERATURE -> Math.abs(change) < 0.05 ? "steady" : signed("%.1f K", change);
            case CURRENT -> Math.abs(change) < 0.05 ? "steady" : signed("%.1f A", change);
            case CHARGE, SWITCH, TIME, SIZE, RATIO -> "";
        };
    }

    /** Which way a temperature goes: one arrow from 0.2 K in a minute on, two from 1 K. */
    public static String arrow(double change) {
        String one = change > 0 ? "↑" : "↓";
        return Math.abs(change) < 0.2 ? "" : Math.abs(change) < 1 ? one : one + one;
    }

    private static String signed(String format, double value) {
        return (value < 0 ? "−" : "+") + say(format, Math.abs(value));
    }

    /** Formats alike everywhere, whatever the machine's language. */
    public static String say(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    /** A span of time as a person says it. */
    public static String span(long nanos) {
        long minutes = Math.max(0, Math.round(nanos / 60e9));
        if (minutes < 1) {
            return "less than a minute";
        }
        return minutes < 60 ? minutes + " min" : minutes / 60 + " h " + say("%02d", minutes % 60) + " min";
    }

    /** Elapsed time with seconds, for example 2:07:31. */
    public static String clock(long nanos) {
        long seconds = Math.max(0, nanos / 1_000_000_000L);
        return say("%d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60);
    }
}
