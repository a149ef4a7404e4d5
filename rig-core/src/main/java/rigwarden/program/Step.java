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

    /**
     * Two currents, one after the other, for the DC resistance by the two-current method (IEC 61960-3; from memory).
     *
     * @param through a programmable source or sink
     * @param baseAmps first current, A
     * @param baseNanos for how long
     * @param amps second current, A, above the first
     * @param pulseNanos for how long
     */
    record Pulse(int through, double baseAmps, long baseNanos, double amps, long pulseNanos) implements Flowing {
        @Override
        public String kind() {
            return "pulse";
        }
    }

    /**
     * Top balance. Cells in parallel are held at the ceiling until hardly any current flows for a while; cells in series are
     * charged gently until the first meets the ceiling, so that their differences can be seen.
     *
     * @param through a programmable source
     * @param amps charge current, A
     * @param ceilingVolts voltage of the highest cell, V
     * @param endAmps current below which cells in parallel count as balanced, A
     * @param holdNanos for how long it must stay below
     */
    record Balance(int through, double amps, double ceilingVolts, double endAmps, long holdNanos) implements Flowing {
        @Override
        public String kind() {
            return "balance";
        }
    }

    /**
     * A gentle approach to where the battery's own protection should open, by a source from below or a sink from above;
     * attended. Not opened at the limit is a finding too.
     *
     * @param through a programmable source or sink
     * @param amps current, A, at most 0.05 C
     * @param limitVolts reading of the first cell at which the approach ends, V
     */
    record ProveProtection(int through, double amps, double limitVolts) implements Flowing {
        @Override
        public String kind() {
            return "prove_protection";
        }
    }

    /**
     * A very gentle charge of cells that were found below the lowest voltage of any other step; attended.
     *
     * @param through a programmable source
     * @param amps charge current, A, at most 0.05 C
     * @param untilVolts voltage of the lowest cell at which it ends, V
     */
    record Recover(int through, double amps, double untilVolts) implements Flowing {
        @Override
        public String kind() {
            return "recover";
        }
    }

    /**
     * Current flows, and then one element alone is opened: it must stop. Attended, and part of a proof only.
     *
     * @param through the source or sink
     * @param amps current, A
     * @param element which of the two is opened
     */
    record ProveStop(int through, double amps, Element element) implements Flowing {
        @Override
        public String kind() {
            return "prove_stop";
        }
    }

    /** What can stop the current by itself. */
    enum Element {
        RELAY,
        CONTACTOR
    }

    /** Whether a person must stand by. */
    static boolean attended(Step step) {
        return step instanceof ProveProtection || step instanceof Recover || step instanceof ProveStop;
    }
}
