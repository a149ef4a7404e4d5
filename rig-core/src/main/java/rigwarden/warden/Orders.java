package rigwarden.warden;

/** What the rig is told. Energising orders can be made by the warden only. */
public sealed interface Orders {
    /** Everything off and open. */
    record Off(Urgency urgency) implements Orders {}

    /** How an opening may be done. */
    enum Urgency {
        /** Nothing flows; open. */
        CALM,
        /** Open at once, under load if need be, and sound. */
        NOW
    }

    Orders OFF = new Off(Urgency.CALM);
    Orders OFF_NOW = new Off(Urgency.NOW);

    /** A way on, under a lease. */
    final class Energised implements Orders {
        private final Lease lease;
        private final Way way;
        private final int through;
        private final Closing stage;
        private final Setpoint set;

        Energised(Lease lease, Way way, int through, Closing stage, Setpoint set) {
            this.lease = lease;
            this.way = way;
            this.through = through;
            this.stage = stage;
            this.set = set;
        }

        public Lease lease() {
            return lease;
        }

        public Way way() {
            return way;
        }

        /** The device that works, by its place in the rig's list. */
        public int through() {
            return through;
        }

        public Closing stage() {
            return stage;
        }

        public Setpoint set() {
            return set;
        }

        /** Whether the heartbeat is toggled under these orders. */
        public boolean beats() {
            return stage != Closing.SILENCE;
        }
    }
}
