package rigwarden.rig;

/**
 * One part of the current path and what it may carry.
 *
 * @param name as in the rig file
 * @param kind decides how much of the rating may be used for hours
 * @param ratedAmps rating printed on the part, A
 * @param breaksAmps d.c. current that it can interrupt, in both directions; 0 for a part that interrupts nothing
 * @param breaksVolts d.c. voltage at which it can interrupt that; 0 likewise
 * @param device name of the source or sink whose current alone it carries; empty for a part of the common path
 */
public record PathPart(
        String name, Kind kind, double ratedAmps, double breaksAmps, double breaksVolts, String device) {
    /** Kinds of part, with the share of their rating that may flow for hours. */
    public enum Kind {
        FUSE(Envelope.FUSE_CONTINUOUS),
        SHUNT(Envelope.SHUNT_CONTINUOUS),
        CABLE(1),
        BAR(1),
        LUG(1),
        PLUG(1),
        CONTACTOR(1),
        RELAY(1);

        private final double continuousShare;

        Kind(double continuousShare) {
            this.continuousShare = continuousShare;
        }

        public double continuousShare() {
            return continuousShare;
        }
    }

    /** Whether every current of the rig flows through it. */
    public boolean common() {
        return device.isEmpty();
    }

    /** Current that may flow for hours, A. */
    public double continuousAmps() {
        return ratedAmps * kind.continuousShare();
    }
}
