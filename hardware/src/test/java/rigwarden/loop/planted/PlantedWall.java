package rigwarden.loop.planted;

import java.time.LocalTime;
import java.time.ZoneOffset;

/** What no class of the loop may do; the architecture test must find it. */
public final class PlantedWall {
    /** Asks the clock on the wall. */
    public boolean late() {
        return LocalTime.now(ZoneOffset.UTC).getHour() > 22;
    }
}
