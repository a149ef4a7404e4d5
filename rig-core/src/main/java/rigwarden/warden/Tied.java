package rigwarden.warden;

import rigwarden.rig.Channel;
import rigwarden.rig.Protection;

/** What can be told of a current path that carries nothing: whether bus and pack are tied, and whether a cell was where the protection opens. */
public final class Tied {
    /** Without current the path drops nothing: what is left is the time between the two readings. */
    private static final double SHARE = 0.005;
    /** A cell moves this much between two scans near its end, V. */
    private static final double SAG_V = 0.05;

    private Tied() {}

    /** Whether bus and pack are one node: within their uncertainties and half a hundredth of the pack. */
    public static boolean tied(Channel pack, double packVolts, Channel bus, double busVolts) {
        double apart = SHARE * Math.abs(packVolts) + pack.uncertainty(packVolts) + bus.uncertainty(busVolts);
        return Math.abs(packVolts - busVolts) <= apart;
    }

    /** Whether a cell at this voltage is within its uncertainty, and what it may have moved since, of the protection's edge. */
    public static boolean meets(Protection protection, Channel cell, double volts, Way way) {
        double margin = protection.toleranceVolts() + cell.uncertainty(volts) + SAG_V;
        return way == Way.CHARGE ? volts >= protection.highVolts() - margin : volts <= protection.lowVolts() + margin;
    }
}
