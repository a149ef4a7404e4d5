package rigwarden.prove;

import static rigwarden.prove.Outcome.Part.JOINT;

import java.util.List;
import java.util.Locale;
import rigwarden.rig.Channel;
import rigwarden.rig.Rig;
import rigwarden.rig.Role;

/**
 * Resistance of the way from the pack's measuring point to the bus, lugs, fuse, shunt and contacts included: where a device's own relay stops the current the
 * contactor stays closed, and the step of pack less bus over the step of the current is free of what either voltmeter reads beside the truth.
 */
final class WayOhms {
    private static final double SURE = 3;

    private final Channel current;
    private final Channel pack;
    private final Channel bus;
    private final double statedOhms;
    private double product;
    private double squares;
    private double variance;

    WayOhms(Rig rig) {
        current = rig.channel(Role.CURRENT);
        pack = rig.channel(Role.PACK_VOLTS);
        bus = rig.channel(Role.BUS_VOLTS);
        statedOhms = rig.busSide().pathOhms();
    }

    /** One step of the current with the contactor closed on either side of it. */
    void add(Means before, Means after) {
        if (!before.seen(pack) || !before.seen(bus) || !after.seen(pack) || !after.seen(bus)) {
            return;
        }
        double amps = before.mean(current) - after.mean(current);
        double volts = before.mean(bus) - before.mean(pack) - (after.mean(bus) - after.mean(pack));
        double standard = Math.hypot(Math.hypot(before.standard(bus), after.standard(bus)), Math.hypot(before.standard(pack), after.standard(pack)));
        product += amps * volts;
        squares += amps * amps;
        variance += amps * amps * standard * standard;
    }

    /** Nothing where no relay stopped a current. */
    List<Outcome> look() {
        if (squares == 0) {
            return List.of();
        }
        double ohms = product / squares;
        double sure = SURE * Math.sqrt(variance) / squares;
        String words = String.format(Locale.ROOT, "from the pack to the bus %.2f ± %.2f mΩ, where the rig file says %.2f mΩ at most", ohms * 1e3, sure * 1e3,
                statedOhms * 1e3);
        return List.of(ohms - sure <= statedOhms
                ? Outcome.passed(JOINT, "way", words)
                : Outcome.failed(JOINT, "way", words + ": look at lugs, fuse, shunt and contacts for one that is loose or burnt"));
    }
}
