package rigwarden.rigfile;

import rigwarden.rig.PathPart;
import rigwarden.rig.Rig;
import rigwarden.warden.Way;

/**
 * The part that allows the least current in one way.
 *
 * @param way charge or discharge
 * @param part name of the part as in the rig file; "cell" for the cells themselves, "source" or "sink"
 * @param amps what it allows for hours, A, magnitude
 */
public record Governing(Way way, String part, double amps) {
    public static Governing of(Rig rig, Way way) {
        PathPart weakest = rig.weakest();
        boolean charge = way == Way.CHARGE;
        double cells = charge ? rig.cells().chargeAmps() : rig.cells().dischargeAmps();
        double instrument = charge ? rig.source().maxAmps() : rig.sink().maxAmps();
        if (cells <= weakest.continuousAmps() && cells <= instrument) {
            return new Governing(way, "cell", cells);
        }
        return instrument <= weakest.continuousAmps()
                ? new Governing(way, charge ? "source" : "sink", instrument)
                : new Governing(way, weakest.name(), weakest.continuousAmps());
    }
}
