package rigwarden.program;

/** One step of a programme. Amperes and volts are magnitudes; the kind gives the direction. */
public sealed interface Step {
    /** Word for this kind in files, tables and reports. */
    String kind();

    /**
     * Constant current, then the highest cell held at the ceiling while the current falls.
     *
     * @param amps charge current, A
     * @param ceilingVolts voltage at which the highest cell is held, V
     * @param taperAmps current at which the cell counts as full, A
     */
    record Charge(double amps, double ceilingVolts, double taperAmps) implements Step {
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
     * @param amps discharge current, A, positive
     * @param cutOffVolts voltage of the lowest cell, mean of one second, V
     */
    record Discharge(double amps, double cutOffVolts) implements Step {
        @Override
        public String kind() {
            return "discharge";
        }
    }

    /**
     * Charge from empty to a healthy state and leave the cells there.
     *
     * @param amps charge current, A
     * @param share part of the capacity measured last, or of the rating where none was, 0.3…0.5
     * @param ceilingVolts voltage at which it ends anyway, V
     */
    record Park(double amps, double share, double ceilingVolts) implements Step {
        @Override
        public String kind() {
            return "park";
        }
    }
}
