package rigwarden.live;

import rigwarden.paper.Spots;
import rigwarden.rig.Rig;

/** A forecast of warmth in words. */
public final class AheadWords {
    private AheadWords() {}

    /** One sentence without its full stop, for a table or a notice. */
    public static String of(Rig rig, Ahead ahead) {
        return Spots.say("%s about %.0f °C (%.0f…%.0f °C) in %s, trips at %.0f °C%s", Spots.of(rig, ahead.where()), ahead.celsius(), ahead.low(),
                ahead.high(), Spots.span(ahead.leftNanos()), ahead.limit(), when(ahead));
    }

    /** When it reaches its limit; nothing where it hardly can. */
    private static String when(Ahead ahead) {
        if (ahead.earliestNanos().isEmpty()) {
            return "";
        }
        String from = hours(ahead.earliestNanos().getAsLong());
        return ahead.latestNanos().isPresent()
                ? Spots.say(": reaches that between %s and %s from now, before the step ends", from, hours(ahead.latestNanos().getAsLong()))
                : Spots.say(": reaches that between %s and %s from now, or not before the end", from, hours(ahead.leftNanos()));
    }

    private static String hours(long nanos) {
        long minutes = Math.max(0, Math.round(nanos / 60e9));
        return Spots.say("%d:%02d", minutes / 60, minutes % 60);
    }
}
