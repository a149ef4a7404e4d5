package rigwarden.logbook;

import java.util.Locale;
import rigwarden.warden.Closing;
import rigwarden.warden.Orders;
import rigwarden.warden.Setpoint;
import rigwarden.warden.Way;

/** Orders as a run file keeps them. They cannot be given to anything: only the warden makes orders. */
public sealed interface StoredOrders {
    /** Everything off and open; {@code now} when under load if need be. */
    record Off(boolean now) implements StoredOrders {
        @Override
        public String kind() {
            return now ? "off_now" : "off";
        }

        @Override
        public String words() {
            return now ? "off at once" : "off";
        }
    }

    /**
     * A way was on.
     *
     * @param way direction
     * @param through place of the device in the rig's list
     * @param stage how far it was closed
     * @param amps set point, magnitude, A
     * @param volts voltage limit of the instrument, V
     */
    record Path(Way way, int through, Closing stage, double amps, double volts) implements StoredOrders {
        @Override
        public String kind() {
            return "path";
        }

        @Override
        public String words() {
            return String.format(Locale.ROOT, "%s, %s, %.2f A, %.3f V", way.name().toLowerCase(Locale.ROOT),
                    stage.name().toLowerCase(Locale.ROOT), amps, volts);
        }
    }

    Off OFF = new Off(false);
    Off OFF_NOW = new Off(true);

    /** What a run file keeps of these orders. Adding zero turns a negative zero into zero, as SQLite does. */
    static StoredOrders of(Orders orders) {
        return switch (orders) {
            case Orders.Off off -> switch (off.urgency()) {
                case CALM -> OFF;
                case NOW -> OFF_NOW;
            };
            case Orders.Energised on -> of(on.way(), on.through(), on.stage(), on.set());
        };
    }

    private static Path of(Way way, int through, Closing stage, Setpoint set) {
        return new Path(way, through, stage, set.amps() + 0.0, set.volts() + 0.0);
    }

    /** Word of the column {@code kind}. */
    String kind();

    /** In words for a person. */
    String words();
}
