package rigwarden.prove;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import rigwarden.program.Program;
import rigwarden.program.Step;
import rigwarden.program.Step.Element;
import rigwarden.rig.Device;
import rigwarden.rig.Rig;

/** The energised part of the check as a programme: each element that stops a way, opened alone. */
public final class Stops {
    /** What a run file says of this programme, in the place of a file. */
    public static final String TEXT = "# The stops of a proof, made from the rig file by `rigwarden prove`.\n";

    private static final String CONTACTOR = "contactor";
    private static final String RELAY = "relay";
    private static final double SMALL_C = 0.05;

    private Stops() {}

    /**
     * Each device's own relay alone, and once for each way the contactor alone: through a device that can be told a small current where the way has one,
     * else through the one with the least.
     */
    public static Program programme(Rig rig) {
        List<Step> steps = new ArrayList<>();
        for (boolean charging : new boolean[] {true, false}) {
            List<Device> devices = rig.devices(charging).stream().sorted(Comparator.comparingDouble(d -> amps(rig, d))).toList();
            boolean opened = false;
            for (Device device : devices) {
                int through = rig.devices().indexOf(device);
                if (device.stops().contains(RELAY)) {
                    steps.add(new Step.ProveStop(through, amps(rig, device), Element.RELAY));
                }
                if (!opened && device.stops().contains(CONTACTOR)) {
                    steps.add(new Step.ProveStop(through, amps(rig, device), Element.CONTACTOR));
                    opened = true;
                }
            }
        }
        return new Program("proof of " + rig.name(), false, steps);
    }

    /** A device that can be told gets a small current; one that does as it likes what it may give or take. */
    private static double amps(Rig rig, Device device) {
        return device.switched() ? device.maxAmps() : Math.min(SMALL_C * rig.cells().ratedAmpHours(), rig.ceilingAmps(device));
    }

    /** What a step of that programme proves: the device, and what is opened. */
    static String name(Rig rig, Step.ProveStop step) {
        return rig.devices().get(step.through()).name() + " " + word(step.element());
    }

    static String word(Element element) {
        return switch (element) {
            case RELAY -> RELAY;
            case CONTACTOR -> CONTACTOR;
        };
    }
}
