package rigwarden.logbook;

import java.sql.ResultSet;
import java.sql.SQLException;
import rigwarden.warden.Closing;
import rigwarden.warden.Way;

/** The table {@code orders}, read back. */
final class OrdersRows {
    static final String SELECT = "SELECT scan, kind, way, through, stage, amps, volts FROM orders";

    private OrdersRows() {}

    /** The orders of the current row of {@link #SELECT}. */
    static StoredOrders read(ResultSet row) throws SQLException {
        String kind = row.getString(2);
        return switch (kind) {
            case "off" -> StoredOrders.OFF;
            case "off_now" -> StoredOrders.OFF_NOW;
            case "path" -> new StoredOrders.Path(Way.valueOf(row.getString(3)), row.getInt(4),
                    Closing.valueOf(row.getString(5)), row.getDouble(6), row.getDouble(7));
            default -> throw new LogbookException("The run file has orders of the unknown kind \"" + kind + "\".");
        };
    }
}
