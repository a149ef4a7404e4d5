package rigwarden.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import rigwarden.pack.World;
import rigwarden.rig.Device;
import rigwarden.rig.PathPart;
import rigwarden.rig.Rig;

/** One part with a rating, and for how long it has carried too much. */
final class Load {
    private static final double LONG_SHARE = 1.25;
    private static final double SHORT_SHARE = 1.5;
    private static final long LONG_NANOS = 10_000_000_000L;
    private static final long SHORT_NANOS = 1_000_000_000L;

    private final String part;
    private final double ratedAmps;
    private final ToDoubleFunction<World> amps;
    private long longSince = Long.MAX_VALUE;
    private long shortSince = Long.MAX_VALUE;
    private double share;

    private Load(String part, double ratedAmps, ToDoubleFunction<World> amps) {
        this.part = part;
        this.ratedAmps = ratedAmps;
        this.amps = amps;
    }

    /** Every part of the rig file that has a rating: the path, the cells both ways, the battery's protection. */
    static List<Load> of(Rig rig) {
        List<Load> loads = new ArrayList<>();
        for (PathPart part : rig.path()) {
            loads.add(new Load(part.name(), part.ratedAmps(), part.common() ? World::amps : through(rig, part.device())));
        }
        loads.add(new Load("cells, charged", rig.cells().chargeAmps(), world -> Math.max(0, world.amps())));
        loads.add(new Load("cells, discharged", rig.cells().dischargeAmps(), world -> Math.max(0, -world.amps())));
        rig.protection().ifPresent(p -> loads.add(new Load("protection", p.ratedAmps(), World::amps)));
        return loads;
    }

    private static ToDoubleFunction<World> through(Rig rig, String name) {
        Device device = rig.devices().stream().filter(d -> d.name().equals(name)).findFirst().orElseThrow();
        int place = rig.devices(device.charges()).indexOf(device);
        return device.charges() ? world -> world.sourceAmps(place) : world -> world.sinkAmps(place);
    }

    /** Looks once a scan; true once it has carried too much for too long. */
    boolean over(World world, long nanos) {
        share = Math.abs(amps.applyAsDouble(world)) / ratedAmps;
        longSince = share > LONG_SHARE ? Math.min(longSince, nanos) : Long.MAX_VALUE;
        shortSince = share > SHORT_SHARE ? Math.min(shortSince, nanos) : Long.MAX_VALUE;
        return lasted(longSince, nanos, LONG_NANOS) || lasted(shortSince, nanos, SHORT_NANOS);
    }

    private static boolean lasted(long since, long now, long most) {
        return since != Long.MAX_VALUE && now - since >= most;
    }

    String part() {
        return part;
    }

    /** What it carried when it was last looked at, of its rating. */
    double share() {
        return share;
    }
}
