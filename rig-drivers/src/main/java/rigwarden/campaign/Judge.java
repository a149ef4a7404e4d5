package rigwarden.campaign;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import rigwarden.emulated.Rehearsal;
import rigwarden.pack.Oracle;
import rigwarden.pack.World;
import rigwarden.rig.Rig;
import rigwarden.warden.Orders;

/**
 * Says what is unsafe, from the truth of the model and from whether anything is ordered on, never from a rule or a reading. Voltages and
 * temperatures are the extremes within every step of the model; currents are looked at once a scan.
 */
final class Judge {
    private static final double HIGH_V = 3.75;
    private static final double LOW_V = 2.0;
    private static final double HOT_C = 75;
    private static final double FLOWS_A = 1;
    private static final long OFF_NANOS = 2_000_000_000L;

    private final List<Load> loads;
    private final List<Harm> harms = new ArrayList<>();
    private final int cells;
    private long offSince = Long.MAX_VALUE;

    Judge(Rig rig) {
        loads = Load.of(rig);
        cells = rig.cells().series();
    }

    /** Looks after each scan; {@code struck} when a fault came with it. */
    void look(Rehearsal rehearsal, boolean struck) {
        World world = rehearsal.rig().world();
        long nanos = rehearsal.rig().clock().nanos();
        boolean on = rehearsal.loop().standing().inForce() instanceof Orders.Energised;
        offSince = on ? Long.MAX_VALUE : Math.min(offSince, nanos);
        boolean off = !on && nanos - offSince >= OFF_NANOS;
        Oracle truth = world.oracle();
        note(truth.highestCellVolts() > HIGH_V, Harm.What.CELL_HIGH, "", truth.highestCellVolts(), nanos, off);
        low(world, struck, nanos, off);
        note(truth.hottestCelsius() > HOT_C, Harm.What.HOT, truth.hottestNode().toString(), truth.hottestCelsius(), nanos, off);
        note(off && Math.abs(world.amps()) > FLOWS_A, Harm.What.NOT_OFF, "", world.amps(), nanos, true);
        for (Load load : loads) {
            note(load.over(world, nanos), Harm.What.OVERLOAD, load.part(), load.share(), nanos, off);
        }
    }

    /** A dead short pulls every cell down until the fuse melts, within milliseconds; what lasts to the scan's end is not of that kind. */
    private void low(World world, boolean struck, long nanos, boolean off) {
        double now = IntStream.range(0, cells).mapToDouble(world::cellVolts).min().orElseThrow();
        double lowest = world.oracle().lowestCellVolts();
        boolean gone = struck && now >= LOW_V;
        if (gone && lowest < LOW_V && harms.isEmpty()) {
            harms.add(new Harm(Harm.What.CELL_LOW, "", lowest, nanos, off, true));
        }
        boolean passed = harms.stream().anyMatch(Harm::atOnce);
        note(passed ? now < LOW_V : lowest < LOW_V, Harm.What.CELL_LOW, "", lowest, nanos, off);
    }

    private void note(boolean seen, Harm.What what, String part, double value, long nanos, boolean off) {
        if (seen && harms.stream().noneMatch(h -> h.what() == what && h.off() == off && !h.atOnce())) {
            harms.add(new Harm(what, part, value, nanos, off, false));
        }
    }

    /** The first of each kind while anything was on, and the first while all was off, in order of time. */
    List<Harm> harms() {
        return List.copyOf(harms);
    }
}
