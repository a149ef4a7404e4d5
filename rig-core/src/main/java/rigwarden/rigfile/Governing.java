package rigwarden.rigfile;

import rigwarden.rig.Device;
import rigwarden.rig.PathPart;
import rigwarden.rig.Protection;
import rigwarden.rig.Rig;
import rigwarden.warden.Way;

/**
 * The part that allows the least current with one source or sink.
 *
 * @param way charge or discharge
 * @param device name of the source or sink
 * @param part name of the part as in the rig file; "cell" for the cells themselves, "protection", or the device
 * @param amps what it allows for hours, A, magnitude
 */
public record Governing(Way way, String device, String part, double amps) {
    public static Governing of(Rig rig, Device device) {
        Way way = device.charges() ? Way.CHARGE : Way.DISCHARGE;
        double amps = rig.ceilingAmps(device);
        double cells = device.charges() ? rig.cells().chargeAmps() : rig.cells().dischargeAmps();
        PathPart weakest = rig.weakest(device);
        String part = cells <= amps
                ? "cell"
                : device.maxAmps() <= amps
                        ? device.name()
                        : weakest.continuousAmps() <= amps
                                ? weakest.name()
                                : rig.protection().map(Protection::ratedAmps).isPresent() ? "protection" : "";
        return new Governing(way, device.name(), part, amps);
    }
}
