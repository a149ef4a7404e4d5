package rigwarden.live;

import rigwarden.paper.Spots;
import rigwarden.rig.Rig;

/** A forecast of warmth in words. */
public final class AheadWords {
    private AheadWords() {}

    /** One sentence without its full stop, for a table or a notice. */
    public static String of(Rig rig, Ahead ahead) {
        return Spots.say("%s about %.0f °C (%.0f…%.0f °C) in %s, trips at %.0f °C%s", Spots.of(rig, ahead.where()), ahead.celsius(), ahead.low(),
                ahead.high(), Spots.span(ahead.leftNanos()), ahead.limit(), ahead.crosses() ? ": it will trip before the step ends" : "");
    }
}
