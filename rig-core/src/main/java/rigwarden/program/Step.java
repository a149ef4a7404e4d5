package rigwarden.program;

/** One step of a programme. Amperes and volts are magnitudes; the kind gives the direction. */
public sealed interface Step {
    /** Word for this kind in files, tables and reports. */
    String kind();

    /** A step with current: a way through one device of the rig, by its place in the rig's list. */
    sealed interface Flowing extends Step {
        int through();

        /** Highest current that it orders, A; of a switched device what that may give or take. */
        double amps();
    }

    /**
     * Constant current, then the highest cell held at the ceiling while the current falls.
     *
     * @param through the source
     * @param amps charge current, A
     * @param ceilingVolts voltage at which the highest cell is held, V
     * @param taperAmps current at which the cell counts as full, A
     */
    record Charge(int through, double amps, double ceilingVolts, double taperAmps) implements Flowing {
        @Override
        public String kind() {
            return "charge";
        }
    }

    /**
     * Everything off and open until the cells are settled.
     *
     * @param atLeastNanos shortest rest
     * @param atMostNanos time after which the rest ends unsettled
     */
    record Rest(long atLeastNanos, long atMostNanos) implements Step {
        @Override
        public String kind() {
            return "rest";
        }
    }

    /**
     * Constant current out of the cells until the first is at its cut-off.
     *
     * @param through the sink
     * @param amps discharge current, A, positive
     * @param cutOffVolts voltage of the lowest cell, mean of one second, V
     */
    record Discharge(int through, double amps, double cutOffVolts) implements Flowing {
        @Override
        public String kind() {
            return "discharge";
        }
    }

    /**
     * Charge from empty to a healthy state and leave the cells there.
     *
     * @param through the source
     * @param amps charge current, A
     * @param share part of the capacity measured last, or of the rating where none was, 0.3…0.5
     * @param ceilingVolts voltage at which it ends anyway, V
     */
    record Park(int through, double amps, double share, double ceilingVolts) implements Flowing {
        @Override
        public String kind() {
            return "park";
        }
    }

    /**
     * A long discharge at high current with the terminals watched, until the first cell is at its cut-off, the sink quits,
     * or its time is over.
     *
     * @param through the sink
     * @param amps highest current that it may take, A, positive
     * @param cutOffVolts voltage of the lowest cell, mean of one second, V
     * @param atMostNanos time after which it ends anyway
     */
    record HeatRun(int through, double amps, double cutOffVolts, long atMostNanos) implements Flowing {
        @Override
        public String kind() {
            return "heat_run";
        }
    }
}
